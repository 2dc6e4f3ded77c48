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
	r.FaultHighA = a.faultAt(b.b, leastOhms)
	r.FaultLowA = a.faultAt(b.b, greatestOhms)
}

// faultAt returns the current of a bolted fault at a node, to the negative
// terminal of a battery to which it is greatest.
func (a *analysis) faultAt(node, end int) figure.Figure {
	m := a.faultMesh(end)
	best := figure.Figure{}
	var gaps []figure.Gap
	for _, t := range a.poles.all {
		src := &a.net.branches[t.branch]
		if src.class != batteryClass || t.positive || !t.outer || m.island[node] != m.island[t.node] {
			continue
		}
		if p, bad := m.faults[m.island[node]]; bad {
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
	if a.faults[end] == nil {
		f := a.solver.family(a.solver.base, full)
		v := a.net.fill(f.closed, full, end, 0)
		if end == leastOhms {
			for _, i := range f.closed {
				if b := &a.net.branches[i]; b.kind == wire && !b.ohms.open() {
					v.ohms[i] = b.metal.cold.low
				}
			}
		}
		a.faults[end] = newMesh(a.net, f.closed, v, 0)
	}
	return a.faults[end]
}

// bolted returns the current between a node and a source's negative terminal.
func (a *analysis) bolted(m *mesh, node int, t *pole, end int) figure.Figure {
	forest := a.solver.family(a.solver.base, full).forest
	way := m.unit(forest, forest.way(t.node, node))
	var gaps []figure.Gap
	for _, h := range way {
		b := &a.net.branches[h.branch]
		gaps = append(gaps, b.ohms.gaps...)
		if b.kind == source {
			gaps = append(gaps, a.net.sourceVolts(b, full).gaps...)
		}
	}
	if len(gaps) > 0 {
		return figure.Open(uniqueGaps(gaps)...)
	}
	idle := m.atRest()
	volts := idle.volts[node] - idle.volts[t.node]
	ohms := m.ohmsOf(way)
	if ohms <= 0 {
		return figure.Open(figure.Because("nothing in the record limits a fault at " + a.net.nodes[node].name))
	}
	amps := math.Abs(volts / ohms)
	what := "greatest: batteries at their least internal resistance, conductors at 20 °C"
	if end == greatestOhms {
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
