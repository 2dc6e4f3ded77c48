package circuit

import (
	"math"

	"driploop/model/figure"
)

// mode is what a load does in a case.
type mode uint8

const (
	running mode = iota
	starting
	stalled
)

// pull is one load in a case.
type pull struct {
	branch int
	mode   mode
}

// outcome is a case with any number of loads, solved in every mesh.
type outcome struct {
	family    *family
	pulls     []pull
	solutions []*solution     // by mesh; nil where there is none
	faults    map[int]Problem // by island
}

// solve solves the family with some loads at work. An island whose loads ask for
// more than there is gets a fault, and the rest goes on without it. The islands
// of the first mesh stand for all: they are the same in each.
func (f *family) solve(pulls []pull) *outcome {
	o := &outcome{family: f, pulls: pulls, faults: map[int]Problem{}}
	for _, m := range f.meshes {
		for is, p := range m.faults {
			if _, known := o.faults[is]; !known {
				o.faults[is] = p
			}
		}
		active := m.fedOf(pulls)
		s, bad := m.charge(active)
		for bad >= 0 {
			b := &f.net.branches[bad]
			o.faults[m.island[b.a]] = f.collapse(b)
			active = m.outside(active, m.island[b.a])
			s, bad = m.charge(active)
		}
		o.solutions = append(o.solutions, s)
	}
	return o
}

func (f *family) collapse(b *branch) Problem {
	return f.net.problem(Collapse, b, "the supply cannot deliver what "+branchPlace(b)+" asks for: its voltage would collapse")
}

// outside returns the loads of other islands.
func (m *mesh) outside(pulls []pull, island int) []pull {
	var out []pull
	for _, p := range pulls {
		if m.island[m.net.branches[p.branch].a] != island {
			out = append(out, p)
		}
	}
	return out
}

// fedOf returns the loads that a source stands over.
func (m *mesh) fedOf(pulls []pull) []pull {
	active := make([]pull, 0, len(pulls))
	for _, p := range pulls {
		if m.isFed(p.branch) {
			active = append(active, p)
		}
	}
	return active
}

// tiny is the voltage below which a load counts as not fed, V.
const tiny = 1e-6

// isFed tells whether a source stands over a load.
func (m *mesh) isFed(load int) bool {
	b := &m.net.branches[load]
	is := m.island[b.a]
	return is == m.island[b.b] && m.sourced[is] && math.Abs(m.restOver(b)) > tiny
}

// restOver returns the voltage over a branch without any load.
func (m *mesh) restOver(b *branch) float64 {
	idle := m.atRest()
	if idle == nil {
		return 0
	}
	return idle.volts[b.a] - idle.volts[b.b]
}

// newtonLimit bounds the iterations; from above they converge in under ten.
const newtonLimit = 60

// draw solves the mesh with loads at work. Loads of constant power make it
// non-linear: Newton's method from the voltages at rest, which lie above the
// working point, comes down to it and never passes it; if the matrix loses its
// positive definiteness on the way, no working point exists and the load with
// the lowest voltage is returned, else -1. given are currents besides.
func (m *mesh) draw(pulls []pull, given []drain) (s *solution, collapsed int) {
	idle := m.atRest()
	if len(given) > 0 {
		idle = m.solve(given)
	}
	if idle == nil {
		return nil, -1
	}
	s = idle
	for iteration := 0; ; iteration++ {
		drains, powered := m.drains(s, pulls, given)
		next := m.solve(drains)
		if next == nil || iteration == newtonLimit {
			return nil, m.lowest(idle, s, pulls)
		}
		if !powered {
			return next, m.reversed(idle, next, pulls)
		}
		change := 0.0
		for _, p := range pulls {
			b := &m.net.branches[p.branch]
			v0, v := s.volts[b.a]-s.volts[b.b], next.volts[b.a]-next.volts[b.b]
			change = max(change, math.Abs(v-v0)/math.Abs(v))
		}
		s = next
		if bad := m.reversed(idle, s, pulls); bad >= 0 {
			return nil, bad
		}
		if change < 1e-14 || change < 1e-12 && iteration > 8 {
			return s, -1
		}
	}
}

