package circuit

import (
	"math"

	"driploop/model/figure"
)

// setDevices fills in where each fuse and breaker stands and what flows there.
func (a *analysis) setDevices() {
	through := a.loadsThrough()
	for k := range a.net.parts {
		p := &a.net.parts[k]
		if p.class != deviceClass {
			continue
		}
		r := a.result.Devices[p.ID]
		i := a.deviceBranch(p)
		if i < 0 {
			gap := figure.Because("nothing is joined by it in the record")
			open := figure.Open(gap)
			r.First, r.Ungrounded = figure.False(), figure.OpenTruth(gap)
			r.NominalV, r.CrankingA, r.FaultLowA, r.FaultHighA, r.LoadA, r.RunningA = a.systemVolts(), open, open, open, open, open
			continue
		}
		b := &a.net.branches[i]
		r.First = a.isFirst(i)
		r.Ungrounded = a.poles.ungrounded(a.deviceAt(b))
		r.NominalV = a.deviceNominal(b)
		r.CrankingA = a.cranking(b)
		r.LoadA, _ = a.peaks.continuous[i].figure("greatest continuous current; a load counts as continuous unless its record says that it pauses")
		r.RunningA, _ = a.peaks.running[i].figure("greatest current over all cases, starting and stall aside")
		r.Loads = through[i]
		a.setSelective(r, i)
		a.setDeviceFault(r, i)
	}
}

// deviceBranch returns the branch of a device, -1 for none. Of a device with
// several poles the first stands for all.
func (a *analysis) deviceBranch(p *part) int {
	for i := p.start; i < p.end; i++ {
		if a.net.branches[i].kind == device {
			return i
		}
	}
	return -1
}

func (a *analysis) deviceAt(b *branch) polarity {
	p, q := a.poles.at(b.a), a.poles.at(b.b)
	return polarity{p.positive || q.positive, p.negative || q.negative}
}

// isFirst tells whether no other device lies between a device and a battery.
func (a *analysis) isFirst(i int) figure.Truth {
	b := &a.net.branches[i]
	for _, f := range a.feedings {
		if a.net.branches[f.pole.branch].class == batteryClass && (f.zone[b.a] || f.zone[b.b]) {
			return figure.True()
		}
	}
	return figure.False()
}

// deviceNominal returns the nominal voltage that a device has to break: that of
// its node above the negative pole, or below the positive one.
func (a *analysis) deviceNominal(b *branch) figure.Figure {
	levels := a.levels()
	for _, node := range []int{b.a, b.b} {
		at := levels[node]
		if at.island < 0 || at.volts <= 0 && !a.poles.positive[node] {
			continue
		}
		if at.open {
			return figure.Open(figure.Missing(a.net.vesselPath("system")))
		}
		if at.volts > 0 {
			return nominalFigure(at.volts, func() string { return "batteries that feed " + b.id })
		}
	}
	return a.systemVolts()
}

// cranking sums the cold-cranking currents of the batteries that are connected
// in parallel to a device; of a series chain the weakest counts.
func (a *analysis) cranking(b *branch) figure.Figure {
	var gaps []figure.Gap
	var inputs []figure.Input
	var sum float64
	for _, t := range a.poles.all {
		src := &a.net.branches[t.branch]
		if src.class != batteryClass || !t.positive || !t.reaches[b.a] && !t.reaches[b.b] {
			continue
		}
		v, path, missing := a.chainCranking(t)
		if len(missing) > 0 {
			gaps = append(gaps, missing...)
			continue
		}
		sum += v
		inputs = append(inputs, figure.Input{Symbol: "I(" + src.id + ")", Value: v, Unit: "A", From: path})
	}
	switch {
	case len(gaps) > 0:
		return figure.Open(uniqueGaps(gaps)...)
	case len(inputs) == 0:
		return figure.Open(figure.Because("no battery reaches it"))
	}
	return figure.Worked(sum, "A", func() []figure.Step {
		return []figure.Step{{
			Formula: "cold-cranking currents in parallel: sum", Source: "Kirchhoff's current law", Inputs: inputs, Result: sum, Unit: "A",
		}}
	})
}

// chainCranking returns the cranking current at a positive terminal: that of the
// weakest battery of the series chain below it.
func (a *analysis) chainCranking(top *pole) (least float64, path string, gaps []figure.Gap) {
	least = math.Inf(1)
	seen := map[int]bool{}
	for t := top; t != nil; {
		seen[t.branch] = true
		src := &a.net.branches[t.branch]
		own := src.path + ".cranking"
		switch v, ok := sane(&src.comp.Cranking); {
		case !ok:
			gaps = append(gaps, figure.Missing(own))
		case v < least:
			least, path = v, own
		}
		var below *pole
		for _, o := range a.poles.all {
			if o.positive && a.net.branches[o.branch].class == batteryClass && !seen[o.branch] && o.reaches[src.b] {
				below = o
				break
			}
		}
		t = below
	}
	return least, path, gaps
}

// loadsThrough returns, by device and contact, the loads whose own current passes
// it, in order.
func (a *analysis) loadsThrough() [][]string {
	if a.through != nil {
		return a.through
	}
	a.through = make([][]string, len(a.net.branches))
	for _, l := range a.solver.loads {
		id := a.net.branches[l].id
		for _, t := range a.solver.solveAlone(l) {
			t.way.each(func(i int) {
				if kind := a.net.branches[i].kind; kind != device && kind != contact {
					return
				}
				if list := a.through[i]; len(list) == 0 || list[len(list)-1] != id {
					a.through[i] = append(list, id)
				}
			})
		}
	}
	return a.through
}
