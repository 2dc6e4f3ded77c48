package circuit

import "math"

// supply is the condition of the batteries.
type supply uint8

const (
	full supply = iota
	low
)

// family is the network in one state of its switches, solved for every way to
// fill in what is a range or open: at the unfavourable and the favourable end of
// the batteries' resistance, and, where anything is not known, with two made-up
// sets of values. What differs between the two sets depends on the unknown.
type family struct {
	net    *network
	state  state
	supply supply
	meshes [][]*mesh // by end of range, by set of made-up values
}

// ends of a range: the greatest resistance first, which is what voltages and
// currents of running loads are worst at.
const (
	endHigh = iota
	endLow
)

func (n *network) newFamily(st state, su supply) *family {
	f := &family{net: n, state: st, supply: su}
	closed := n.closed(st)
	ends, rounds := 1, 1
	if n.anyOpen {
		rounds = 2
	}
	for _, i := range closed {
		b := &n.branches[i]
		if b.kind == source && !b.ohms.open() && b.ohms.low != b.ohms.high {
			ends = 2
		}
	}
	for end := range ends {
		var row []*mesh
		for round := range rounds {
			row = append(row, newMesh(n, closed, n.fill(closed, su, end, round)))
		}
		f.meshes = append(f.meshes, row)
	}
	return f
}

// fill returns numbers for every branch.
func (n *network) fill(closed []int, su supply, end, round int) values {
	v := values{ohms: make([]float64, len(n.branches)), volts: make([]float64, len(n.branches))}
	for _, i := range closed {
		b := &n.branches[i]
		v.ohms[i] = b.ohms.pick(i, round, b.kind == source && end == endLow)
		if b.kind == source {
			v.volts[i] = n.sourceVolts(b, su).pick(i, round, false)
		}
	}
	return v
}

// pick returns a number for a span: an end of it, or a made-up one.
func (s span) pick(i, round int, least bool) float64 {
	switch {
	case s.open() && s.low != s.high:
		if round == 0 {
			return s.high
		}
		return s.low + (s.high-s.low)*(spread(i, round)-1)
	case s.open():
		return s.high * spread(i, round)
	case least:
		return s.low
	}
	return s.high
}

func (n *network) sourceVolts(b *branch, su supply) span {
	if b.class == batteryClass {
		return n.openVolts(b.comp, su == low)
	}
	return n.regulatedVolts(b.comp)
}

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

// outcome is one solved case.
type outcome struct {
	family    *family
	pulls     []pull
	solutions [][]*solution // as family.meshes; nil where a mesh has no solution
	fed       map[int]bool  // by load
	faults    map[int]Problem
}

// solve solves the family with some loads at work. The faults of the first mesh
// stand for all: islands and shorts are the same in each.
func (f *family) solve(pulls []pull) *outcome {
	o := &outcome{family: f, pulls: pulls, fed: map[int]bool{}, faults: map[int]Problem{}}
	for end, row := range f.meshes {
		var solved []*solution
		for round, m := range row {
			for is, p := range m.faults {
				if _, known := o.faults[is]; !known {
					o.faults[is] = p
				}
			}
			active := m.fedOf(pulls)
			if end == 0 && round == 0 {
				for _, p := range active {
					o.fed[p.branch] = true
				}
			}
			s, bad := m.charge(active, round)
			if bad >= 0 {
				b := &f.net.branches[bad]
				o.faults[m.island[b.a]] = f.net.problem(Collapse, b,
					"the supply cannot deliver the power that "+branchPlace(b)+" asks for: the voltage would collapse")
			}
			solved = append(solved, s)
		}
		o.solutions = append(o.solutions, solved)
	}
	return o
}

// atRest returns the network without loads.
func (m *mesh) atRest() *solution {
	if m.idle == nil {
		m.idle = m.solve(true, nil)
	}
	return m.idle
}

