package circuit

import (
	"math"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// setDeviceFault bounds the current of a bolted fault between a device's load
// terminal and the negative terminal of a battery, all batteries feeding it at
// once, loads and charging sources aside. The greatest is with the batteries'
// least resistance and cold conductors; the least with their greatest
// resistance and conductors at working temperature.
func (a *analysis) setDeviceFault(r *DeviceResult, b *branch) {
	r.FaultHighA = a.faultAt(b.b, b.a, endLow)
	r.FaultLowA = a.faultAt(b.b, b.a, endHigh)
}

// faultAt returns the current of a bolted fault at a node. If the node is the
// one nearer to the sources, the other end of the device is meant.
func (a *analysis) faultAt(node, other, end int) figure.Figure {
	m := a.faultMesh(end)
	best := figure.Figure{}
	var gaps []figure.Gap
	for _, t := range a.poles.all {
		src := &a.net.branches[t.branch]
		if src.class != batteryClass || t.positive || !t.outer {
			continue
		}
		is := m.island[t.node]
		if m.island[node] != is {
			continue
		}
		if p, bad := m.faults[is]; bad {
			return figure.Open(figure.Because(p.Says))
		}
		f := a.bolted(m, node, t, end)
		gaps = append(gaps, f.Gaps...)
		if f.Known && (!best.Known || f.Value > best.Value) {
			best = f
		}
	}
	switch {
	case len(gaps) > 0:
		return figure.Open(uniqueGaps(gaps)...)
	case !best.Known:
		return figure.Open(figure.Because("no battery feeds " + a.net.nodes[node].name + " in the record"))
	}
	return best
}

// faultMesh returns the network without loads at one end of the ranges.
func (a *analysis) faultMesh(end int) *mesh {
	if a.faults[end] != nil {
		return a.faults[end]
	}
	closed := a.net.closed(a.solver.base)
	v := a.net.fill(closed, full, end, 0)
	if end == endLow {
		for _, i := range closed {
			if b := &a.net.branches[i]; b.kind == wire && !b.ohms.open() {
				v.ohms[i] = conductorOhms(b.cond).low
			}
		}
	}
	a.faults[end] = newMesh(a.net, closed, v)
	return a.faults[end]
}

// bolted returns the current between a node and a source's negative terminal.
func (a *analysis) bolted(m *mesh, node int, t *pole, end int) figure.Figure {
	idle := m.atRest()
	one := m.solve(false, []drain{{branch: -1, a: node, b: t.node, amps: 1}})
	if idle == nil || one == nil {
		return figure.Open(figure.Because("the network around " + a.net.nodes[node].name + " has no unique solution"))
	}
	volts := idle.volts[node] - idle.volts[t.node]
	ohms := one.volts[t.node] - one.volts[node]
	var gaps []figure.Gap
	for _, i := range m.closed {
		b := &a.net.branches[i]
		if significant(one.amps[i]) {
			gaps = append(gaps, b.ohms.gaps...)
			if b.kind == source {
				gaps = append(gaps, a.net.sourceVolts(b, full).gaps...)
			}
		}
	}
	if len(gaps) > 0 {
		return figure.Open(uniqueGaps(gaps)...)
	}
	if ohms <= 0 {
		return figure.Open(figure.Because("nothing in the record limits a fault at " + a.net.nodes[node].name))
	}
	amps := math.Abs(volts / ohms)
	what := "greatest: batteries at their least internal resistance, conductors at 20 °C"
	if end == endHigh {
		what = "least: batteries at their greatest internal resistance, conductors at working temperature"
	}
	return figure.Of(amps, "A", figure.Step{
		Formula: "prospective current of a bolted fault at " + a.net.nodes[node].name + ": I = U/R, " + what,
		Source:  "Thévenin's theorem; " + sourceNodal,
		Inputs: []figure.Input{
			{Symbol: "U", Value: quantity.Round(volts), Unit: "V", From: "solved network without loads"},
			{Symbol: "R", Value: quantity.Round(1000 * ohms), Unit: "mohm", From: "solved network, from " + a.net.nodes[node].name + " to " + t.name},
		},
		Result: quantity.Round(amps), Unit: "A",
	})
}
