package circuit

import (
	"math"
	"slices"
)

// gridLink is one branch of a grid. Carrying j from a to b it obeys
//
//	V_a − V_b = R·j + e
type gridLink struct {
	a, b  int
	ohms  float64 // R, Ω; not above zero: none
	volts float64 // e, V: the voltage of a source
}

// grid is a linear network ready to be solved for any currents drawn from its
// nodes.
//
// Branches without resistance make their nodes one group, apart by e; what flows
// in them follows from Kirchhoff's current law, shared where it could divide as
// if they had small equal resistances. The unknowns are by how much each group
// stands off from where it would be without any current: small numbers, in
// which a drop keeps its digits.
//
// Shapes: one unknown for each group, less one reference for each island; the
// matrix is symmetric and positive definite.
type grid struct {
	*shape
	links    []gridLink
	dead     []bool // by island: not solved
	factor   *ldl
	singular []int // a node of each island without a unique solution
}

// clash is a branch that closes a loop in which voltages do not add up.
type clash struct {
	link int
	hard bool // nothing in the loop limits the current
}

// unlike is the share of the greatest source voltage by which sources in a loop
// may differ; beyond it one of them is shorted or fitted the wrong way round.
const unlike = 0.25

// newGrid prepares a network. The reference of an island, at zero volts, is the
// lowest of the preferred nodes, else its first node. What does not depend on how
// great resistances are is taken over from like, another grid of the same
// branches, where it fits; nil for none.
func newGrid(nodes int, links []gridLink, preferred []int, like *grid) *grid {
	g := &grid{links: links}
	if like != nil && like.fits(links) {
		g.shape = like.shape
	} else {
		g.shape = newShape(nodes, links, preferred)
		if like != nil && like.rows == g.rows {
			g.place = like.place
		}
		if like != nil && like.joins(g.shape, links) {
			g.takePatterns(like.shape)
		} else {
			g.prepareFlow(links, like)
		}
	}
	g.dead = g.clashed
	g.factorise()
	return g
}

// fits tells whether the links of a grid differ from others in resistance alone.
func (g *grid) fits(links []gridLink) bool {
	if len(links) != len(g.links) {
		return false
	}
	for i, l := range links {
		if o := &g.links[i]; l.a != o.a || l.b != o.b || l.volts != o.volts || (l.ohms > 0) != (o.ohms > 0) {
			return false
		}
	}
	return true
}

// joins tells whether a grid joins the same nodes into groups and unknowns as
// another shape over the same links: whatever their voltages, matrices have the
// same entries.
func (g *grid) joins(s *shape, links []gridLink) bool {
	if len(links) != len(g.links) || len(g.clashes)+len(s.clashes) > 0 || !slices.Equal(g.row, s.row) || !slices.Equal(g.group, s.group) {
		return false
	}
	for i, l := range links {
		if o := &g.links[i]; l.a != o.a || l.b != o.b || (l.ohms > 0) != (o.ohms > 0) {
			return false
		}
	}
	return true
}

// factorise factorises the matrix; an island that has no unique solution is left
// out and the rest tried again.
func (g *grid) factorise() {
	for {
		g.entries = g.conductances(g.entries[:0])
		if g.place == nil {
			g.place = order(g.rows, g.entries)
		}
		var bad int
		if g.factor, bad = g.patternOf().factorise(g.entries); bad < 0 {
			return
		}
		for node, root := range g.group {
			if g.row[root] == bad {
				g.singular = append(g.singular, node)
				g.dead = slices.Clone(g.dead)
				g.dead[g.island[node]] = true
				break
			}
		}
	}
}

// patternOf returns the pattern of the matrix. Grids that leave out the same
// islands, those of their shape, have the same one.
func (g *grid) patternOf() *pattern {
	if len(g.singular) > 0 {
		return newPattern(g.rows, g.entries, g.place)
	}
	if g.pattern == nil {
		g.pattern = newPattern(g.rows, g.entries, g.place)
	}
	return g.pattern
}

// conductances adds the matrix to entries; unknowns of islands that are not solved stand
// by themselves.
func (g *grid) conductances(entries []entry) []entry {
	for _, l := range g.links {
		if l.ohms > 0 && !g.dead[g.island[l.a]] {
			entries = g.stamp(entries, l.a, l.b, 1/l.ohms)
		}
	}
	for node, root := range g.group {
		if r := g.row[node]; root == node && r >= 0 && g.dead[g.island[node]] {
			entries = append(entries, entry{r, r, 1})
		}
	}
	return entries
}

func (g *grid) rowOf(node int) int { return g.row[g.group[node]] }

// stamp adds a conductance between two nodes to a matrix.
func (g *grid) stamp(entries []entry, a, b int, siemens float64) []entry {
	ra, rb := g.rowOf(a), g.rowOf(b)
	if ra == rb {
		return entries
	}
	if ra >= 0 {
		entries = append(entries, entry{ra, ra, siemens})
	}
	if rb >= 0 {
		entries = append(entries, entry{rb, rb, siemens})
	}
	if ra >= 0 && rb >= 0 {
		entries = append(entries, entry{ra, rb, -siemens})
	}
	return entries
}

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