// fedOf returns the loads that a source stands over.
func (m *mesh) fedOf(pulls []pull) []pull {
	idle := m.atRest()
	if idle == nil {
		return nil
	}
	var active []pull
	for _, p := range pulls {
		if m.isFed(idle, p.branch) {
			active = append(active, p)
		}
	}
	return active
}

// tiny is the voltage below which a load counts as not fed, V.
const tiny = 1e-6

// isFed tells whether a source stands over a load.
func (m *mesh) isFed(idle *solution, load int) bool {
	b := &m.net.branches[load]
	is := m.island[b.a]
	return is == m.island[b.b] && m.sourced[is] && math.Abs(idle.volts[b.a]-idle.volts[b.b]) > tiny
}

// newtonLimit bounds the iterations; from above they converge in under ten.
const newtonLimit = 60

// draw solves the mesh with loads at work. Loads of constant power make it
// non-linear: Newton's method from the voltages at rest, which lie above the
// working point, comes down to it and never passes it; if the matrix loses its
// positive definiteness on the way, no working point exists and the load with
// the lowest voltage is returned. given are currents besides those of the loads.
func (m *mesh) draw(pulls []pull, round int, given []drain) (s *solution, collapsed int) {
	idle := m.atRest()
	if len(given) > 0 {
		idle = m.solve(true, given)
	}
	if idle == nil {
		return nil, -1
	}
	s = idle
	for iteration := 0; ; iteration++ {
		drains, powered := m.drains(s, pulls, round)
		next := m.solve(true, append(drains, given...))
		if !powered {
			return next, m.reversed(idle, next, pulls)
		}
		if next == nil || iteration == newtonLimit {
			return nil, m.lowest(idle, s, pulls)
		}
		change := 0.0
		for _, p := range pulls {
			b := &m.net.branches[p.branch]
			v0, v := s.volts[b.a]-s.volts[b.b], next.volts[b.a]-next.volts[b.b]
			if v*(idle.volts[b.a]-idle.volts[b.b]) <= 0 {
				return nil, p.branch
			}
			change = max(change, math.Abs(v-v0)/math.Abs(v))
		}
		s = next
		if change < 1e-14 || change < 1e-12 && iteration > 8 {
			return s, m.reversed(idle, s, pulls)
		}
	}
}

// reversed returns a load of constant current that the wiring drops all the
// supply's voltage of, and more: no supply drives that current. -1 for none.
func (m *mesh) reversed(idle, s *solution, pulls []pull) int {
	if s == nil {
		return -1
	}
	worst, least := -1, 0.0
	for _, p := range pulls {
		b := &m.net.branches[p.branch]
		if v := (s.volts[b.a] - s.volts[b.b]) / (idle.volts[b.a] - idle.volts[b.b]); v < least {
			worst, least = p.branch, v
		}
	}
	return worst
}

// drains returns what the loads draw, those of constant power linearised about
// their voltages in s.
func (m *mesh) drains(s *solution, pulls []pull, round int) (all []drain, powered bool) {
	for _, p := range pulls {
		b := &m.net.branches[p.branch]
		v := s.volts[b.a] - s.volts[b.b]
		d := drain{branch: p.branch, a: b.a, b: b.b}
		switch {
		case p.mode != running || b.kind == coil || b.draw == constantCurrent:
			d.amps = math.Copysign(m.net.pullAmps(p).pick(p.branch, round, false), v)
		case b.draw == resistive:
			d.siemens = 1 / b.ohms.pick(p.branch, round, false)
		default:
			w := b.watts.pick(p.branch, round, false)
			d.amps, d.siemens = 2*w/v, -w/(v*v)
			powered = true
		}
		all = append(all, d)
	}
	return all, powered
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

// pullAmps returns the constant current of a load in its mode.
func (n *network) pullAmps(p pull) span {
	b := &n.branches[p.branch]
	if b.kind == coil {
		return b.current
	}
	switch p.mode {
	case starting:
		return recordedAmps(b.comp.Starting, b.path+".starting")
	case stalled:
		return recordedAmps(b.comp.Stall, b.path+".stall")
	}
	return b.current
}
