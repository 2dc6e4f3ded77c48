package circuit

import (
	"math"
	"slices"
)

// drain is what a load draws from node a and returns at node b: a current, and
// one in proportion to its voltage.
type drain struct {
	branch  int // the load, -1 for none
	a, b    int
	amps    float64
	siemens float64
}

// flowing is the state of a grid: by how much each node stands off from rest,
// and the current of each link from a to b.
type flowing struct {
	stand []float64
	amps  []float64
}

// solve solves the grid with the given currents drawn. Sources are at their
// voltages, or at zero for the response to the drains alone. It returns nil if
// the drains leave the matrix not positive definite.
func (g *grid) solve(sources bool, drains []drain) *flowing {
	f := &flowing{stand: make([]float64, g.nodes), amps: make([]float64, len(g.links))}
	if !g.solveInto(f, sources, drains) {
		return nil
	}
	return f
}

// solveInto does the same with the memory of a state, of which the stand is zero.
func (g *grid) solveInto(f *flowing, sources bool, drains []drain) bool {
	factor := g.bent(drains)
	if factor == nil {
		return false
	}
	level := 0.0
	if sources {
		level = 1
	}
	x := g.unknowns
	g.inject(x, level, drains)
	factor.solveInto(x, x)
	for node, root := range g.group {
		if r := g.row[root]; r >= 0 && !g.dead[g.island[node]] {
			f.stand[node] = x[r]
		}
	}
	g.setAmps(f, level, drains)
	return true
}

// bent returns the factor of the matrix with what drains take in proportion to
// their voltage, nil where that leaves it not positive definite.
func (g *grid) bent(drains []drain) *ldl {
	if !slices.ContainsFunc(drains, func(d drain) bool { return d.siemens != 0 && !g.dead[g.island[d.a]] }) {
		return g.factor
	}
	g.entries = g.conductances(g.entries[:0])
	plain := len(g.entries)
	for _, d := range drains {
		if d.siemens != 0 && !g.dead[g.island[d.a]] {
			g.entries = g.stamp(g.entries, d.a, d.b, d.siemens)
		}
	}
	if len(g.entries) == plain {
		return g.factor
	}
	factor, bad := factorise(g.rows, g.entries, g.place)
	if bad >= 0 {
		return nil
	}
	return factor
}

// inject writes the currents that sources and drains bring to each unknown.
func (g *grid) inject(rhs []float64, level float64, drains []drain) {
	clear(rhs)
	bring := func(node int, amps float64) {
		if r := g.rowOf(node); r >= 0 {
			rhs[r] += amps
		}
	}
	if level != 0 {
		for i, l := range g.links {
			if e := g.excess(i); e != 0 && l.ohms > 0 {
				bring(l.a, level*e/l.ohms)
				bring(l.b, -level*e/l.ohms)
			}
		}
	}
	for _, d := range drains {
		amps := d.amps + d.siemens*level*(g.rest[d.a]-g.rest[d.b])
		bring(d.a, -amps)
		bring(d.b, amps)
	}
}

// excess returns by how much a link's source exceeds what its ends stand apart
// by at rest: zero but for sources in a loop.
func (g *grid) excess(i int) float64 {
	l := &g.links[i]
	e := l.volts + g.rest[l.b] - g.rest[l.a]
	if math.Abs(e) <= 1e-12*math.Abs(l.volts) || l.volts == 0 && math.Abs(e) < 1e-12 {
		return 0
	}
	return e
}

// drawn returns the current of a drain in a state.
func (g *grid) drawn(f *flowing, level float64, d drain) float64 {
	return d.amps + d.siemens*(level*(g.rest[d.a]-g.rest[d.b])+f.stand[d.a]-f.stand[d.b])
}

// setAmps sets the currents of all links: by Ohm's law, and without resistance
// by what the others leave at each node.
func (g *grid) setAmps(f *flowing, level float64, drains []drain) {
	left := g.left
	clear(left)
	bring := func(node int, amps float64) {
		if r := g.flowRow[node]; r >= 0 {
			left[r] += amps
		}
	}
	for i, l := range g.links {
		f.amps[i] = 0
		if l.ohms <= 0 || g.dead[g.island[l.a]] {
			continue
		}
		j := (f.stand[l.a] - f.stand[l.b]) / l.ohms
		if level != 0 {
			j -= level * g.excess(i) / l.ohms
		}
		f.amps[i] = j
		bring(l.a, -j)
		bring(l.b, j)
	}
	for _, d := range drains {
		amps := g.drawn(f, level, d)
		bring(d.a, -amps)
		bring(d.b, amps)
	}
	if g.flowFactor == nil {
		return
	}
	g.flowFactor.solveInto(left, left)
	at := func(node int) float64 {
		if r := g.flowRow[node]; r >= 0 {
			return left[r]
		}
		return 0
	}
	for i, l := range g.links {
		if l.ohms <= 0 && l.a != l.b {
			f.amps[i] = at(l.a) - at(l.b)
		}
	}
}
