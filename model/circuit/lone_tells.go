package circuit

import "math"

// amps returns the magnitude of the current in a branch.
func (l *lone) amps(i int) amount {
	return l.family.greatest(func(k int) (float64, bool) { v, ok := l.flow(k, i); return math.Abs(v), ok })
}

// share returns the part of the load's own current that a branch carries.
func (l *lone) share(i int) float64 {
	if place, on := l.places.of(l.branches, i); on && place < len(l.own) {
		return math.Abs(l.own[place].amps)
	}
	return 0
}

// ampsAt returns the magnitude of the current in a branch by its place.
func (l *lone) ampsAt(place int) amount {
	if l.problem != nil {
		return amount{}
	}
	if place >= len(l.flows[0]) {
		return l.amps(l.branches[place])
	}
	return l.family.greatest(func(k int) (float64, bool) { return math.Abs(l.flows[k][place]), true })
}

// flow returns the current of a branch in one mesh.
func (l *lone) flow(k, i int) (float64, bool) {
	switch place, on := l.places.of(l.branches, i); {
	case l.problem != nil:
		return 0, false
	case on && place < len(l.flows[k]):
		return l.flows[k][place], true
	case i == l.load:
		return l.draws[k], true
	}
	for _, p := range l.pulls[1:] {
		if p.branch == i {
			return l.family.net.branches[i].current.pick(i, l.family.meshes[k].round, false), true
		}
	}
	return l.base[k].amps[i], true
}

// carries tells whether a branch has current in any mesh.
func (l *lone) carries(i int) bool {
	for k := range l.flows {
		if v, ok := l.flow(k, i); ok && significant(v) {
			return true
		}
	}
	return false
}

// fault returns the problem that keeps the case from being solved, if any.
func (l *lone) fault(int) (Problem, bool) {
	if l.problem != nil {
		return *l.problem, true
	}
	return Problem{}, false
}

func (l *lone) carrying() []int { return l.branches }

func (l *lone) in() *family { return l.family }

// voltage returns the magnitude of the voltage over the load in one mesh.
func (l *lone) voltage(k int) (float64, bool) {
	if l.problem != nil {
		return 0, false
	}
	return math.Abs(l.volts[k]), true
}

// bankVolts returns the voltage between the ends of a bank in one mesh: that of
// its sources less what the links between them drop.
func (l *lone) bankVolts(k int, bank []edge) (float64, bool) {
	m := l.family.meshes[k]
	sum := 0.0
	for _, e := range bank {
		amps, ok := l.flow(k, e.branch)
		if !ok {
			return 0, false
		}
		// V_a − V_b, counted from where the load's current leaves the branch.
		volts := m.values.volts[e.branch] + m.values.ohms[e.branch]*amps
		if e.to == l.family.net.branches[e.branch].b {
			volts = -volts
		}
		sum += volts
	}
	return math.Abs(sum), true
}

// meshOf returns the mesh in which a value is greatest.
func (l *lone) meshOf(of func(k int) float64) int {
	at := 0
	for k := range l.family.meshes {
		if of(k) > of(at) {
			at = k
		}
	}
	return at
}
