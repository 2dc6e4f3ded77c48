package circuit

import (
	"driploop/model/figure"
	"driploop/model/quantity"
)

// peak is the greatest of a current over cases.
type peak struct {
	value float64
	name  string
	gaps  []figure.Gap
}

// raise takes in the value of one case. The first case with the greatest value
// names it: a later one has to be clearly greater.
func (p *peak) raise(a amount, name string, gaps func() []figure.Gap) {
	if !a.known {
		p.gaps = append(p.gaps, gaps()...)
		return
	}
	if p.name == "" || a.value > p.value*(1+same)+negligible {
		p.value, p.name = a.value, name
	}
}

// join takes in another peak.
func (p *peak) join(other *peak) {
	p.gaps = append(p.gaps, other.gaps...)
	if other.name != "" {
		p.raise(amount{other.value, true}, other.name, nil)
	}
}

// amount returns the peak as figures have it, zero where it is not known.
func (p *peak) amount() amount {
	switch {
	case len(p.gaps) > 0:
		return amount{}
	case p.value <= negligible:
		return amount{0, true}
	}
	return amount{quantity.Round(p.value), true}
}

// figure returns the peak with its working, and the case that set it.
func (p *peak) figure(what string) (figure.Figure, string) {
	if len(p.gaps) > 0 {
		return figure.Open(uniqueGaps(p.gaps)...), ""
	}
	value, name := p.value, p.name
	if value <= negligible {
		value, name = 0, ""
	}
	return figure.Worked(value, "A", func() []figure.Step {
		from := "no case has current there"
		if name != "" {
			from = "case: " + name
		}
		return []figure.Step{{
			Formula: what, Source: sourceNodal,
			Inputs: []figure.Input{{Symbol: "I", Value: value, Unit: "A", From: from}}, Result: value, Unit: "A",
		}}
	}), name
}

// peaks keeps the greatest current of every branch and bus over the cases.
type peaks struct {
	a          *analysis
	running    []peak // by branch, over all cases but starting and stalled
	surge      []peak
	continuous []peak   // by branch, over continuous cases
	bus        []*buses // by node, nil where it is not a bus
	touched    []int    // buses that a case touches
}

// buses is what flows through a busbar or ground point.
type buses struct {
	running, surge peak
	over           []int // branches of one case
}

func newPeaks(a *analysis) *peaks {
	n := len(a.net.branches)
	p := &peaks{a: a, running: make([]peak, n), bus: make([]*buses, len(a.net.nodes))}
	for i := range a.net.nodes {
		if a.net.nodes[i].class.oneNode() {
			p.bus[i] = &buses{}
		}
	}
	return p
}

// ofEveryKind makes room for the peaks that not all cases have.
func (p *peaks) ofEveryKind() *peaks {
	n := len(p.running)
	both := make([]peak, 2*n)
	p.surge, p.continuous = both[:n:n], both[n:]
	return p
}

// surging tells whether a case has a load that starts or stalls.
func (t *trial) surging() bool {
	for _, p := range t.pulls {
		if p.mode != running {
			return true
		}
	}
	return t.kind == Starting || t.kind == Stalled
}

// take takes in one case: every branch that can carry current in it, and its
// loads.
func (p *peaks) take(t *trial) {
	branches, surging := t.carrying(), t.surging()
	for place, i := range branches {
		v := amount{}
		if t.lone != nil {
			v = t.lone.ampsAt(place)
		} else if _, bad := t.fault(p.a.net.branches[i].a); !bad {
			v = t.amps(i)
		}
		p.raise(t, i, surging, v)
	}
	if t.lone != nil && len(branches) == 0 {
		for _, h := range t.lone.own {
			p.takeBranch(t, h.branch, surging)
		}
	}
	for _, pull := range t.pulls {
		p.takeBranch(t, pull.branch, surging)
	}
	p.takeBuses(t, branches, surging)
}

func (p *peaks) takeBranch(t *trial, i int, surging bool) {
	v := amount{}
	if _, bad := t.fault(p.a.net.branches[i].a); !bad {
		v = t.amps(i)
	}
	p.raise(t, i, surging, v)
}

