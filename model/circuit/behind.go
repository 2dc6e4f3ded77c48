package circuit

import (
	"math"
	"slices"

	"driploop/model/figure"
)

// behind is one way in which a fault can stand behind a branch: its ends, the far
// one away from the source, in one state of the switches, and what the way back of
// a fault at its far end would add: see wayBack.
type behind struct {
	far, near int
	fam       *family
	back      int // negative terminal of the source, -1 for that of greatest fault
	ohms      float64
	gaps      []figure.Gap
	least     *prospect // the least fault at its far end, once asked for
	next      *behind   // another way behind the same branch
}

// findBehind notes, for every branch on the way out to a load, what lies behind:
// a conductor of a ring has either end as its far one for some load. Of devices it
// notes the terminals of the loads too.
func (a *analysis) findBehind() {
	n := len(a.net.branches)
	a.behind, a.remote = make([]*behind, n), make([][]*behind, n)
	w := &outWay{share: make([]float64, n), edge: make([]int, n), length: make([]float64, len(a.net.nodes))}
	for _, l := range a.solver.loads {
		for _, t := range a.solver.solveAlone(l) {
			if t.way.source >= 0 {
				a.noteBehind(t, w)
			}
		}
	}
}

func (a *analysis) noteBehind(t *trial, w *outWay) {
	fam := t.lone.family
	m, _ := a.faultMesh(fam, greatestOhms)
	share := w.share
	for _, h := range t.lone.own {
		share[h.branch] = math.Abs(h.amps)
	}
	end := behind{fam: fam, back: a.net.branches[t.way.source].b}
	for _, i := range t.way.back.branches {
		end.gaps = append(end.gaps, a.net.branches[i].ohms.gaps...)
	}
	total := w.follow(a.net, t)
	w.back.follow(a.net, t, w, m.values.ohms)
	end.ohms = w.back.ohms(1)
	for _, i := range t.way.out.branches {
		if b := &a.net.branches[i]; b.kind == wire {
			if _, ok := sane(&b.cond.Length); !ok {
				end.gaps = append(end.gaps, figure.Missing(b.path+".length"))
			}
		}
	}
	end.gaps = slices.Clip(end.gaps)
	var terminal *behind // the fault at the load's own terminals, one for all devices
	for _, e := range w.along {
		covered := e.length
		if total > 0 {
			covered /= total
		}
		at := end
		at.far, at.near, at.ohms = e.to, e.from, w.back.ohms(min(1, covered))
		a.behind[e.branch] = a.addBehind(a.behind[e.branch], at)
		if a.net.branches[e.branch].kind == device {
			if terminal == nil {
				far := end
				far.far = a.loadEnd(t)
				terminal = &far
			}
			a.remote[e.branch] = append(a.remote[e.branch], terminal)
		}
	}
}

// reach is an edge of a way out with the length from the source to its far end,
// that of ways in parallel by their share of the current.
type reach struct {
	edge
	length float64
}

// outWay is the way out of one load's current, with memory that the next one takes
// over.
type outWay struct {
	along  []reach
	share  []float64 // by branch: current of one ampere
	edge   []int     // by branch: its edge
	length []float64 // by node: greatest length from the source
	back   wayBack
}

// follow sets the edges of the way out of a load's current in order, and returns
// the length of all of it.
func (w *outWay) follow(n *network, t *trial) (total float64) {
	w.along = w.along[:0]
	for k, e := range t.way.edges {
		w.edge[e.branch] = k
		w.length[e.from], w.length[e.to] = 0, 0
	}
	for _, i := range t.way.out.branches {
		e := t.way.edges[w.edge[i]]
		length := w.length[e.from]
		if b := &n.branches[i]; b.kind == wire {
			if v, ok := sane(&b.cond.Length); ok {
				length += v * w.share[i]
			}
		}
		w.length[e.to] = max(w.length[e.to], length)
		w.along = append(w.along, reach{e, length})
		total = max(total, length)
	}
	return total
}

// loadEnd returns the node at which a load's current comes in.
func (a *analysis) loadEnd(t *trial) int {
	b := &a.net.branches[t.load]
	for _, e := range t.way.edges {
		if e.to == b.b {
			for _, i := range t.way.out.branches {
				if i == e.branch {
					return b.b
				}
			}
		}
	}
	return b.a
}

// addBehind adds a way to those known of a branch; of two alike the one with more
// resistance in its way back counts, or with what is not known of it.
func (a *analysis) addBehind(first *behind, next behind) *behind {
	last := &first
	for ; *last != nil; last = &(*last).next {
		old := *last
		if old.far != next.far || old.fam != next.fam || old.back != next.back {
			continue
		}
		open, was := len(next.gaps) > 0, len(old.gaps) > 0
		if open && !was || open == was && next.ohms > old.ohms {
			next.next = old.next
			*old = next
		}
		return first
	}
	*last = a.behinds.one()
	**last = next
	return first
}

// ends returns the ends of a conductor that feeds no load, in the usual state, else
// in every state in which a battery reaches it. A conductor that is part of a ring
// has two far ends.
func (a *analysis) ends(i int) *behind {
	var list *behind
	for k, st := range a.solver.all { // the usual one first
		if k > 0 && list != nil && list.fam == a.solver.family(a.solver.base, full) {
			break
		}
		fam := a.solver.family(st.st, full)
		for _, f := range a.feedings {
			if a.net.branches[f.pole.branch].class == batteryClass {
				list = a.addEnds(list, fam, i, f.pole.node)
			}
		}
	}
	return list
}

func (a *analysis) addEnds(list *behind, fam *family, i, source int) *behind {
	b := &a.net.branches[i]
	m, forest := a.faultMesh(fam, greatestOhms)
	if m.island[b.a] != m.island[source] {
		return list
	}
	alone := func(node int) bool {
		k := forest.above[node]
		return k >= 0 && len(forest.blocks[k]) == 1 && forest.blocks[k][0] == i
	}
	ring := !alone(b.a) && !alone(b.b)
	fromA := ring
	if !ring {
		fromA = true
		for _, l := range forest.way(nil, source, b.a) {
			fromA = fromA && forest.blocks[l.block][0] != i
		}
	}
	if fromA {
		list = a.addBehind(list, behind{far: b.b, near: b.a, fam: fam, back: -1})
	}
	if ring || !fromA {
		list = a.addBehind(list, behind{far: b.a, near: b.b, fam: fam, back: -1})
	}
	return list
}

// leastFault returns the least fault at the far end of a branch.
func (a *analysis) leastFault(at *behind) *prospect {
	switch {
	case at.least != nil:
	case at.back < 0:
		at.least = a.greatestFault(at.far, at.fam, greatestOhms)
	default:
		at.least = a.bolted(short{at: at.far, back: at.back, fam: at.fam, extra: at.ohms}, at.gaps, greatestOhms)
	}
	return at.least
}
