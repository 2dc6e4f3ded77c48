package copper

import (
	"fmt"
	"math"
	"sync"

	"driploop/model/figure"
	"driploop/model/quantity"
)

var (
	metricInsulation = sync.OnceValue(func() table { return load("insulation_metric.csv") })
	gaugeInsulation  = sync.OnceValue(func() table { return load("insulation_gauge.csv") })
)

// Span is a range in mm.
type Span struct{ Low, High float64 }

// Outside is an outside diameter in mm as a range.
type Outside struct {
	Span
	working func() []figure.Step
}

// Working returns how both ends came about, the least first.
func (o Outside) Working() []figure.Step { return o.working() }

// Diameter returns the outside diameter of an insulated conductor.
//
//	D = f·√(4A/π) + 2·s
//
// f is the allowance for the gaps between strands.
//
// Given: spec as for Of; thickness of the insulation, nil where it is not
// recorded: then the range of the usual cables of that size.
// The range is wide where little is recorded; a measured or a maker's diameter
// is better.
// Errors: *NoValue as Of, and for a size without a thickness.
func Diameter(spec Spec, thickness *Span) (Outside, error) {
	if _, err := Of(spec); err != nil {
		return Outside{}, err
	}
	least, greatest, err := area(spec.Size)
	if err != nil {
		return Outside{}, err
	}
	var wall Span
	source := "thickness of insulation: recorded"
	if thickness != nil {
		wall = *thickness
	} else if wall, source, err = usualThickness(spec.Size); err != nil {
		return Outside{}, err
	}
	if !(wall.Low >= 0) || !(wall.High >= wall.Low) {
		return Outside{}, noValue("", "a thickness of insulation runs from its least to its greatest, 0 mm or more")
	}
	f := gapsOf(spec.Class)
	low := f.least*equivalent(least) + 2*wall.Low
	high := f.greatest*equivalent(greatest) + 2*wall.High
	return Outside{Span{quantity.Round(low), quantity.Round(high)}, func() []figure.Step {
		return []figure.Step{
			outsideStep("least", least, f.least, wall.Low, low, f.source, source),
			outsideStep("greatest", greatest, f.greatest, wall.High, high, f.source, source),
		}
	}}, nil
}

// equivalent is the diameter of a circle of an area.
func equivalent(areaMM2 float64) float64 { return math.Sqrt(4 * areaMM2 / math.Pi) }

func outsideStep(end string, a, f, s, d float64, gaps, wall string) figure.Step {
	return figure.Step{
		Formula: end + " outside diameter: D = f·√(4A/π) + 2·s", Source: gaps + "; " + wall,
		Inputs: []figure.Input{
			{Symbol: "A", Value: quantity.Round(a), Unit: "mm2", From: "copper area"},
			{Symbol: "f (gaps between strands)", Value: f, From: gaps},
			{Symbol: "s", Value: s, Unit: "mm", From: wall},
		},
		Result: quantity.Round(d), Unit: "mm",
	}
}

// gapsOf returns the diameter of a strand group against a solid wire of the same
// copper.
//
// Source: geometry of round strands in layers: 7 strands 3/√7 = 1.134, 37
// strands 7/√37 = 1.151, a rope of 7 × 19 15/√133 = 1.301; compacted class 2
// about 1.04 (from memory). Flexible 1.05 by a maker's sheet (secondary) to 1.43
// by the greatest diameters of IEC 60228 (from memory, unverified).
func gapsOf(class string) allowance {
	switch class {
	case "solid":
		return allowance{1, 1, "solid wire"}
	case "class-2":
		return allowance{1.04, 1.16, "class 2, compacted to round strands in layers: 1.04 to 1.16, geometry"}
	case "type-2":
		return allowance{1.04, 1.31, "type 2, layers to rope: 1.04 to 1.31, geometry"}
	case "class-5", "class-6", "type-3":
		return allowance{1.05, 1.43, "flexible: 1.05 (maker's sheet, secondary) to 1.43 (from memory, unverified)"}
	}
	return allowance{1, 1.43, "stranding not recorded: 1 (solid) to 1.43 (flexible, from memory, unverified)"}
}

