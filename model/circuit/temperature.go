package circuit

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// setHeat fills in temperatures, and what a locked rotor does.
func (a *analysis) setHeat() {
	paused := a.findPausing()
	for i := range a.wires {
		r := &a.wires[i]
		a.setTemperature(r, i, paused[i])
		r.StallC = r.TemperatureC
	}
	for _, l := range a.solver.loads {
		a.setStall(a.result.Loads[a.net.branches[l].id], l)
	}
}

// pausing is the loads on a conductor that do not run without pause.
type pausing struct {
	longest float64 // s: the longest run of any
	from    string
	gaps    []figure.Gap // runs that are not recorded
	any     bool
}

// findPausing gathers, by branch, the loads that pause and draw through it.
func (a *analysis) findPausing() []*pausing {
	found := make([]*pausing, len(a.net.branches))
	for _, l := range a.solver.loads {
		if !a.solver.pauses(l) {
			continue
		}
		c := a.net.branches[l].comp
		run, ok := sane(&c.RunTime)
		for _, t := range a.solver.solveAlone(l) {
			for _, i := range t.carrying() {
				p := found[i]
				if p == nil {
					p = &pausing{}
					found[i] = p
				}
				p.any = true
				switch {
				case !ok:
					p.gaps = append(p.gaps, figure.Missing(c.Path+".run_time"))
				case run > p.longest:
					p.longest, p.from = run, c.Path+".run_time"
				}
			}
		}
	}
	return found
}

// setTemperature figures the highest temperature of a conductor in normal use:
// steady under what runs all the time; from there, under the greatest current of
// any case, for the longest run of the loads that pause. Where even the greatest
// current may last, no time matters.
func (a *analysis) setTemperature(r *ConductorResult, i int, p *pausing) {
	h := &a.warmth[i]
	if len(h.gaps)+len(r.Current.Gaps) > 0 {
		r.TemperatureC = figure.Open(uniqueGaps(slices.Concat(h.gaps, r.Current.Gaps))...)
		return
	}
	if p == nil || r.Current.Value <= h.AllowedA {
		r.TemperatureC = capped(h.Steady(r.Current.Value), r.Current.Value)
		return
	}
	lasting := &a.peaks.continuous[i]
	if len(p.gaps)+len(lasting.gaps) > 0 {
		r.TemperatureC = figure.Open(uniqueGaps(slices.Concat(p.gaps, lasting.gaps))...)
		return
	}
	amps := lasting.amount().value
	start := capped(h.Steady(amps), amps)
	if !start.Known {
		r.TemperatureC = start
		return
	}
	then := capped(h.After(start.Value, r.Current.Value, p.longest), r.Current.Value)
	r.TemperatureC = then.Shown(func() []figure.Step { return slices.Concat(start.Working(), then.Working()) })
}

// capped turns a temperature that has no bound into that at which copper melts.
func capped(t figure.Figure, amps float64) figure.Figure {
	if t.Known && t.Value <= melting {
		return t
	}
	if !t.Known && len(t.Gaps) > 0 && t.Gaps[0].Field != "" {
		return t
	}
	return figure.Worked(melting, "degC", func() []figure.Step {
		return []figure.Step{{
			Formula: "conductor temperature without bound: taken where copper melts", Source: "melting point of copper, handbooks; secondary",
			Inputs: []figure.Input{{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: "current"}}, Result: melting, Unit: "degC",
		}}
	})
}
