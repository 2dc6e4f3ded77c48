package circuit

import (
	"math"
	"slices"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
)

// stall is one load with its rotor locked.
type stall struct {
	amps    float64
	opens   bound // s: the greatest time in which a device opens
	soonest bound // s: the least
	devices []hop
	by      string
}

// setStall fills in what a locked rotor does: which device opens when, and when
// a conductor on the way passes its rating.
func (a *analysis) setStall(r *LoadResult, l int) {
	b := &a.net.branches[l]
	amps, ok := sane(&b.comp.Stall)
	trials := a.solver.solveAlone(l)
	var why figure.Gap
	switch {
	case !hasMotor(b):
		why = figure.Because("it has no rotor to lock")
	case !ok:
		why = figure.Missing(b.path + ".stall")
	case len(trials) == 0:
		why = a.unfedGaps(b)[0]
	}
	if why != (figure.Gap{}) {
		open := figure.Open(why)
		r.StallA, r.StallOpenLeastS, r.StallOpenS, r.StallHeatS = open, open, open, open
		r.StallOpens, r.StallHeats = figure.OpenTruth(why), figure.OpenTruth(why)
		return
	}
	r.StallA = figure.Worked(amps, "A", func() []figure.Step {
		return []figure.Step{{
			Formula: "current with the rotor locked, as recorded", Source: "the record",
			Inputs: []figure.Input{{Symbol: "I", Value: amps, Unit: "A", From: b.path + ".stall"}}, Result: amps, Unit: "A",
		}}
	})
	s := a.stallOf(l, trials)
	a.setStallOpening(r, s)
	a.setStallHeat(r, s, trials)
	a.setStalledConductors(b, s, trials)
}

func hasMotor(b *branch) bool {
	switch b.comp.Kind.V {
	case "motor", "pump", "blower", "refrigerator":
		return true
	}
	return false
}

// stallOf finds the device that opens first on a load's way out; of several ways
// to run it the one where that takes longest counts.
func (a *analysis) stallOf(l int, trials []*trial) stall {
	amps, _ := sane(&a.net.branches[l].comp.Stall)
	worst := stall{amps: amps}
	for k, t := range trials {
		s := stall{amps: amps, opens: sureOf(math.Inf(1)), soonest: sureOf(math.Inf(1))}
		on := map[int]bool{}
		for _, i := range t.way.out.branches {
			on[i] = true
		}
		for _, h := range t.lone.own {
			if !on[h.branch] || a.net.branches[h.branch].kind != device {
				continue
			}
			s.devices = append(s.devices, h)
			c := a.releaseOf(h.branch).cut(amps * math.Abs(h.amps))
			if c.latest.worst < s.opens.worst {
				s.by = a.net.branches[h.branch].id
			}
			s.opens, s.soonest = s.opens.least(c.latest), s.soonest.least(c.soonest)
		}
		if k == 0 || s.opens.worst > worst.opens.worst {
			worst = s
		}
	}
	return worst
}

func (a *analysis) setStallOpening(r *LoadResult, s stall) {
	if len(s.devices) == 0 {
		why := figure.Because("no device lies on its way")
		r.StallOpens, r.StallOpenLeastS, r.StallOpenS = figure.False(), figure.Open(why), figure.Open(why)
		return
	}
	steps := func() []figure.Step { return a.openingSteps(nil, s.devices, s.amps) }
	r.StallOpenLeastS = a.openFigure(s.soonest, "s", s.devices, func() string { return "no device on its way opens at " + ampere(s.amps) }, steps)
	r.StallOpenS = a.openFigure(s.opens, "s", s.devices, func() string { return "no device on its way surely opens at " + ampere(s.amps) }, steps)
	if r.StallOpens = a.surelyOpens(s.opens, s.devices); r.StallOpens.Value {
		r.StallBy = s.by
	}
}

// hot is a conductor on the way of a locked rotor.
type hot struct {
	b     *branch
	r     *ConductorResult
	air   copper.Heating
	start float64 // its working temperature
	amps  float64 // the motor's and what runs all the time
	gaps  []figure.Gap
}

// heated returns the conductors on the way of a locked rotor.
func (a *analysis) heated(s stall, trials []*trial) []hot {
	var list []hot
	for _, t := range trials {
		for _, h := range t.lone.own {
			b := &a.net.branches[h.branch]
			if b.kind != wire {
				continue
			}
			r, w, lasting := &a.wires[h.branch], &a.warmth[h.branch], &a.peaks.continuous[h.branch]
			start := w.working(b, amount{r.Current.Value, r.Current.Known})
			gaps := slices.Concat(w.gaps, start.Gaps, r.Current.Gaps, uniqueGaps(lasting.gaps))
			list = append(list, hot{b, r, w.Heating, start.Value, s.amps*math.Abs(h.amps) + lasting.amount().value, uniqueGaps(gaps)})
		}
	}
	return list
}

