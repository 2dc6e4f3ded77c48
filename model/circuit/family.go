package circuit

import "driploop/model/record"

// supply is the condition of the batteries.
type supply uint8

const (
	full supply = iota
	low
)

// family is the network in one state of its switches, ready to be solved for
// every way to fill in what is a range or open: at the greatest and the least
// end of the batteries' resistance, and at each, where anything is not known,
// with two made-up sets of values. What differs between the two depends on the
// unknown.
type family struct {
	net    *network
	state  state
	supply supply
	closed []int
	forest *forest
	meshes []*mesh // by end of range, then by set of made-up values
	rounds int
	faults [2]*mesh    // without loads, by end of ranges, once asked for
	idle   []*solution // by mesh: without loads, once asked for
	legs   []leg       // of the way last asked for

	greatestAt [2][]*prospect // by end of ranges and node: the greatest fault there, once asked for
}

// atRest returns the network without loads, by mesh.
func (f *family) atRest() []*solution {
	if f.idle == nil {
		f.idle = make([]*solution, len(f.meshes))
		for k, m := range f.meshes {
			f.idle[k] = m.atRest()
		}
	}
	return f.idle
}

// The ends of a range. The first mesh is at the greatest resistance, where the
// voltages of running loads are worst.
const (
	greatestOhms = iota
	leastOhms
)

// newFamily prepares the network in a state. like is the family of the same state
// with another supply or other resistances, nil for none.
func (n *network) newFamily(st state, su supply, like *family) *family {
	out := &family{net: n, state: st, supply: su, closed: n.closed(st), rounds: 1}
	var pattern *mesh
	if like != nil {
		out.forest, pattern = like.forest, like.meshes[0]
	} else {
		out.forest = newForest(n, out.closed, -1)
	}
	ends := 1
	if n.anyOpen {
		out.rounds = 2
	}
	for _, i := range out.closed {
		b := &n.branches[i]
		if b.kind == source && !b.ohms.open() && b.ohms.low != b.ohms.high {
			ends = 2
		}
	}
	for end := range ends {
		for round := range out.rounds {
			m := newMesh(n, out.closed, n.fill(out.closed, su, end, round), round, pattern)
			out.meshes, pattern = append(out.meshes, m), m
		}
	}
	return out
}

// fill returns numbers for every branch.
func (n *network) fill(closed []int, su supply, end, round int) values {
	v := values{ohms: make([]float64, len(n.branches)), volts: make([]float64, len(n.branches))}
	for _, i := range closed {
		b := &n.branches[i]
		v.ohms[i] = b.ohms.pick(i, round, b.kind == source && end == leastOhms)
		if b.kind == source {
			v.volts[i] = b.emf[su].pick(i, round, false)
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

// sourceVolts returns the voltage that a source has or holds, by supply.
func (n *network) sourceVolts(c *record.Component, cls class) [2]span {
	if cls == batteryClass {
		return [2]span{full: n.openVolts(c, false), low: n.openVolts(c, true)}
	}
	held := n.regulatedVolts(c)
	return [2]span{full: held, low: held}
}

// amount is a value over all meshes of a family: the unfavourable one, and
// whether it is free of what the record lacks.
type amount struct {
	value float64
	known bool
}

// same is the share by which a value may change between two sets of made-up
// values and still count as not depending on them.
const same = 1e-7

// greatest returns the greatest of a value over the ends of all ranges.
func (f *family) greatest(of func(mesh int) (float64, bool)) amount {
	return f.worst(of, func(a, b float64) bool { return a > b })
}

// least returns the least of it.
func (f *family) least(of func(mesh int) (float64, bool)) amount {
	return f.worst(of, func(a, b float64) bool { return a < b })
}

func (f *family) worst(of func(mesh int) (float64, bool), worse func(a, b float64) bool) amount {
	out := amount{known: true}
	first := 0.0
	for k := range f.meshes {
		v, ok := of(k)
		switch {
		case !ok:
			return amount{}
		case k%f.rounds == 0:
			first = v
			if k == 0 || worse(v, out.value) {
				out.value = v
			}
		case !alike(v, first):
			out.known = false
		}
	}
	return out
}

func alike(a, b float64) bool {
	d := a - b
	if d < 0 {
		d = -d
	}
	return d <= same*max(a, b, -a, -b)+negligible
}

// negligible is the current below which a branch counts as carrying none, A:
// what rounding leaves.
const negligible = 1e-9

func significant(amps float64) bool { return amps > negligible || amps < -negligible }
