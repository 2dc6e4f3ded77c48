package circuit

import "math"

// lone is one load at work on top of a solved network: alone on top of the
// network at rest, or starting on top of what runs all the time. Only the
// branches on the load's way differ from the base, and those of the coils that
// hold in what feeds it, so that a case costs no more than the length of its way.
type lone struct {
	family *family
	load   int
	base   []*solution // by mesh
	own    []hop       // way of one ampere of the load, in the first mesh
	rings  []ring      // of that way
	pulls  []pull      // the load and the coils

	branches []int       // on the ways, in order
	places   places      // of those branches
	flows    [][]float64 // by mesh, by place in branches: A from a to b
	draws    []float64   // by mesh: A of the load, from a to b
	volts    []float64   // by mesh: V over the load, from a to b
	problem  *Problem
}

// alone solves a load on top of the network at rest; nil if nothing feeds it.
func (f *family) alone(load int) *lone {
	if !f.meshes[0].isFed(load) {
		return nil
	}
	l := &lone{family: f, load: load, base: f.atRest()}
	l.run(pull{branch: load}, nil, 0)
	return l
}

// aloneLike returns the load of a case in another family of the same state.
func (f *family) aloneLike(like *lone) *lone {
	if !like.straight() || f.forest != like.family.forest || !f.meshes[0].isFed(like.load) {
		return f.alone(like.load)
	}
	l := &lone{family: f, load: like.load, base: f.atRest(), own: like.own, branches: like.branches, places: like.places}
	l.run(pull{branch: like.load}, nil, 0)
	return l
}

// again solves the same load with the coils of what feeds it.
func (l *lone) again(coils []pull) *lone {
	next := &lone{family: l.family, load: l.load, base: l.base}
	next.run(pull{branch: l.load}, coils, 0)
	return next
}

// onTop solves the load in a mode of constant current on top of a base in which
// it may run already.
func (l *lone) onTop(base *outcome, how mode, coils []pull) *lone {
	next := &lone{family: l.family, load: l.load, base: base.solutions}
	runs := 0.0
	for _, p := range base.pulls {
		if p.branch == l.load {
			runs = 1
		}
	}
	if len(coils) == 0 && l.straight() {
		next.own, next.branches, next.places = l.own, l.branches, l.places
	}
	next.run(pull{l.load, how}, coils, runs)
	return next
}

// straight tells whether the load's current takes one way, without rings and coils:
// it is the same in every mesh.
func (l *lone) straight() bool { return len(l.rings) == 0 && len(l.pulls) == 1 && l.problem == nil }

// run solves the load and coils over the base in every mesh. runs is 1 if the
// base already has the load's running current, which is then taken out.
func (l *lone) run(p pull, coils []pull, runs float64) {
	n := l.family.net
	b := &n.branches[l.load]
	l.pulls = append([]pull{p}, coils...)
	if problem, bad := l.family.meshes[0].faults[l.family.meshes[0].island[b.a]]; bad {
		l.problem = &problem
		return
	}
	if l.own == nil {
		l.family.legs = l.family.forest.way(l.family.legs[:0], b.b, b.a)
		l.own, l.rings = l.family.meshes[0].unit(l.family.forest, l.family.legs)
		l.branches = branchesOf(l.own)
	}
	if len(l.rings) == 0 && len(coils) == 0 {
		l.runStraight(p, runs)
		return
	}
	l.places = newPlaces(l.branches)
	for k, m := range l.family.meshes {
		one := l.own
		if k > 0 {
			one, _ = m.unit(l.family.forest, l.family.legs)
		}
		for _, h := range one {
			l.note(h.branch)
		}
		kept := m.coilHops(l.family.forest, coils)
		for _, c := range kept {
			for _, h := range c.hops {
				l.note(h.branch)
			}
		}
		if !l.draw(m, k, p, runs, make([]float64, len(l.branches)), one, kept) {
			return
		}
	}
}

