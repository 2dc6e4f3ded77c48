package circuit

import (
	"math"

	"driploop/model/figure"
)

// same is the share by which a value may change between two sets of made-up
// values and still count as not depending on them.
const same = 1e-7

// amount is a value drawn from every solution of a case.
type amount struct {
	value float64
	known bool
}

// greatest returns the greatest of a value over the ends of all ranges, and
// whether it is free of what the record lacks.
func (o *outcome) greatest(of func(*solution) float64) amount {
	return o.pick(of, func(a, b float64) bool { return a > b })
}

// least returns the least of it.
func (o *outcome) least(of func(*solution) float64) amount {
	return o.pick(of, func(a, b float64) bool { return a < b })
}

func (o *outcome) pick(of func(*solution) float64, worse func(a, b float64) bool) amount {
	out := amount{known: true}
	for end, row := range o.solutions {
		var first float64
		for round, s := range row {
			if s == nil {
				return amount{}
			}
			v := of(s)
			if round == 0 {
				first = v
				if end == 0 || worse(v, out.value) {
					out.value = v
				}
				continue
			}
			if math.Abs(v-first) > same*max(math.Abs(v), math.Abs(first))+negligible {
				out.known = false
			}
		}
	}
	return out
}

// amps returns the magnitude of the current in a branch.
func (o *outcome) amps(i int) amount {
	return o.greatest(func(s *solution) float64 { return math.Abs(s.amps[i]) })
}

// through returns the current that passes through a node: all that flows in.
func (o *outcome) through(n *network, node int) amount {
	return o.greatest(func(s *solution) float64 {
		var in float64
		for _, i := range n.at[node] {
			b := &n.branches[i]
			if b.a == b.b {
				continue
			}
			j := s.amps[i]
			if b.a == node {
				j = -j
			}
			in += max(0, j)
		}
		return in
	})
}

// over returns the voltage over a branch, by magnitude.
func over(b *branch) func(*solution) float64 {
	return func(s *solution) float64 { return math.Abs(s.volts[b.a] - s.volts[b.b]) }
}

// fault returns the problem that keeps a node from being solved, if any.
func (o *outcome) fault(node int) (Problem, bool) {
	p, bad := o.faults[o.family.meshes[0][0].island[node]]
	return p, bad
}

// peak is the greatest of a figure over cases.
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

// figure returns the peak with its working, and the case that set it.
func (p *peak) figure(what string) (figure.Figure, string) {
	if len(p.gaps) > 0 {
		return figure.Open(uniqueGaps(p.gaps)...), ""
	}
	name := p.name
	if p.value <= negligible {
		p.value, name = 0, ""
	}
	from := "case: " + name
	if name == "" {
		from = "no case has current there"
	}
	return figure.Of(p.value, "A", figure.Step{
		Formula: what, Source: "nodal analysis, Kirchhoff's laws",
		Inputs: []figure.Input{{Symbol: "I", Value: p.value, Unit: "A", From: from}}, Result: p.value, Unit: "A",
	}), name
}
