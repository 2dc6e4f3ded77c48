package circuit

import (
	"driploop/model/figure"
)

// earth is which pole of the system is tied to ground.
type earth uint8

const (
	earthOpen earth = iota
	earthNegative
	earthPositive
	earthNone // insulated
)

// pole is one terminal of a source, and what it reaches with everything closed.
type pole struct {
	branch   int // the source
	node     int
	positive bool
	name     string
	reaches  []bool
	// outer is not set for a terminal in the middle of a series chain of
	// batteries, such as the negative of the upper one.
	outer bool
}

// poles is what potential each node can stand at.
type poles struct {
	net      *network
	earth    earth
	all      []*pole
	positive []bool // by node: a positive terminal of a source reaches it
	negative []bool // an outer negative terminal reaches it
	shorted  []bool // a source reaches it whose own terminals are joined

	unearthed, unreached figure.Truth // why what is grounded is not known
}

// findPoles follows every source terminal through the network. A node that only
// negative terminals reach stands at the negative pole; one that a positive
// terminal reaches is at the positive pole, or between the batteries of a
// series bank, or at either with the command of a reversing controller: in all
// three it is off ground potential in a negative-ground system.
func findPoles(n *network, s *searcher) *poles {
	p := &poles{
		net: n, positive: make([]bool, len(n.nodes)), negative: make([]bool, len(n.nodes)), shorted: make([]bool, len(n.nodes)),
		unearthed: figure.OpenTruth(figure.Missing(n.vesselPath("earthing"))),
		unreached: figure.OpenTruth(figure.Because("no source reaches it in the record")),
	}
	for i := range n.branches {
		b := &n.branches[i]
		if b.kind != source {
			continue
		}
		for _, node := range []int{b.a, b.b} {
			t := &pole{branch: i, node: node, positive: node == b.a, name: n.nodes[node].name, outer: true}
			t.reaches = s.nodes(node, everywhere)
			p.all = append(p.all, t)
			if t.positive {
				merge(p.positive, t.reaches)
			}
		}
	}
	for i := 0; i+1 < len(p.all); i += 2 {
		if p.all[i].reaches[p.all[i+1].node] {
			merge(p.shorted, p.all[i].reaches)
		}
	}
	for _, t := range p.all {
		t.outer = p.shorted[t.node] || !p.inner(t)
		if !t.positive && t.outer {
			merge(p.negative, t.reaches)
		}
	}
	p.earth = p.findEarth()
	return p
}

// inner tells whether a terminal joins the opposite one of another source, as in
// the middle of a series chain.
func (p *poles) inner(t *pole) bool {
	for _, other := range p.all {
		if other.positive != t.positive && other.branch != t.branch && other.reaches[t.node] {
			return true
		}
	}
	return false
}

func merge(into, from []bool) {
	for i, is := range from {
		if is {
			into[i] = true
		}
	}
}

// findEarth returns the recorded earthing, else negative-ground if a ground
// point ties the negative pole.
func (p *poles) findEarth() earth {
	switch p.net.record.Vessel.Earthing.V {
	case "negative-ground":
		return earthNegative
	case "positive-ground":
		return earthPositive
	case "insulated":
		return earthNone
	}
	for i := range p.net.nodes {
		if p.net.nodes[i].class == groundClass && p.negative[i] && !p.positive[i] {
			return earthNegative
		}
	}
	return earthOpen
}

// polarity is what pole something belongs to.
type polarity struct{ positive, negative bool }

// at returns the pole that reaches a node.
func (p *poles) at(node int) polarity {
	return polarity{positive: p.positive[node], negative: p.negative[node]}
}

// ungrounded tells whether something at these poles is off ground potential: if
// it can be at either, it is off ground at times.
func (p *poles) ungrounded(at polarity) figure.Truth {
	switch {
	case at.positive && at.negative, p.earth == earthNone && (at.positive || at.negative):
		return figure.True()
	case at.positive:
		return truth(p.earth != earthPositive)
	case at.negative && p.earth == earthOpen:
		return p.unearthed
	case at.negative:
		return truth(p.earth == earthPositive)
	}
	return p.unreached
}

// conductor tells whether a conductor is ungrounded: by its role and by what
// reaches it; if the two differ the dangerous one counts. A control conductor
// takes the pole that reaches it, the positive one if none does.
func (p *poles) conductor(b *branch) figure.Truth {
	found := p.at(b.a)
	says := found
	switch b.cond.Role.V {
	case "bonding":
		return figure.False()
	case "positive":
		says = polarity{positive: true}
	case "negative":
		says = polarity{negative: true}
	case "control":
		if !found.positive && !found.negative {
			says = polarity{positive: true}
		}
	default:
		if !found.positive && !found.negative {
			return figure.OpenTruth(figure.Missing(b.path + ".role"))
		}
	}
	byRole := p.ungrounded(says)
	if says == found || !found.positive && !found.negative {
		return byRole
	}
	byWay := p.ungrounded(found)
	switch {
	case byRole.Known && byRole.Value, !byWay.Known:
		return byRole
	case byWay.Value, byRole.Known:
		return byWay
	}
	return byRole
}

// feeds tells whether a source terminal can drive current into a fault to
// ground: every terminal but those at ground potential. Of a series chain the
// positive terminals count, each for the part above the one below.
func (p *poles) feeds(t *pole) bool {
	if !t.outer {
		return t.positive
	}
	u := p.ungrounded(polarity{positive: t.positive, negative: !t.positive})
	return !u.Known || u.Value
}

// mismatches returns a problem for each conductor whose role is not the pole
// that it is wired to.
func (p *poles) mismatches() []Problem {
	var problems []Problem
	for i := range p.net.branches {
		b := &p.net.branches[i]
		if b.kind != wire {
			continue
		}
		found := p.at(b.a)
		if found.positive == found.negative || p.shorted[b.a] {
			continue // between the poles, reached by none, or by both through a fault
		}
		var says string
		switch role := b.cond.Role.V; {
		case role == "positive" && found.negative:
			says = "is recorded as positive, but is wired to the negative pole"
		case role == "negative" && found.positive:
			says = "is recorded as negative, but is wired to the positive pole"
		case role == "bonding" && found.positive:
			says = "is recorded as bonding, but is wired to the positive pole"
		default:
			continue
		}
		problems = append(problems, p.net.problem(Mismatch, b, "conductor "+b.id+" "+says))
	}
	return problems
}

func truth(v bool) figure.Truth {
	if v {
		return figure.True()
	}
	return figure.False()
}