// usualThickness is the thickness of insulation where none is recorded.
func usualThickness(size quantity.WireSize) (Span, string, error) {
	if size.System == quantity.MM2 {
		row, ok := metricInsulation().rows[size.MM2]
		if !ok {
			return Span{}, "", noValue("", "no usual thickness of insulation is held for %s", size)
		}
		// EN 50525-1: no place thinner than 0.9 of nominal less 0.1 mm (from
		// memory, unverified); as much above for what makers add.
		t := row[0]
		return Span{0.9*t - 0.1, 1.1*t + 0.1}, "usual thickness by BS EN 50525-3-41, less or more 10 % and 0.1 mm; secondary", nil
	}
	row, ok := gaugeInsulation().rows[float64(size.Gauge)]
	if !ok {
		return Span{}, "", noValue("", "no usual thickness of insulation is held for %s", size)
	}
	return Span{row[0], row[1]}, "usual thickness, SAE thin wall to UL 1426; from memory, unverified", nil
}

// The usual thickness of a sheath around several cores in mm, and its source.
const (
	sheathLeast    = 0.6
	sheathGreatest = 2.0
	sourceSheath   = "sheath 0.6 to 2.0 mm thick, from memory, unverified; geometry of touching circles"
)

// Sheathed returns the outside diameter of a sheath around cores of the given
// outside diameters. A flat sheath is covered too: the least is across it where
// it lies, the greatest along its longer side.
//
// Errors: *NoValue without a core.
// Source: geometry of touching circles; thickness from memory, unverified.
func Sheathed(cores ...Span) (Outside, error) {
	if len(cores) == 0 {
		return Outside{}, noValue(sourceSheath, "a sheath without a core has no diameter")
	}
	var thickest Span
	var lows, sum float64
	for _, c := range cores {
		thickest = Span{max(thickest.Low, c.Low), max(thickest.High, c.High)}
		lows += c.Low * c.Low
		sum += c.High
	}
	// The cores' areas fit in the sheath, and its thinner side holds the thickest core.
	low := thickest.Low
	if len(cores) > 3 {
		low = max(low, math.Sqrt(lows))
	}
	high := LayUp(len(cores)) * thickest.High
	if len(cores) <= 3 {
		high = max(high, sum) // side by side in a flat sheath
	}
	low, high = low+2*sheathLeast, high+2*sheathGreatest
	step := func(end, formula string, core, s, d float64) figure.Step {
		return figure.Step{
			Formula: fmt.Sprintf("%s outside diameter of %d cores: %s", end, len(cores), formula), Source: sourceSheath,
			Inputs: []figure.Input{
				{Symbol: "thickest core", Value: core, Unit: "mm", From: "outside diameter of the cores"},
				{Symbol: "s", Value: s, Unit: "mm", From: sourceSheath},
			},
			Result: quantity.Round(d), Unit: "mm",
		}
	}
	return Outside{Span{quantity.Round(low), quantity.Round(high)}, func() []figure.Step {
		return []figure.Step{
			step("least", "the thickest core, or the circle of all areas, + 2·s", thickest.Low, sheathLeast, low),
			step("greatest", "touching circles, or side by side to three cores, + 2·s", thickest.High, sheathGreatest, high),
		}
	}}, nil
}

// LayUp returns the diameter of the circle around n equal round cores against
// the diameter of one.
//
// Source: geometry; exact to 7 cores (2: 2; 3: 1 + 2/√3; 4: 1 + √2; 5: 1 +
// 1/sin 36°; 6 and 7: 3). Above, an upper bound from a filling of 0.68, which
// the best known packings of 8 and more circles exceed (from memory,
// unverified).
func LayUp(n int) float64 {
	switch {
	case n <= 0:
		return 0
	case n == 1:
		return 1
	case n == 2:
		return 2
	case n == 3:
		return 1 + 2/math.Sqrt(3)
	case n == 4:
		return 1 + math.Sqrt2
	case n == 5:
		return 1 + 1/math.Sin(math.Pi/5)
	case n <= 7:
		return 3
	}
	return math.Sqrt(float64(n) / 0.68)
}
