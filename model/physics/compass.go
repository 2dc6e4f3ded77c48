package physics

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// ReferenceHorizontalUT is the horizontal part of the earth's field in µT that
	// compass standards refer to. Where the boat sails it is about 10 to 40.
	//
	// Source: compass standards (ISO 25862), from memory, unverified.
	ReferenceHorizontalUT = 18

	sourceBiotSavart = "Biot-Savart law for long straight conductors, µ0 = 4π·10⁻⁷ T·m/A; common physics"
	sourceTurn       = "sum of two horizontal fields, the disturbing one at the worst angle; common physics"
)

// WireField returns the flux density in µT at a distance from a long straight
// conductor.
//
//	B = µ0·I / (2π·d) = 200·I/d    with d in mm
//
// Given: amps; distanceMM > 0. A conductor of finite length makes less.
// Source: Biot-Savart law.
func WireField(amps, distanceMM float64) figure.Figure {
	if !(distanceMM > 0) || math.IsNaN(amps) || math.IsInf(amps, 0) {
		return figure.Open(figure.Because("a magnetic field needs a current and a distance above 0 mm"))
	}
	b := 200 * math.Abs(amps) / distanceMM
	return figure.Worked(b, "uT", func() []figure.Step {
		return []figure.Step{{
			Formula: "field of a conductor: B = µ0·I/(2π·d)", Source: sourceBiotSavart,
			Inputs: []figure.Input{
				{Symbol: "I", Value: math.Abs(amps), Unit: "A", From: "current"},
				{Symbol: "d", Value: distanceMM, Unit: "mm", From: "distance"},
			},
			Result: quantity.Round(b), Unit: "uT",
		}}
	})
}

// PairField returns the greatest flux density in µT at a distance from a long
// straight pair that carries a current out and back: in the plane of the pair,
// where the nearer conductor counts most.
//
//	B = µ0·I·s / (2π·(d² − s²/4)) = 200·I·s/(d² − s²/4)    in mm
//
// Given: spacingMM s ≥ 0 between the axes; distanceMM d from the middle of the
// pair, more than half the spacing.
// Source: Biot-Savart law, the difference of two conductors at d ∓ s/2.
func PairField(amps, spacingMM, distanceMM float64) figure.Figure {
	if !(spacingMM >= 0) || !(distanceMM > spacingMM/2) || math.IsNaN(amps) || math.IsInf(amps, 0) || math.IsInf(distanceMM, 0) {
		return figure.Open(figure.Because("the field of a pair needs a current, a spacing of 0 mm or more and a distance beyond the pair itself"))
	}
	b := 200 * math.Abs(amps) * spacingMM / (distanceMM*distanceMM - spacingMM*spacingMM/4)
	return figure.Worked(b, "uT", func() []figure.Step {
		return []figure.Step{{
			Formula: "field of a pair in its plane: B = µ0·I·s/(2π·(d² − s²/4))", Source: sourceBiotSavart,
			Inputs: []figure.Input{
				{Symbol: "I", Value: math.Abs(amps), Unit: "A", From: "current"},
				{Symbol: "s", Value: spacingMM, Unit: "mm", From: "spacing of the pair"},
				{Symbol: "d", Value: distanceMM, Unit: "mm", From: "distance from the middle of the pair"},
			},
			Result: quantity.Round(b), Unit: "uT",
		}}
	})
}

// CompassTurn returns the turn in degrees that a disturbing horizontal field
// gives a compass when it stands at an angle to the meridian.
//
//	δ = atan2(B·sin φ, H + B·cos φ)
//
// Given: fieldUT B ≥ 0 and horizontalUT H > 0 in µT; angleDeg φ. At 90° it is
// atan(B/H). Source: sum of two vectors.
func CompassTurn(fieldUT, horizontalUT, angleDeg float64) float64 {
	phi := angleDeg * math.Pi / 180
	return math.Atan2(fieldUT*math.Sin(phi), horizontalUT+fieldUT*math.Cos(phi)) * 180 / math.Pi
}

// GreatestTurn returns the turn in degrees at the worst angle, with the working
// of the field before its own.
//
//	δ = asin(B/H), and 180° where B is not below H
//
// Given: field in µT; horizontalUT H > 0.
func GreatestTurn(field figure.Figure, horizontalUT float64) figure.Figure {
	if !field.Known {
		return field
	}
	if !(horizontalUT > 0) {
		return figure.Open(figure.Because("a compass turn needs a horizontal field above 0 µT"))
	}
	turn := 180.0
	if field.Value < horizontalUT {
		turn = math.Asin(field.Value/horizontalUT) * 180 / math.Pi
	}
	return figure.Worked(turn, "deg", func() []figure.Step {
		return append(slices.Clone(field.Working()), figure.Step{
			Formula: "greatest turn of a compass: δ = asin(B/H), 180° from B = H on", Source: sourceTurn,
			Inputs: []figure.Input{
				{Symbol: "B", Value: field.Value, Unit: "uT", From: "field at the compass"},
				{Symbol: "H", Value: horizontalUT, Unit: "uT", From: "horizontal part of the earth's field"},
			},
			Result: quantity.Round(turn), Unit: "deg",
		})
	})
}
