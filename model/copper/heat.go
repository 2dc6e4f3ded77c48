package copper

import (
	"math"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// HeatCapacity is that of copper in J/(K·mm³). Source: IEC 60949, 3.45e6
	// J/(K·m³); secondary.
	HeatCapacity = 3.45e-3

	sourceSteady    = "heat balance: rise as I², reaching the rating at the allowable amperage; common physics"
	sourceTransient = "heat balance of copper alone, σ = 3.45 J/(K·cm³) by IEC 60949 (secondary), loss as the rise; common physics"
)

// Heating describes a conductor in air for the figures of temperature.
type Heating struct {
	AmbientC float64 // air around it
	RatingC  float64 // temperature it reaches at AllowedA, that of its insulation
	AllowedA float64 // current that brings it to RatingC in that air, > 0
	AreaMM2  float64 // copper
	R20      float64 // Ω/m
}

// problem says what keeps the figures from being computed.
func (h Heating) problem(amps float64) string {
	switch {
	case !(h.AllowedA > 0):
		return "a temperature needs the current that brings the conductor to its rating"
	case !(h.RatingC > h.AmbientC):
		return "the air is not cooler than the insulation's rating"
	case !(h.AmbientC >= coldest) || math.IsNaN(amps) || math.IsInf(amps, 0):
		return "a temperature needs a current and an ambient temperature of −60 °C or more"
	}
	return ""
}

// gain is how far the rise of resistance feeds the heating: the part of the heat
// loss that one more degree of conductor temperature brings back, without unit.
//
//	g = (I/I0)² · (Tr − Ta)/(234.5 + Tr)
//
// At 1 and above there is no steady temperature.
func (h Heating) gain(amps float64) float64 {
	load := amps / h.AllowedA
	return load * load * (h.RatingC - h.AmbientC) / (234.5 + h.RatingC)
}

// steady is the temperature with the resistance following it: (Ta + 234.5·g)/(1 − g).
func (h Heating) steady(amps float64) float64 {
	g := h.gain(amps)
	return (h.AmbientC + 234.5*g) / (1 - g)
}

// Steady returns the conductor temperature in °C that a lasting current leads
// to.
//
//	T = Ta + (Tr − Ta)·(I/I0)²                    up to the allowable amperage I0
//	T = (Ta + 234.5·g)/(1 − g)                    above it
//
// with g = (I/I0)²·(Tr − Ta)/(234.5 + Tr). The first takes the resistance as that
// at Tr, so it is high where it is used; above I0 it would be low, and the
// second follows the resistance. They meet at I0.
//
// The figure is open where no steady temperature exists, and for inputs out of
// range. Source: heat balance, common physics; the first is the steady state of
// AC 43.13-1B 11-66d, which prints a root in place of the square (from memory).
func (h Heating) Steady(amps float64) figure.Figure {
	if why := h.problem(amps); why != "" {
		return figure.Open(figure.Because(why))
	}
	load := amps / h.AllowedA
	t, ok := h.SteadyC(amps)
	if !ok {
		return figure.Open(figure.Because("the current is so far above the allowable amperage that no steady temperature exists: the conductor heats until something opens or melts"))
	}
	formula := "steady temperature: T = Ta + (Tr − Ta)·(I/I0)²"
	if math.Abs(load) > 1 {
		formula = "steady temperature above the rating: T = (Ta + 234.5·g)/(1 − g), g = (I/I0)²·(Tr − Ta)/(234.5 + Tr)"
	}
	return figure.Worked(t, "degC", func() []figure.Step {
		return []figure.Step{{
			Formula: formula, Source: sourceSteady,
			Inputs: []figure.Input{
				{Symbol: "Ta", Value: h.AmbientC, Unit: "degC", From: "ambient"},
				{Symbol: "Tr", Value: h.RatingC, Unit: "degC", From: "insulation rating"},
				{Symbol: "I", Value: quantity.Round(math.Abs(amps)), Unit: "A", From: "current"},
				{Symbol: "I0", Value: h.AllowedA, Unit: "A", From: "allowable amperage"},
			},
			Result: quantity.Round(t), Unit: "degC",
		}}
	})
}

// SteadyC returns the number of Steady alone, and whether there is one: for
// callers that ask for very many.
func (h Heating) SteadyC(amps float64) (tempC float64, ok bool) {
	if h.problem(amps) != "" {
		return 0, false
	}
	load := amps / h.AllowedA
	switch {
	case math.Abs(load) <= 1:
		return h.AmbientC + (h.RatingC-h.AmbientC)*load*load, true
	case h.gain(amps) >= 1:
		return 0, false
	}
	return h.steady(amps), true
}

