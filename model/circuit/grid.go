package circuit

import (
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
