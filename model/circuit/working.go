package circuit

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// dropStep is the working of a drop in the network: over every part of one way from
// the source to the load and one back. Of ways in parallel each has the same drop.
func (a *analysis) dropStep(t *trial, volts float64) figure.Step {
	f := t.way
	k := t.lone.meshOf(func(k int) float64 {
		u, _ := t.lone.bankVolts(k, f.bank)
		v, _ := t.lone.voltage(k)
		return u - v
	})
	ohms := t.lone.family.meshes[k].values.ohms
	b := &a.net.branches[t.load]
	entry := a.loadEnd(t)
	ways := append(f.oneWay(f.bank[len(f.bank)-1].to, entry), f.oneWay(b.other(entry), f.bank[0].from)...)
	inputs := make([]figure.Input, 0, 2*len(ways))
	for _, e := range ways {
		amps, _ := t.lone.flow(k, e.branch)
		if a.net.branches[e.branch].a != e.from {
			amps = -amps
		}
		inputs = append(inputs, a.net.resistanceInput(hop{e.branch, 1}, ohms[e.branch]),
			figure.Input{Symbol: "I(" + a.net.branches[e.branch].id + ")", Value: quantity.Round(amps), Unit: "A", From: "case " + t.name})
	}
	return figure.Step{
		Formula: "drop in the solved network from " + a.net.nodes[a.net.branches[f.source].a].name + " to " + b.id + " and back: ΔU = R·I + R·I + …",
		Source:  sourceNodal + "; conductors at working temperature", Inputs: inputs, Result: quantity.Round(volts), Unit: "V",
	}
}

// oneWay returns a shortest way of a load's current between two nodes, past the
// sources.
func (f flow) oneWay(from, to int) []edge {
	inside := map[int]bool{}
	for _, e := range f.bank {
		inside[e.branch] = true
	}
	next := map[int][]edge{}
	for _, e := range f.edges {
		if !inside[e.branch] {
			next[e.from] = append(next[e.from], e)
		}
	}
	over := map[int]edge{from: {}}
	for queue := []int{from}; len(queue) > 0 && queue[0] != to; queue = queue[1:] {
		for _, e := range next[queue[0]] {
			if _, seen := over[e.to]; !seen {
				over[e.to] = e
				queue = append(queue, e.to)
			}
		}
	}
	var way []edge
	for node := to; node != from; {
		e, reached := over[node]
		if !reached {
			return nil
		}
		way, node = append(way, e), e.from
	}
	slices.Reverse(way)
	return way
}

// voltageStep is the working of the voltage at a load: what the bank holds, less
// what is lost inside it and on the way.
func (a *analysis) voltageStep(t *trial, l *lone, volts float64) figure.Step {
	state := "full"
	if l.family.supply == low {
		state = "low"
	}
	k := l.meshOf(func(k int) float64 { v, _ := l.voltage(k); return -v })
	m := l.family.meshes[k]
	var inputs []figure.Input
	for _, e := range t.way.bank {
		b := &a.net.branches[e.branch]
		if b.kind == source {
			inputs = append(inputs, figure.Input{Symbol: "E(" + b.id + ")", Value: quantity.Round(m.values.volts[e.branch]), Unit: "V", From: b.path + ", battery " + state})
		}
		amps, _ := l.flow(k, e.branch)
		inputs = append(inputs, a.net.resistanceInput(hop{e.branch, 1}, m.values.ohms[e.branch]),
			figure.Input{Symbol: "I(" + b.id + ")", Value: quantity.Round(math.Abs(amps)), Unit: "A", From: "case " + t.name})
	}
	u, _ := l.bankVolts(k, t.way.bank)
	inputs = append(inputs, figure.Input{Symbol: "ΔU", Value: quantity.Round(u - volts), Unit: "V", From: "drop in the solved network, battery " + state})
	return figure.Step{
		Formula: "voltage at the load: U = E − R·I − ΔU, battery " + state + ", at its greatest internal resistance", Source: sourceNodal,
		Inputs: inputs, Result: quantity.Round(volts), Unit: "V",
	}
}