// TimeConstant returns the time in s in which the conductor's own heat, given up
// at the rate that holds at its rating, would be gone.
//
//	τ = σ·S·(Tr − Ta) / (I0²·r(Tr))
//
// Only the copper is counted. Insulation stores heat too, so the true constant
// is longer and a temperature reached in a given time lower.
// Source: common physics; σ by IEC 60949, secondary.
func (h Heating) TimeConstant() float64 {
	perMetre := HeatCapacity * h.AreaMM2 * 1000 // J/K
	loss := h.AllowedA * h.AllowedA * ResistanceAt(h.R20, h.RatingC)
	return perMetre * (h.RatingC - h.AmbientC) / loss
}

// After returns the conductor temperature in °C after a current has run for a
// time, from a start temperature. It is an upper bound for a single conductor:
// see TimeConstant.
//
//	T(t) = T∞ + (T0 − T∞)·e^(−(1 − g)·t/τ),   T∞ = (Ta + 234.5·g)/(1 − g)
//
// It solves σ·S·dT/dt = I²·r(T) − loss exactly, resistance following the
// temperature. For short times it runs into the adiabatic rule of IEC 60949,
// which it never exceeds.
//
// Given: startC at the start [°C]; amps [A]; seconds ≥ 0.
// Source: common physics; σ by IEC 60949, secondary.
func (h Heating) After(startC, amps, seconds float64) figure.Figure {
	if why := h.transientProblem(startC, amps); why != "" {
		return figure.Open(figure.Because(why))
	}
	if !(seconds >= 0) || math.IsInf(seconds, 0) {
		return figure.Open(figure.Because("a temperature after a time needs a time of 0 s or more"))
	}
	tau, g := h.TimeConstant(), h.gain(amps)
	t := startC + h.slope(startC, amps)*growth((1-g)/tau, seconds)
	if math.IsInf(t, 0) || t > melting {
		return figure.Open(figure.Because("the conductor would melt within that time"))
	}
	return figure.Worked(t, "degC", func() []figure.Step {
		return []figure.Step{h.transientStep(
			"temperature after a time: T = T∞ + (T0 − T∞)·e^(−(1 − g)·t/τ), T∞ = (Ta + 234.5·g)/(1 − g)",
			startC, tau, g, figure.Input{Symbol: "t", Value: seconds, Unit: "s", From: "time"}, t, "degC")}
	})
}

// melting is the melting point of copper in °C. Source: handbooks; secondary.
const melting = 1083

// slope is the rate of rise in K/s at a temperature.
func (h Heating) slope(tempC, amps float64) float64 {
	g := h.gain(amps)
	return (h.AmbientC + 234.5*g - (1-g)*tempC) / h.TimeConstant()
}

// growth is (1 − e^(−rate·t))/rate, which is t where the rate vanishes.
func growth(rate, t float64) float64 {
	if x := rate * t; math.Abs(x) < 1e-9 {
		return t * (1 - x/2)
	}
	return -math.Expm1(-rate*t) / rate
}

// Reach returns the time in s in which a current brings the conductor from a
// start temperature to a limit, and whether it ever does. Since the copper
// alone is counted, the conductor takes at least that long.
//
//	t = τ/(1 − g) · ln((T∞ − T0)/(T∞ − T))
func (h Heating) Reach(startC, limitC, amps float64) (seconds float64, reached bool, err error) {
	if why := h.transientProblem(startC, amps); why != "" {
		return 0, false, noValue(sourceTransient, "%s", why)
	}
	if limitC <= startC {
		return 0, true, nil
	}
	rate := (1 - h.gain(amps)) / h.TimeConstant()
	first, last := h.slope(startC, amps), h.slope(limitC, amps)
	if first <= 0 || last <= 0 && rate > 0 {
		return 0, false, nil
	}
	if math.Abs(rate*(limitC-startC)/first) < 1e-9 {
		return (limitC - startC) / first, true, nil
	}
	return math.Log(first/last) / rate, true, nil
}

func (h Heating) transientProblem(startC, amps float64) string {
	if why := h.problem(amps); why != "" {
		return why
	}
	if !(h.AreaMM2 > 0) || !(h.R20 > 0) || !(startC >= coldest) {
		return "a temperature over time needs a copper area, a resistance and a start temperature of −60 °C or more"
	}
	return ""
}

func (h Heating) transientStep(formula string, startC, tau, g float64, given figure.Input, result float64, unit string) figure.Step {
	return figure.Step{
		Formula: formula, Source: sourceTransient,
		Inputs: []figure.Input{
			{Symbol: "Ta", Value: h.AmbientC, Unit: "degC", From: "ambient"},
			{Symbol: "T0", Value: quantity.Round(startC), Unit: "degC", From: "temperature at the start"},
			{Symbol: "τ", Value: quantity.Round(tau), Unit: "s", From: "τ = σ·S·(Tr − Ta)/(I0²·r(Tr)), copper alone"},
			{Symbol: "g", Value: quantity.Round(g), From: "g = (I/I0)²·(Tr − Ta)/(234.5 + Tr)"},
			given,
		},
		Result: quantity.Round(result), Unit: unit,
	}
}
