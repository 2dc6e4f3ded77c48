package circuit

import (
	"slices"

	"driploop/model/copper"
	"driploop/model/figure"
)

// setDeviceFault bounds the current of a bolted fault at a device, to the negative
// terminal of a battery. The greatest is with the batteries' least resistance and
// cold conductors; the least with their greatest resistance and conductors at
// working temperature, at the load terminal. The greatest is prospective: as if a
// conductor of no resistance stood in the place of the device (IEC 60050-441,
// 441-17-01), so of its two terminals that counts at which it is greater.
func (a *analysis) setDeviceFault(r *DeviceResult, i int) {
	for k, fam := range a.states(i) {
		b := &a.net.branches[i]
		high := a.greatestFault(b.b, fam, leastOhms).figure()
		if line := a.greatestFault(b.a, fam, leastOhms).figure(); high.Known && line.Known {
			high = greater(high, line)
		}
		low := a.greatestFault(b.b, fam, greatestOhms).figure()
		if k == 0 {
			r.FaultHighA, r.FaultLowA = high, low
			continue
		}
		r.FaultHighA, r.FaultLowA = greater(r.FaultHighA, high), lesser(r.FaultLowA, low)
	}
}

// states returns the states in which a branch is on the way out to a load, the
// usual one if there is none.
func (a *analysis) states(i int) []*family {
	var list []*family
	for at := a.behind[i]; at != nil; at = at.next {
		if !slices.Contains(list, at.fam) {
			list = append(list, at.fam)
		}
	}
	if list == nil {
		list = append(list, a.solver.family(a.solver.base, full))
	}
	return list
}

// faulted is what a bolted fault does to a conductor.
type faulted struct {
	low, high, soonest, latest figure.Figure
	least, most                figure.Figure // energy let through
	by, upTo                   figure.Figure // of latest and most, what it is at most
	clears                     figure.Truth
}

// or returns what is unfavourable of two faults: the widest range of currents, the
// longest time to clear and the most energy.
func (f faulted) or(o faulted) faulted {
	return faulted{
		low: lesser(f.low, o.low), high: greater(f.high, o.high),
		soonest: lesser(f.soonest, o.soonest), latest: greater(f.latest, o.latest),
		least: greater(f.least, o.least), most: greater(f.most, o.most),
		by: greater(f.by, o.by), upTo: greater(f.upTo, o.upTo),
		clears: both(f.clears, o.clears),
	}
}

// greater returns the greater of two figures, open if either is.
func greater(f, o figure.Figure) figure.Figure {
	switch {
	case !f.Known || !o.Known:
		return figure.Open(uniqueGaps(append(append([]figure.Gap(nil), f.Gaps...), o.Gaps...))...)
	case o.Value > f.Value:
		return o
	}
	return f
}

// lesser returns the lesser of two figures, open if either is.
func lesser(f, o figure.Figure) figure.Figure {
	if f.Known && o.Known && o.Value < f.Value {
		return o
	}
	if f.Known && o.Known {
		return f
	}
	return greater(f, o)
}

// unknown returns a fault of which nothing is known, and why.
func unknown(why figure.Gap) faulted {
	open := figure.Open(why)
	return faulted{low: open, high: open, soonest: open, latest: open, least: open, most: open, by: open, upTo: open, clears: figure.OpenTruth(why)}
}

// setFault fills in what a bolted fault does to a conductor.
func (r *ConductorResult) setFault(f faulted) {
	r.FaultLowA, r.FaultHighA, r.ClearLeastS, r.ClearS = f.low, f.high, f.soonest, f.latest
	r.LetThroughLeastA2s, r.LetThroughA2s, r.Clears = f.least, f.most, f.clears
	r.ClearByS, r.LetThroughUpToA2s = f.by, f.upTo
}

// conductorFault returns what a bolted fault does to a conductor: at its far end,
// of a conductor of a ring at the unfavourable one of both.
func (a *analysis) conductorFault(i int) faulted {
	list := a.behind[i]
	if list == nil {
		list = a.ends(i)
	}
	if list == nil {
		return unknown(figure.Because("no battery feeds it in the record"))
	}
	var f faulted
	for at := list; at != nil; at = at.next {
		here := a.faultBehind(at)
		if at != list {
			here = f.or(here)
		}
		f = here
	}
	return f
}

// faultBehind returns what a fault at one far end of a conductor does.
func (a *analysis) faultBehind(at *behind) faulted {
	high, low := a.greatestFault(at.far, at.fam, leastOhms), a.leastFault(at)
	f := faulted{low: low.figure(), high: high.figure()}
	least := never()
	if len(low.gaps) == 0 {
		least = a.clearing(low, low.amps)
	}
	a.setCleared(&f, low, high, least)
	a.setLetThrough(&f, low, a.greatestFault(at.near, at.fam, leastOhms), least)
	return f
}

// withstand returns what the insulation of a conductor stands.
func withstand(b *branch, r *ConductorResult) figure.Figure {
	rating, ok := number(&b.cond.Insulation)
	gaps := append([]figure.Gap(nil), r.AreaMM2.Gaps...)
	if !ok {
		gaps = append(gaps, figure.Missing(b.path+".insulation"))
	}
	if len(gaps) > 0 {
		return figure.Open(gaps...)
	}
	w, err := copper.Withstand(b.cond.Compound.V, rating)
	if err != nil {
		return figure.Open(figure.Because(b.path + ": " + err.Error()))
	}
	f := copper.WithstandEnergy(w.K, r.AreaMM2.Value)
	return f.Shown(func() []figure.Step { return append([]figure.Step{w.Working()}, f.Working()...) })
}
