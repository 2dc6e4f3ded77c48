package circuit

import "math"

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
	nodes int
	links []gridLink

	group     []int     // by node: root of its group
	island    []int     // by node: number of its island
	rest      []float64 // by node: volts without any current, against its reference
	reference []int     // by island: the node at zero volts
	dead      []bool    // by island: not solved
	row       []int     // by root of a group: unknown, -1 for a reference
	rows      int
	fixed     []entry
	place     []int
	factor    *ldl

	flowRow    []int // by node: unknown of the flow in branches without resistance
	flowRows   int
	flowFactor *ldl

	clashes  []clash
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
// lowest of the preferred nodes, else its first node. The elimination order is
// that of like, nil for none, where it fits: another grid of the same branches.
func newGrid(nodes int, links []gridLink, preferred []int, like *grid) *grid {
	g := &grid{nodes: nodes, links: links}
	g.join()
	for _, c := range g.clashes {
		g.dead[g.island[links[c.link].a]] = true
	}
	g.number(preferred)
	if like != nil && like.rows == g.rows {
		g.place = like.place
	}
	g.factorise()
	g.prepareFlow(like)
	return g
}

// join finds groups, islands and the voltages at rest.
func (g *grid) join() {
	s := newSets(g.nodes)
	var greatest float64
	for i, l := range g.links {
		greatest = max(greatest, l.volts)
		if l.ohms <= 0 && s.join(l.a, l.b, l.volts) > 1e-9*(1+l.volts) {
			g.clashes = append(g.clashes, clash{i, true})
		}
	}
	g.group = make([]int, g.nodes)
	for i := range g.group {
		g.group[i], _ = s.find(i)
	}
	for i, l := range g.links {
		if miss := s.join(l.a, l.b, l.volts); l.ohms > 0 && miss > 0 && miss > unlike*greatest {
			g.clashes = append(g.clashes, clash{i, false})
		}
	}
	g.island = make([]int, g.nodes)
	g.rest = make([]float64, g.nodes)
	number := make([]int, g.nodes)
	islands := 0
	for i := range g.island {
		root, volts := s.find(i)
		if number[root] == 0 {
			islands++
			number[root] = islands
		}
		g.island[i], g.rest[i] = number[root]-1, volts
	}
	g.dead = make([]bool, islands)
}

// number gives each group an unknown, but for the references.
func (g *grid) number(preferred []int) {
	reference := make([]int, len(g.dead))
	g.reference = reference
	for i := range reference {
		reference[i] = -1
	}
	for _, node := range preferred {
		if at := reference[g.island[node]]; at < 0 || g.rest[node] < g.rest[at] {
			reference[g.island[node]] = node
		}
	}
	for i, is := range g.island {
		if reference[is] < 0 {
			reference[is] = i
		}
	}
	zero := make([]float64, len(reference))
	for is, node := range reference {
		zero[is] = g.rest[node]
	}
	g.row = make([]int, g.nodes)
	for i, root := range g.group {
		g.rest[i] -= zero[g.island[i]]
		g.row[i] = -1
		if root == i && g.group[reference[g.island[i]]] != i {
			g.row[i] = g.rows
			g.rows++
		}
	}
}

// factorise factorises the matrix; an island that has no unique solution is left
// out and the rest tried again.
func (g *grid) factorise() {
	for {
		g.fixed = g.conductances()
		if g.place == nil {
			g.place = order(g.rows, g.fixed)
		}
		factor, bad := factorise(g.rows, g.fixed, g.place)
		if bad < 0 {
			g.factor = factor
			return
		}
		for node, root := range g.group {
			if g.row[root] == bad {
				g.singular = append(g.singular, node)
				g.dead[g.island[node]] = true
				break
			}
		}
	}
}

// conductances returns the matrix; unknowns of islands that are not solved stand
// by themselves.
func (g *grid) conductances() []entry {
	entries := make([]entry, 0, 3*len(g.links))
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

// prepareFlow sets up the network of unit conductances that shares currents in
// branches without resistance.
func (g *grid) prepareFlow(like *grid) {
	g.flowRow = make([]int, g.nodes)
	for i, root := range g.group {
		g.flowRow[i] = -1
		if root != i {
			g.flowRow[i] = g.flowRows
			g.flowRows++
		}
	}
	if g.flowRows == 0 {
		return
	}
	var entries []entry
	for _, l := range g.links {
		if l.ohms > 0 || l.a == l.b {
			continue
		}
		ra, rb := g.flowRow[l.a], g.flowRow[l.b]
		if ra >= 0 {
			entries = append(entries, entry{ra, ra, 1})
		}
		if rb >= 0 {
			entries = append(entries, entry{rb, rb, 1})
		}
		if ra >= 0 && rb >= 0 {
			entries = append(entries, entry{ra, rb, -1})
		}
	}
	var place []int
	if like != nil && like.flowRows == g.flowRows && like.flowFactor != nil {
		place = like.flowFactor.place
	} else {
		place = order(g.flowRows, entries)
	}
	g.flowFactor, _ = factorise(g.flowRows, entries, place)
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
	factor := g.factor
	bent := g.fixed[:len(g.fixed):len(g.fixed)]
	for _, d := range drains {
		if d.siemens != 0 && !g.dead[g.island[d.a]] {
			bent = g.stamp(bent, d.a, d.b, d.siemens)
		}
	}
	if len(bent) > len(g.fixed) {
		var bad int
		if factor, bad = factorise(g.rows, bent, g.place); bad >= 0 {
			return nil
		}
	}
	level := 0.0
	if sources {
		level = 1
	}
	f := &flowing{stand: make([]float64, g.nodes), amps: make([]float64, len(g.links))}
	x := factor.solve(g.injected(level, drains))
	for node, root := range g.group {
		if r := g.row[root]; r >= 0 && !g.dead[g.island[node]] {
			f.stand[node] = x[r]
		}
	}
	g.setAmps(f, level, drains)
	return f
}

// injected returns the currents that sources and drains bring to each unknown.
func (g *grid) injected(level float64, drains []drain) []float64 {
	rhs := make([]float64, g.rows)
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
	return rhs
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
	left := make([]float64, g.flowRows)
	bring := func(node int, amps float64) {
		if r := g.flowRow[node]; r >= 0 {
			left[r] += amps
		}
	}
	for i, l := range g.links {
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
	x := g.flowFactor.solve(left)
	at := func(node int) float64 {
		if r := g.flowRow[node]; r >= 0 {
			return x[r]
		}
		return 0
	}
	for i, l := range g.links {
		if l.ohms <= 0 && l.a != l.b {
			f.amps[i] = at(l.a) - at(l.b)
		}
	}
}
