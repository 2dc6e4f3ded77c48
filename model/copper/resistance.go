package copper

import (
	"driploop/model/figure"
	"driploop/model/quantity"
)

// coldest is the temperature under which ResistanceAt no longer follows the line.
const coldest = -60

const sourceHot = "AC 43.13-1B change 1 (2001), 11-66d: 234.5 and 254.5; read"

// ResistanceAt returns the resistance of copper at a temperature, from that at
// 20 °C, in the unit of r20.
//
//	R = R20 · (234.5 + T) / 254.5
//
// Given: r20 resistance at 20 °C; tempC conductor temperature [°C].
// Valid: annealed copper, to 0.4 % up to 100 °C against the rule of IEC 60228
// (computed). Below −60 °C, colder than any boat, the value at −60 °C is
// returned, which is never too low.
// Source: AC 43.13-1B change 1 (2001), paragraph 11-66d; read. Agrees with
// α = 0.00393/K of IEC 60028.
func ResistanceAt(r20, tempC float64) float64 {
	return r20 * (234.5 + max(tempC, coldest)) / 254.5
}

// HotStep returns the working of ResistanceAt. Unit is that of r20.
func HotStep(r20, tempC float64, unit string) figure.Step {
	return figure.Step{
		Formula: "resistance at temperature: R = R20·(234.5 + T)/254.5", Source: sourceHot,
		Inputs: []figure.Input{
			{Symbol: "R20", Value: quantity.Round(r20), Unit: unit, From: "resistance at 20 °C"},
			{Symbol: "T", Value: quantity.Round(tempC), Unit: "degC", From: "conductor temperature"},
		},
		Result: quantity.Round(ResistanceAt(r20, tempC)), Unit: unit,
	}
}
