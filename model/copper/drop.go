package copper

import (
	"math"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// DropK is the constant of the standards' drop formula in Ω·cmil/ft.
	//
	// Source: 46 CFR 183.340(p), CFR annual edition 2015; read. The voluntary
	// standards print the same number (secondary).
	DropK = 10.75

	sourceDrop = "46 CFR 183.340(p), CFR annual edition 2015: K = 10.75; constant read, arrangement found from its table"
	mmPerFoot  = 304.8 // NIST SP 811 (2008) B.8, exact
)

// Drop returns the voltage lost along a conductor by the standards' formula, in
// V with its working. Add the drops of all conductors out and back.
//
//	E = K·I·L / CM
//
// Given: amps current [A] ≥ 0; lengthMM length of this conductor [mm] ≥ 0;
// circularMils its area > 0. The formula takes no temperature.
// The figure is open for values outside those ranges.
// Source: 46 CFR 183.340(p), CFR annual edition 2015, K = 10.75 (read). The
// formula is an image in the copies read; E = 1.2 V with L doubled gives 53 of
// the 55 cells of its table (computed).
func Drop(amps, lengthMM, circularMils float64) figure.Figure {
	e, ok := DropV(amps, lengthMM, circularMils)
	if !ok {
		return figure.Open(figure.Because("a voltage drop needs a current and a length of 0 or more, and an area above 0"))
	}
	feet := lengthMM / mmPerFoot
	return figure.Worked(e, "V", func() []figure.Step {
		return []figure.Step{{
			Formula: "voltage drop by formula: E = K·I·L/CM", Source: sourceDrop,
			Inputs: []figure.Input{
				{Symbol: "K (Ω·cmil/ft)", Value: DropK, From: "46 CFR 183.340(p)"},
				{Symbol: "I", Value: amps, Unit: "A", From: "current"},
				{Symbol: "L", Value: quantity.Round(feet), Unit: "ft", From: "length of the conductor"},
				{Symbol: "CM (circular mil)", Value: quantity.Round(circularMils), From: "copper area"},
			},
			Result: quantity.Round(e), Unit: "V",
		}}
	})
}

// DropV returns the number of Drop alone, and whether there is one: for callers
// that ask for very many.
func DropV(amps, lengthMM, circularMils float64) (volts float64, ok bool) {
	if !(amps >= 0) || !(lengthMM >= 0) || !(circularMils > 0) || math.IsInf(amps*lengthMM, 0) {
		return 0, false
	}
	return DropK * amps * (lengthMM / mmPerFoot) / circularMils, true
}

// PairDrop returns the voltage in V lost out and back along a pair of equal
// conductors.
//
//	ΔU = 2·r·L·I
//
// Given: r resistance of one conductor at its temperature [Ω/m]; oneWayM length
// out [m]; amps current [A].
// Source: Ohm's law.
func PairDrop(r, oneWayM, amps float64) float64 { return 2 * r * oneWayM * amps }
