package circuit

import (
	"driploop/model/figure"
)

// setTerminals fills in what lands on each terminal.
func (a *analysis) setTerminals() {
	live := make([]bool, len(a.net.nodes))
	bare := make([]bool, len(a.net.nodes))
	for _, f := range a.feedings {
		merge(live, a.search.nodes(f.pole.node, pastNoSwitch))
		merge(bare, f.zone)
	}
	list := make([]TerminalResult, len(a.net.terminals))
	landed := make([]int, len(list)) // ends on each terminal
	for i := range a.net.branches[:a.net.wires] {
		for _, t := range a.net.branches[i].lands {
			landed[t]++
		}
	}
	ends := make([]string, 2*a.net.wires)
	for t, count := range landed {
		list[t].Landed, ends = ends[:0:count], ends[count:]
	}
	for i := range a.net.branches[:a.net.wires] {
		b := &a.net.branches[i]
		from, to := &list[b.lands[0]], &list[b.lands[1]]
		from.Landed = append(from.Landed, b.id+".from")
		to.Landed = append(to.Landed, b.id+".to")
	}
	for k := range list {
		t, r := &a.net.terminals[k], &list[k]
		if len(r.Landed) == 0 {
			continue
		}
		r.Component, r.Terminal = t.comp, t.name
		r.Ungrounded = a.poles.ungrounded(a.poles.at(t.node))
		if !r.Ungrounded.Known && a.net.nodes[t.node].class == groundClass {
			r.Ungrounded = figure.False()
		}
		r.AlwaysLive, r.Protected = truth(live[t.node]), truth(!bare[t.node])
		a.result.Terminals[t.label] = r
	}
}
