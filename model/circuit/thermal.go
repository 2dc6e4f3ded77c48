package circuit

import (
	"slices"

	"driploop/model/copper"
	"driploop/model/figure"
)

// Temperatures of conductors, °C. hottestCopper is where an overloaded conductor
// is held for the sake of its resistance: insulation has long failed there.
// melting is where copper melts.
const (
	hottestCopper  = 250
	melting        = 1083
	guessHot       = 105 // of a conductor without an insulation rating
	sourceAtRating = "insulation rating, the hottest that a conductor loaded within its amperage gets"
)

// heating returns a conductor as its temperature is figured, or what is missing.
// The air is the one that its allowable amperage is for.
func heating(b *branch, r *ConductorResult) (copper.Heating, []figure.Gap) {
	rating, ok := number(b.cond.Insulation)
	var gaps []figure.Gap
	if !ok {
		gaps = append(gaps, figure.Missing(b.path+".insulation"))
	}
	gaps = append(gaps, r.Allowable.Gaps...)
	gaps = append(gaps, b.metal.gaps...)
	if len(gaps) > 0 {
		return copper.Heating{}, uniqueGaps(gaps)
	}
	h := copper.Heating{
		AmbientC: copper.Table5AmbientC, RatingC: rating, AllowedA: r.Allowable.Value,
		AreaMM2: b.metal.wire.AreaMM2, R20: b.metal.wire.R20,
	}
	if r.InEngineSpace.Value {
		h.AmbientC = copper.EngineSpaceC
	}
	if r.HottestAmbient.Known {
		h.AmbientC = max(h.AmbientC, r.HottestAmbient.Value)
	}
	return h, nil
}

// workingTemperature returns the temperature of a conductor in °C at a lasting
// current. Without a known current or amperage it is the insulation rating,
// which no conductor loaded within its amperage exceeds; without that it is open.
func workingTemperature(b *branch, r *ConductorResult, current figure.Figure) figure.Figure {
	rating, ok := number(b.cond.Insulation)
	if !ok {
		return figure.Open(figure.Missing(b.path + ".insulation"))
	}
	h, gaps := heating(b, r)
	if !current.Known || len(gaps) > 0 {
		return atRating(b, min(rating, hottestCopper))
	}
	t := h.Steady(current.Value)
	switch {
	case t.Known && t.Value <= hottestCopper:
		return t
	case t.Known || h.RatingC > h.AmbientC:
		return figure.Worked(hottestCopper, "degC", func() []figure.Step {
			return []figure.Step{{
				Formula: "conductor temperature: held at 250 °C, where no insulation is left", Source: "common physics",
				Inputs: []figure.Input{{Symbol: "I", Value: current.Value, Unit: "A", From: "greatest current, starting and stall aside"}},
				Result: hottestCopper, Unit: "degC",
			}}
		})
	}
	return atRating(b, min(rating, hottestCopper))
}

func atRating(b *branch, rating float64) figure.Figure {
	return figure.Worked(rating, "degC", func() []figure.Step {
		return []figure.Step{{
			Formula: "conductor temperature: T = Tr", Source: sourceAtRating,
			Inputs: []figure.Input{{Symbol: "Tr", Value: rating, Unit: "degC", From: b.path + ".insulation"}}, Result: rating, Unit: "degC",
		}}
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
	r.RHot = figure.Worked(1000*hot, "mohm", func() []figure.Step {
		return slices.Concat(r.R20.Working(), t.Working(), []figure.Step{copper.HotStep(r.R20.Value, t.Value, "mohm")})
	})
	b.ohms = exactly(hot)
}

// findHeatings returns the conductors whose temperature can be figured.
func (a *analysis) findHeatings() []*copper.Heating {
	out := make([]*copper.Heating, len(a.net.branches))
	for i := range a.net.branches {
		b := &a.net.branches[i]
		if b.kind != wire {
			continue
		}
		if h, gaps := heating(b, a.result.Conductors[b.id]); len(gaps) == 0 {
			out[i] = &h
		}
	}
	return out
}

// steady returns the temperature that a lasting current leads to, at most that at
// which copper melts.
func steady(h *copper.Heating, amps float64) float64 {
	t, ok := h.SteadyC(amps)
	if !ok {
		return melting
	}
	return min(t, melting)
}