// setStallHeat finds the conductor on the way that passes its rating first, from
// its working temperature.
func (a *analysis) setStallHeat(r *LoadResult, s stall, trials []*trial) {
	var gaps []figure.Gap
	soonest := math.Inf(1)
	var first hot
	for _, c := range a.heated(s, trials) {
		if len(c.gaps) > 0 {
			gaps = append(gaps, c.gaps...)
			continue
		}
		seconds, reached, err := c.air.Reach(c.start, c.air.RatingC, c.amps)
		if err != nil {
			gaps = append(gaps, figure.Because(c.b.path+": "+err.Error()))
			continue
		}
		if reached && seconds < soonest {
			soonest, r.StallAt = seconds, c.b.id
			first = c
		}
	}
	switch {
	case len(gaps) > 0:
		r.StallAt = ""
		r.StallHeats, r.StallHeatS = figure.OpenTruth(uniqueGaps(gaps)...), figure.Open(uniqueGaps(gaps)...)
	case math.IsInf(soonest, 1):
		r.StallHeats = figure.False()
		r.StallHeatS = figure.Open(figure.Because("no conductor on its way passes its rating, however long it stalls"))
	default:
		r.StallHeats, r.StallHeatS = figure.True(), figure.Worked(soonest, "s", func() []figure.Step {
			return []figure.Step{reachStep(first.b, first.air, first.start, first.amps, soonest)}
		})
	}
}

// setStalledConductors raises the stall temperature of the conductors on the way
// to what they reach until a device, or the motor's own protector, opens. Where it
// cannot be told when that is, but by when, or never, a conductor that stands that
// long gets no hotter.
func (a *analysis) setStalledConductors(load *branch, s stall, trials []*trial) {
	until := s.opens
	var gaps []figure.Gap
	switch protector, ok := load.comp.Protector.Get(); {
	case ok && protector != "none":
		limit, hasLimit := sane(&load.comp.MotorLimit)
		if !hasLimit {
			until.best = 0
			gaps = append(gaps, figure.Missing(load.path+".motor_limit"))
		} else {
			until = bound{min(until.worst, limit), min(until.best, limit)}
		}
	case !ok && math.IsInf(until.worst, 1):
		until.best = 0
		gaps = append(gaps, figure.Missing(load.path+".protector"))
	}
	if !until.sure() {
		gaps = append(gaps, a.releaseGaps(s.devices)...)
	} else {
		gaps = nil
	}
	for _, c := range a.heated(s, trials) {
		t := c.air.Steady(c.amps)
		if len(c.gaps) == 0 && !math.IsInf(until.worst, 1) {
			t = c.air.After(c.start, c.amps, until.worst)
		}
		missing := append(append([]figure.Gap(nil), gaps...), c.gaps...)
		if len(c.gaps) == 0 && t.Known && t.Value <= c.air.RatingC {
			missing = nil
		}
		if len(missing) > 0 || !c.r.StallC.Known {
			c.r.StallC = figure.Open(uniqueGaps(append(missing, c.r.StallC.Gaps...))...)
			continue
		}
		if t = capped(t, c.amps); !t.Known || t.Value > c.r.StallC.Value {
			c.r.StallC = t
		}
	}
}

func reachStep(b *branch, h copper.Heating, start, amps, seconds float64) figure.Step {
	return figure.Step{
		Formula: "time in which conductor " + b.id + " passes its rating: t = τ/(1 − g)·ln((T∞ − T0)/(T∞ − T))",
		Source:  "heat balance of copper alone, σ by IEC 60949; secondary",
		Inputs: []figure.Input{
			{Symbol: "T0", Value: quantity.Round(start), Unit: "degC", From: "working temperature"},
			{Symbol: "T", Value: h.RatingC, Unit: "degC", From: b.path + ".insulation"},
			{Symbol: "Ta", Value: h.AmbientC, Unit: "degC", From: "air of the allowable amperage"},
			{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: "current with the rotor locked"},
			{Symbol: "I0", Value: h.AllowedA, Unit: "A", From: "allowable amperage"},
		},
		Result: quantity.Round(seconds), Unit: "s",
	}
}