// drains returns what the loads draw, those of constant power linearised about
// their voltages in s, and what is given.
func (m *mesh) drains(s *solution, pulls []pull, given []drain) (all []drain, powered bool) {
	all = make([]drain, 0, len(pulls)+len(given))
	for _, p := range pulls {
		b := &m.net.branches[p.branch]
		v := s.volts[b.a] - s.volts[b.b]
		d := drain{branch: p.branch, a: b.a, b: b.b}
		switch {
		case m.net.isConstant(p):
			d.amps = math.Copysign(m.net.pullAmps(p).pick(p.branch, m.round, false), v)
		case b.draw == resistive:
			d.siemens = 1 / b.ohms.pick(p.branch, m.round, false)
		default:
			w := b.watts.pick(p.branch, m.round, false)
			d.amps, d.siemens = 2*w/v, -w/(v*v)
			powered = true
		}
		all = append(all, d)
	}
	return append(all, given...), powered
}

// reversed returns a load over which the wiring drops all the supply's voltage
// and more: no supply drives its current. -1 for none.
func (m *mesh) reversed(idle, s *solution, pulls []pull) int {
	worst, least := -1, 0.0
	for _, p := range pulls {
		b := &m.net.branches[p.branch]
		if v := (s.volts[b.a] - s.volts[b.b]) / (idle.volts[b.a] - idle.volts[b.b]); v < least {
			worst, least = p.branch, v
		}
	}
	return worst
}

// lowest returns the load whose voltage has sunk most.
func (m *mesh) lowest(idle, s *solution, pulls []pull) int {
	worst, least := -1, math.Inf(1)
	for _, p := range pulls {
		b := &m.net.branches[p.branch]
		if share := (s.volts[b.a] - s.volts[b.b]) / (idle.volts[b.a] - idle.volts[b.b]); share < least {
			worst, least = p.branch, share
		}
	}
	return worst
}

// isConstant tells whether a load draws a constant current in its mode. A motor
// that starts or stalls does: its recorded current, which falls with the voltage
// in truth, is the unfavourable one.
func (n *network) isConstant(p pull) bool {
	b := &n.branches[p.branch]
	return p.mode != running || b.kind == coil || b.draw == constantCurrent
}

// pullAmps returns the constant current of a load in its mode.
func (n *network) pullAmps(p pull) span {
	b := &n.branches[p.branch]
	switch {
	case b.kind == coil:
		return b.current
	case p.mode == starting:
		return recordedAmps(&b.comp.Starting, b.path, "starting")
	case p.mode == stalled:
		return recordedAmps(&b.comp.Stall, b.path, "stall")
	}
	return b.current
}

// pullGaps returns what keeps the current of a load from being known.
func (n *network) pullGaps(p pull) []figure.Gap {
	b := &n.branches[p.branch]
	switch {
	case n.isConstant(p):
		return n.pullAmps(p).gaps
	case b.draw == resistive:
		return b.ohms.gaps
	}
	return b.watts.gaps
}

// amps returns the magnitude of the current in a branch.
func (o *outcome) amps(i int) amount {
	return o.family.greatest(o.value(func(s *solution) float64 { return math.Abs(s.amps[i]) }))
}

// value makes a function of a solution one of a mesh.
func (o *outcome) value(of func(*solution) float64) func(int) (float64, bool) {
	return func(k int) (float64, bool) {
		if s := o.solutions[k]; s != nil {
			return of(s), true
		}
		return 0, false
	}
}

// flow returns the current of a branch in one mesh.
func (o *outcome) flow(k, i int) (float64, bool) {
	if s := o.solutions[k]; s != nil {
		return s.amps[i], true
	}
	return 0, false
}

func (o *outcome) in() *family { return o.family }

// carries tells whether a branch has current in any solution.
func (o *outcome) carries(i int) bool {
	for _, s := range o.solutions {
		if s != nil && significant(s.amps[i]) {
			return true
		}
	}
	return false
}

// fault returns the problem that keeps a node from being solved, if any.
func (o *outcome) fault(node int) (Problem, bool) {
	p, bad := o.faults[o.family.meshes[0].island[node]]
	return p, bad
}

// carrying returns the branches that can carry current.
func (o *outcome) carrying() []int { return o.family.closed }

// over returns the voltage over a branch, by magnitude.
func over(b *branch) func(*solution) float64 {
	return func(s *solution) float64 { return math.Abs(s.volts[b.a] - s.volts[b.b]) }
}
