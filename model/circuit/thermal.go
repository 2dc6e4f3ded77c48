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

// warmth is a conductor as its temperature is figured, or what is missing for
// that.
type warmth struct {
	copper.Heating
	gaps []figure.Gap
}

// warmthOf returns a conductor as its temperature is figured. The air is the one
// that its allowable amperage is for.
func warmthOf(b *branch, r *ConductorResult) warmth {
	rating, ok := number(&b.cond.Insulation)
	var gaps []figure.Gap
	if !ok {
		gaps = append(gaps, figure.Missing(b.path+".insulation"))
	}
	gaps = append(gaps, r.Allowable.Gaps...)
	gaps = append(gaps, b.metal.gaps...)
	if len(gaps) > 0 {
		return warmth{gaps: uniqueGaps(gaps)}
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
	return warmth{Heating: h}
}

// working returns the temperature of a conductor in °C at a lasting current.
// Without a known current or amperage it is the insulation rating, which no
// conductor loaded within its amperage exceeds; without that it is open.
func (w *warmth) working(b *branch, current amount) figure.Figure {
	if rating := atRating(b); !rating.Known || !current.known || len(w.gaps) > 0 {
		return shownAtRating(b, rating)
	}
	t := w.Steady(current.value)
	switch {
	case t.Known && t.Value <= hottestCopper:
		return t
	case t.Known || w.RatingC > w.AmbientC:
		return figure.Worked(hottestCopper, "degC", func() []figure.Step {
			return []figure.Step{{
				Formula: "conductor temperature: held at 250 °C, where no insulation is left", Source: "common physics",
				Inputs: []figure.Input{{Symbol: "I", Value: current.value, Unit: "A", From: "greatest current, starting and stall aside"}},
				Result: hottestCopper, Unit: "degC",
			}}
		})
	}
	return shownAtRating(b, atRating(b))
}

// atRating returns the temperature of a conductor at its insulation rating, without
// working.
func atRating(b *branch) figure.Figure {
	rating, ok := number(&b.cond.Insulation)
	if !ok {
		return figure.Open(figure.Missing(b.path + ".insulation"))
	}
	return figure.Of(min(rating, hottestCopper), "degC")
}

func shownAtRating(b *branch, t figure.Figure) figure.Figure {
	if !t.Known {
		return t
	}
	return t.Shown(func() []figure.Step {
		rating, _ := number(&b.cond.Insulation)
		rating = min(rating, hottestCopper)
		return []figure.Step{{
			Formula: "conductor temperature: T = Tr", Source: sourceAtRating,
			Inputs: []figure.Input{{Symbol: "Tr", Value: rating, Unit: "degC", From: b.path + ".insulation"}}, Result: rating, Unit: "degC",
		}}
	})
}

// heat sets the span of resistance that the network is solved with: at a
// temperature, and without one from 20 °C to what no sound insulation survives.
func (b *branch) heat(t figure.Figure) {
	switch cold := b.metal.cold; {
	case cold.open():
		b.ohms = cold
	case !t.Known:
		b.ohms = span{low: cold.high, high: copper.ResistanceAt(cold.high, guessHot), gaps: t.Gaps}
	default:
		b.ohms = exactly(copper.ResistanceAt(cold.high, t.Value))
	}
}

// hotOhms returns the resistance of a conductor at its working temperature.
func hotOhms(b *branch, r *ConductorResult, t figure.Figure) figure.Figure {
	if cold := b.metal.cold; cold.open() {
		return figure.Open(uniqueGaps(slices.Concat(cold.gaps, t.Gaps))...)
	}
	if !t.Known {
		return figure.Open(t.Gaps...)
	}
	return figure.Worked(1000*copper.ResistanceAt(b.metal.cold.high, t.Value), "mohm", func() []figure.Step {
		return slices.Concat(r.R20.Working(), t.Working(), []figure.Step{copper.HotStep(r.R20.Value, t.Value, "mohm")})
	})
}

// steady returns the temperature that a lasting current leads to, at most that at
// which copper melts.
func (w *warmth) steady(amps float64) float64 {
	t, ok := w.SteadyC(amps)
	if !ok {
		return melting
	}
	return min(t, melting)
}
