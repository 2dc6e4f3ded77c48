package circuit

import (
	"math"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
)

// Temperatures of conductors, °C. hottestCopper is where an overloaded
// conductor is held for the sake of its resistance: PVC has long failed there.
const (
	hottestCopper  = 250
	guessHot       = 105 // of a conductor without an insulation rating
	sourceSteady   = "steady heat balance: rise in proportion to I²; computed"
	sourceAtRating = "insulation rating, the hottest that a conductor loaded within its amperage gets"
)

// workingTemperature returns the temperature of a conductor in °C at a current:
//
//	T = Ta + (Tr − Ta)·(I/Ia)²
//
// Ta air that the allowable amperage Ia is for, Tr insulation rating. Without a
// known current or amperage it is Tr, which no conductor loaded within its
// amperage exceeds; without Tr it is open.
func workingTemperature(b *branch, r *ConductorResult, current figure.Figure) figure.Figure {
	tr, ok := number(b.cond.Insulation)
	if !ok {
		return figure.Open(figure.Missing(b.path + ".insulation"))
	}
	tr = min(tr, hottestCopper)
	if !current.Known || !r.Allowable.Known || r.Allowable.Value <= 0 {
		return figure.Of(tr, "degC", figure.Step{
			Formula: "conductor temperature: T = Tr", Source: sourceAtRating,
			Inputs: []figure.Input{{Symbol: "Tr", Value: tr, Unit: "degC", From: b.path + ".insulation"}}, Result: tr, Unit: "degC",
		})
	}
	ta := float64(copper.Table5AmbientC)
	from := "Table 5 of 33 CFR 183.425"
	if r.InEngineSpace.Value {
		ta, from = copper.EngineSpaceC, "note 1 to Table 5 of 33 CFR 183.425"
	}
	if r.HottestAmbient.Known && r.HottestAmbient.Value > ta {
		ta, from = r.HottestAmbient.Value, "hottest space crossed"
	}
	load := current.Value / r.Allowable.Value
	t := min(hottestCopper, ta+math.Max(0, tr-ta)*load*load)
	return figure.Of(t, "degC", figure.Step{
		Formula: "conductor temperature: T = Ta + (Tr − Ta)·(I/Ia)²", Source: sourceSteady,
		Inputs: []figure.Input{
			{Symbol: "Ta", Value: ta, Unit: "degC", From: from},
			{Symbol: "Tr", Value: tr, Unit: "degC", From: b.path + ".insulation"},
			{Symbol: "I", Value: current.Value, Unit: "A", From: "greatest current, starting and stall aside"},
			{Symbol: "Ia", Value: r.Allowable.Value, Unit: "A", From: "allowable amperage"},
		},
		Result: quantity.Round(t), Unit: "degC",
	})
}

// heat sets a conductor's resistance at its working temperature, and the span
// that the network is solved with. Without a temperature the span runs from
// 20 °C to what no sound insulation survives.
func heat(b *branch, r *ConductorResult, current figure.Figure) {
	t := workingTemperature(b, r, current)
	cold := b.metal.cold
	if cold.open() {
		r.RHot = figure.Open(uniqueGaps(append(append([]figure.Gap(nil), cold.gaps...), t.Gaps...))...)
		b.ohms = cold
		return
	}
	if !t.Known {
		r.RHot = figure.Open(t.Gaps...)
		b.ohms = span{low: cold.high, high: copper.ResistanceAt(cold.high, guessHot), gaps: t.Gaps}
		return
	}
	hot := copper.ResistanceAt(cold.high, t.Value)
	working := append(append([]figure.Step(nil), r.R20.Working...), t.Working...)
	r.RHot = figure.Of(1000*hot, "mohm", append(working, copper.HotStep(r.R20.Value, t.Value, "mohm"))...)
	b.ohms = exactly(hot)
}