// runStraight solves a load whose current takes one way, in every mesh.
func (l *lone) runStraight(p pull, runs float64) {
	if l.places == nil {
		l.places = newPlaces(l.branches)
	}
	count, meshes := len(l.branches), len(l.family.meshes)
	room := make([]float64, meshes*(count+2))
	l.draws, l.volts, room = room[:0:meshes], room[meshes:meshes:2*meshes], room[2*meshes:]
	l.flows = make([][]float64, 0, meshes)
	for k, m := range l.family.meshes {
		if !l.draw(m, k, p, runs, room[k*count:(k+1)*count:(k+1)*count], l.own, nil) {
			return
		}
	}
}

func branchesOf(way []hop) []int {
	branches := make([]int, len(way))
	for k, h := range way {
		branches[k] = h.branch
	}
	return branches
}

// coilFlow is the current of a coil on its way.
type coilFlow struct {
	hops []hop
	amps float64
}

func (m *mesh) coilHops(f *forest, coils []pull) []coilFlow {
	var flows []coilFlow
	for _, c := range coils {
		if !m.isFed(c.branch) {
			continue
		}
		b := &m.net.branches[c.branch]
		amps := math.Copysign(b.current.pick(c.branch, m.round, false), m.restOver(b))
		hops, _ := m.unit(f, f.way(nil, b.b, b.a))
		flows = append(flows, coilFlow{hops, amps})
	}
	return flows
}

func (l *lone) note(branch int) {
	if _, known := l.places.of(l.branches, branch); !known {
		l.branches = append(l.branches, branch)
		l.places = l.places.add(l.branches)
	}
}

// draw finds what the load draws in one mesh, and with it all currents, written
// into flows. It reports false, with a problem, if the supply cannot deliver that.
func (l *lone) draw(m *mesh, k int, p pull, runs float64, flows []float64, one []hop, kept []coilFlow) bool {
	b := &l.family.net.branches[l.load]
	base := l.base[k]
	if base == nil {
		problem := l.family.collapse(b)
		l.problem = &problem
		return false
	}
	sign := math.Copysign(1, m.restOver(b))
	ohms := m.ohmsOf(one)
	open := sign * (base.volts[b.a] - base.volts[b.b]) // with what the base has of the load
	for _, c := range kept {
		open -= sign * m.transfer(one, c.hops) * c.amps
	}
	before := runs * sign * base.amps[l.load]
	amps, ok := l.family.net.drawn(p, m.round, open+before*ohms, ohms)
	if !ok {
		problem := l.family.collapse(b)
		l.problem = &problem
		return false
	}
	extra := sign * (amps - before)
	for place, i := range l.branches {
		flows[place] = base.amps[i]
	}
	for _, h := range one {
		l.addTo(flows, h, extra)
	}
	for _, c := range kept {
		for _, h := range c.hops {
			l.addTo(flows, h, c.amps)
		}
	}
	l.flows = append(l.flows, flows)
	l.draws = append(l.draws, sign*amps)
	l.volts = append(l.volts, sign*(open-ohms*(amps-before)))
	return true
}

func (l *lone) addTo(flows []float64, h hop, amps float64) {
	place, _ := l.places.of(l.branches, h.branch)
	flows[place] += amps * h.amps
}

// drawn returns what a load takes from a source of a voltage at rest behind a
// resistance. Constant power has two working points; the upper one is where a
// load rests:
//
//	I = (E − √(E² − 4·R·P)) / (2·R)
func (n *network) drawn(p pull, round int, volts, ohms float64) (amps float64, ok bool) {
	b := &n.branches[p.branch]
	switch {
	case n.isConstant(p):
		amps = n.pullAmps(p).pick(p.branch, round, false)
		return amps, volts-ohms*amps >= 0
	case b.draw == resistive:
		return volts / (ohms + b.ohms.pick(p.branch, round, false)), true
	}
	watts := b.watts.pick(p.branch, round, false)
	root := volts*volts - 4*ohms*watts
	if root < 0 || volts <= 0 {
		return 0, false
	}
	return 2 * watts / (volts + math.Sqrt(root)), true
}
