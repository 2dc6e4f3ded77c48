package circuit

import "driploop/model/figure"

// peaks keeps the greatest current of every branch and bus over the cases.
type peaks struct {
	a          *analysis
	running    []peak // by branch, over all cases but starting and stalled
	surge      []peak
	continuous []peak           // by branch, over continuous cases
	bus        map[int]*[2]peak // by node: running and surge
}

func newPeaks(a *analysis) *peaks {
	n := len(a.net.branches)
	p := &peaks{a: a, running: make([]peak, n), surge: make([]peak, n), continuous: make([]peak, n), bus: map[int]*[2]peak{}}
	for i := range a.net.nodes {
		if c := a.net.nodes[i].class; c == nodeClass || c == groundClass {
			p.bus[i] = &[2]peak{}
		}
	}
	return p
}

// take takes in one case.
func (p *peaks) take(t *trial) {
	surging := t.kind == Starting || t.kind == Stalled
	for _, pull := range t.pulls {
		surging = surging || pull.mode != running
	}
	n := p.a.net
	for i := range n.branches {
		b := &n.branches[i]
		gaps := func() []figure.Gap { return p.a.blame(t, i) }
		if problem, bad := t.outcome.fault(b.a); bad {
			gaps = func() []figure.Gap { return []figure.Gap{figure.Because(problem.Says)} }
			p.raise(i, surging, t, amount{}, gaps)
			continue
		}
		p.raise(i, surging, t, t.outcome.amps(i), gaps)
	}
	for node, both := range p.bus {
		which := 0
		if surging {
			which = 1
		}
		if problem, bad := t.outcome.fault(node); bad {
			both[which].raise(amount{}, t.name, func() []figure.Gap { return []figure.Gap{figure.Because(problem.Says)} })
			continue
		}
		both[which].raise(t.outcome.through(n, node), t.name, func() []figure.Gap { return p.a.blameNode(t, node) })
	}
}

func (p *peaks) raise(i int, surging bool, t *trial, v amount, gaps func() []figure.Gap) {
	switch {
	case surging:
		p.surge[i].raise(v, t.name, gaps)
	default:
		p.running[i].raise(v, t.name, gaps)
		if t.kind == Continuous {
			p.continuous[i].raise(v, t.name, gaps)
		}
	}
}

// blame names the entries whose lack leaves the current of a branch open in a
// case: the loads without a current that draw through it, else what is not
// known of the ways that carry current and of the sources.
func (a *analysis) blame(t *trial, i int) []figure.Gap {
	var gaps []figure.Gap
	for _, p := range t.pulls {
		if missing := a.net.loadGaps(p); len(missing) > 0 && t.drawsThrough(a, p, i) {
			gaps = append(gaps, missing...)
		}
	}
	if len(gaps) > 0 {
		return uniqueGaps(gaps)
	}
	return t.openWays(a.net)
}

func (a *analysis) blameNode(t *trial, node int) []figure.Gap {
	var gaps []figure.Gap
	for _, i := range a.net.at[node] {
		if !t.outcome.amps(i).known {
			gaps = append(gaps, a.blame(t, i)...)
		}
	}
	return uniqueGaps(gaps)
}

// drawsThrough tells whether a load's own current passes a branch.
func (t *trial) drawsThrough(a *analysis, p pull, i int) bool {
	if p.branch == i {
		return true
	}
	if a.net.branches[p.branch].kind == coil || a.solver == nil {
		return true
	}
	for _, alone := range a.solver.solveAlone(p.branch) {
		if alone.outcome.carries(i) {
			return true
		}
	}
	return false
}

// carries tells whether a branch has current in any solution.
func (o *outcome) carries(i int) bool {
	for _, row := range o.solutions {
		for _, s := range row {
			if s != nil && significant(s.amps[i]) {
				return true
			}
		}
	}
	return false
}

// openWays names what is not known of the branches that carry current.
func (t *trial) openWays(n *network) []figure.Gap {
	var gaps []figure.Gap
	for _, i := range t.outcome.family.meshes[0][0].closed {
		b := &n.branches[i]
		if !t.outcome.carries(i) {
			continue
		}
		gaps = append(gaps, b.ohms.gaps...)
		if b.kind == source {
			gaps = append(gaps, b.limit.gaps...)
			gaps = append(gaps, n.sourceVolts(b, t.outcome.family.supply).gaps...)
		}
	}
	if len(gaps) == 0 {
		gaps = append(gaps, t.gaps...)
	}
	if len(gaps) == 0 {
		gaps = append(gaps, figure.Because("case "+t.name+" has no unique solution"))
	}
	return uniqueGaps(gaps)
}
