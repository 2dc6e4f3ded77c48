package physics

import (
	"fmt"
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// Fill returns the share of a bore's area that round conductors take, in
// percent, from their outside diameters.
//
//	100 · Σd² / D²
//
// Given: boreMM inside diameter > 0. Source: geometry.
func Fill(boreMM float64, diametersMM ...float64) figure.Figure {
	if !(boreMM > 0) || slices.ContainsFunc(diametersMM, func(d float64) bool { return !(d >= 0) }) {
		return figure.Open(figure.Because("a filling needs a bore above 0 mm and diameters of 0 mm or more"))
	}
	var sum float64
	for _, d := range diametersMM {
		sum += d * d
	}
	fill := 100 * sum / (boreMM * boreMM)
	return figure.Worked(fill, "%", func() []figure.Step {
		return []figure.Step{{
			Formula: "filling of a bore: 100·Σd²/D²", Source: "geometry",
			Inputs: []figure.Input{
				{Symbol: "D", Value: boreMM, Unit: "mm", From: "bore"},
				{Symbol: "√Σd²", Value: quantity.Round(math.Sqrt(sum)), Unit: "mm", From: fmt.Sprintf("outside diameters of %d conductors", len(diametersMM))},
			},
			Result: quantity.Round(fill), Unit: "%",
		}}
	})
}