// raise takes in the current of a branch in one case.
func (p *peaks) raise(t *trial, i int, surging bool, v amount) {
	gaps := func() []figure.Gap {
		if problem, bad := t.fault(p.a.net.branches[i].a); bad {
			return []figure.Gap{figure.Because(problem.Says)}
		}
		return p.a.blame(t, i)
	}
	if surging {
		p.surge[i].raise(v, t.name, gaps)
		return
	}
	p.running[i].raise(v, t.name, gaps)
	if t.kind == Continuous {
		p.continuous[i].raise(v, t.name, gaps)
	}
}

// takeBuses takes in what flows into every bus that the branches touch.
func (p *peaks) takeBuses(t *trial, branches []int, surging bool) {
	n := p.a.net
	p.touched = p.touched[:0]
	for _, i := range branches {
		b := &n.branches[i]
		for _, node := range [2]int{b.a, b.b} {
			if bus := p.bus[node]; bus != nil && b.a != b.b {
				if len(bus.over) == 0 {
					p.touched = append(p.touched, node)
				}
				bus.over = append(bus.over, i)
			}
		}
	}
	for _, node := range p.touched {
		at := p.bus[node].over
		p.bus[node].over = at[:0]
		to := &p.bus[node].running
		if surging {
			to = &p.bus[node].surge
		}
		if problem, bad := t.fault(node); bad {
			to.raise(amount{}, t.name, func() []figure.Gap { return []figure.Gap{figure.Because(problem.Says)} })
			continue
		}
		to.raise(t.into(n, node, at), t.name, func() []figure.Gap { return p.a.blameAt(t, at) })
	}
}

// into returns the sum of the currents that flow into a node over branches.
func (t *trial) into(n *network, node int, branches []int) amount {
	family := t.in()
	return family.greatest(func(k int) (float64, bool) {
		sum := 0.0
		for _, i := range branches {
			j, ok := t.flow(k, i)
			if !ok {
				return 0, false
			}
			if n.branches[i].a == node {
				j = -j
			}
			sum += max(0, j)
		}
		return sum, true
	})
}

// blame names the entries whose lack leaves the current of a branch open in a
// case: the loads without a current that draw through it, else what is not
// known of the ways that carry current and of the sources.
func (a *analysis) blame(t *trial, i int) []figure.Gap {
	var gaps []figure.Gap
	for _, p := range t.pulls {
		if p.branch == i {
			gaps = append(gaps, a.net.pullGaps(p)...)
		}
	}
	through := a.solver.openLoads()
	for _, p := range through[i] {
		if t.has(p) {
			gaps = append(gaps, a.net.pullGaps(p)...)
		}
	}
	if len(gaps) > 0 {
		return uniqueGaps(gaps)
	}
	return t.openWays(a.net)
}

// openLoads returns, by branch, the loads without a current that draw through it.
func (s *solver) openLoads() map[int][]pull {
	if s.through != nil {
		return s.through
	}
	s.through = map[int][]pull{}
	for _, l := range s.loads {
		for _, t := range s.solveAlone(l) {
			for _, p := range t.pulls {
				if len(s.net.pullGaps(p)) == 0 {
					continue
				}
				for _, i := range t.carrying() {
					s.through[i] = append(s.through[i], p)
				}
			}
		}
	}
	return s.through
}

func (t *trial) has(p pull) bool {
	for _, q := range t.pulls {
		if q == p {
			return true
		}
	}
	return false
}

func (a *analysis) blameAt(t *trial, branches []int) []figure.Gap {
	var gaps []figure.Gap
	for _, i := range branches {
		if !t.amps(i).known {
			gaps = append(gaps, a.blame(t, i)...)
		}
	}
	if len(gaps) == 0 {
		return t.openWays(a.net)
	}
	return uniqueGaps(gaps)
}

// openWays names what is not known of the branches that carry current.
func (t *trial) openWays(n *network) []figure.Gap {
	var gaps []figure.Gap
	supply := t.in().supply
	for _, i := range t.carrying() {
		b := &n.branches[i]
		if !t.carries(i) {
			continue
		}
		gaps = append(gaps, b.ohms.gaps...)
		if b.kind == source {
			gaps = append(gaps, b.limit.gaps...)
			gaps = append(gaps, b.emf[supply].gaps...)
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
