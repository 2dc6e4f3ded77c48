package circuit

import (
	"math"

	"driploop/model/figure"
)

// caseResults returns the solved cases as the contract has them.
func (a *analysis) caseResults() []*CaseResult {
	list := make([]*CaseResult, len(a.trials))
	for k, t := range a.trials {
		list[k] = a.caseResult(t)
	}
	return list
}

func (a *analysis) caseResult(t *trial) *CaseResult {
	c := &CaseResult{
		Name: t.name, Kind: t.kind, Gaps: t.gaps,
		Voltages: map[string]float64{}, Currents: map[string]float64{}, Sources: map[string]float64{}, Temperatures: map[string]float64{},
	}
	lasting := !t.surging()
	if t.load >= 0 {
		c.Load = a.net.branches[t.load].id
	}
	c.Problem = t.problem()
	var open []figure.Gap
	for _, i := range t.listed() {
		b := &a.net.branches[i]
		if b.kind != wire && b.kind != source {
			continue
		}
		if _, bad := t.fault(b.a); bad {
			continue
		}
		if !t.amps(i).known {
			open = append(open, a.blame(t, i)...)
			continue
		}
		amps, _ := t.flow(0, i)
		switch {
		case b.kind == wire:
			c.Currents[b.id] = plain(amps)
			if h := &a.warmth[i]; lasting && len(h.gaps) == 0 {
				c.Temperatures[b.id] = h.steady(amps)
			}
		case b.class == batteryClass || significant(amps):
			c.Sources[b.id] = plain(-amps)
		}
	}
	a.setVoltages(c, t)
	c.Gaps = uniqueGaps(append(c.Gaps, open...))
	return c
}

// plain turns a current that only rounding left into zero.
func plain(amps float64) float64 {
	if math.Abs(amps) <= 1e-13 {
		return 0
	}
	return amps
}

// listed returns the branches whose currents a case lists: of a case about one
// load those on its way.
func (t *trial) listed() []int {
	if t.load < 0 || t.lone != nil {
		return t.carrying()
	}
	return t.way.all()
}

// problem returns the problem of a case, the first by place if there are several.
func (t *trial) problem() *Problem {
	if t.lone != nil {
		return t.lone.problem
	}
	var first *Problem
	for _, p := range t.solved.(*outcome).faults {
		if first == nil || p.Path < first.Path {
			first = &p
		}
	}
	return first
}

// setVoltages lists the voltages of terminals that do not depend on what the
// record lacks.
func (a *analysis) setVoltages(c *CaseResult, t *trial) {
	if t.lone != nil {
		a.setLoneVoltages(c, t.lone)
		return
	}
	o := t.solved.(*outcome)
	nodes := make([]int, 0, len(a.net.nodes))
	if t.load < 0 {
		for i := range a.net.nodes {
			nodes = append(nodes, i)
		}
	} else {
		nodes = a.nodesOn(t.listed(), t.load)
	}
	m := o.family.meshes[0]
	for _, i := range nodes {
		if _, bad := o.fault(i); bad || !m.sourced[m.island[i]] {
			continue
		}
		v := o.family.greatest(o.value(func(s *solution) float64 { return s.volts[i] }))
		if s := o.solutions[0]; v.known && s != nil {
			a.putVoltage(c, i, s.volts[i])
		}
	}
}

func (a *analysis) putVoltage(c *CaseResult, node int, volts float64) {
	a.net.labels(node, func(label string) { c.Voltages[label] = volts })
}

// nodesOn returns the nodes of branches and of a load, each once.
func (a *analysis) nodesOn(branches []int, load int) []int {
	seen := map[int]bool{}
	var nodes []int
	for _, i := range append([]int{load}, branches...) {
		for _, node := range []int{a.net.branches[i].a, a.net.branches[i].b} {
			if !seen[node] {
				seen[node] = true
				nodes = append(nodes, node)
			}
		}
	}
	return nodes
}

// setLoneVoltages lists the voltages along a load's way: from the node where it
// is joined to the reference, which its current leaves as it was, on by Ohm's
// law.
func (a *analysis) setLoneVoltages(c *CaseResult, l *lone) {
	if l.problem != nil {
		return
	}
	volts := make([]map[int]float64, len(l.family.meshes))
	for k := range l.family.meshes {
		volts[k] = l.potentials(k)
	}
	for _, i := range a.nodesOn(l.branches, l.load) {
		v := l.family.greatest(func(k int) (float64, bool) { u, ok := volts[k][i]; return u, ok })
		if v.known {
			a.putVoltage(c, i, volts[0][i])
		}
	}
}

// potentials returns the voltages of the nodes on the ways in one mesh.
func (l *lone) potentials(k int) map[int]float64 {
	n, m := l.family.net, l.family.meshes[k]
	at := map[int][]int{}
	for _, i := range l.branches {
		b := &n.branches[i]
		at[b.a] = append(at[b.a], i)
		at[b.b] = append(at[b.b], i)
	}
	start := n.branches[l.load].b
	for _, leg := range l.family.forest.way(nil, m.reference[m.island[start]], start) {
		if at[leg.from] != nil {
			start = leg.from
			break
		}
	}
	volts := map[int]float64{start: l.base[k].volts[start]}
	queue := []int{start}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, i := range at[node] {
			b := &n.branches[i]
			amps, ok := l.flow(k, i)
			rise := m.values.volts[i] + m.values.ohms[i]*amps // of a above b
			next := b.other(node)
			if _, known := volts[next]; known || !ok {
				continue
			}
			if node == b.a {
				volts[next] = volts[node] - rise
			} else {
				volts[next] = volts[node] + rise
			}
			queue = append(queue, next)
		}
	}
	return volts
}
