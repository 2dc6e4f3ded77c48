package circuit

import "math"

// values are the numbers of one way to fill in what is open or a range: ohms of
// each branch, and volts that a source holds. Loads are not part of a mesh.
type values struct {
	ohms  []float64 // Ω by branch
	volts []float64 // V by branch, 0 but for sources
}

// mesh is the network in one state of its switches, ready to be solved for any
// currents drawn from its nodes.
//
// A branch from a to b carrying j obeys V_a − V_b = R·j + e, e the voltage of a
// source. Branches without resistance make their nodes one, apart by e; what
// flows in them follows from Kirchhoff's current law, shared where it could
// divide as if they had small equal resistances.
//
// Shapes: one unknown for each group of nodes so joined, less one reference for
// each island; the matrix is symmetric and positive definite.
type mesh struct {
	net    *network
	values values
	closed []int // branches that conduct, loads apart

	group  []int     // by node: root of its group
	offset []float64 // by node: volts without any current, against others of its island
	island []int     // by node: island number
	row    []int     // by root: unknown, -1 for a reference
	rows   int
	fixed  []entry // matrix of the resistances
	place  []int
	factor *ldl

	flowRow    []int // by node: unknown of the flow in branches without resistance
	flowFactor *ldl
	flowRows   int

	idle    *solution       // without any load, once asked for
	derived *mesh           // with some charging sources limited, the last one made
	faults  map[int]Problem // by island
	sourced []bool          // by island: has a source
}

// newMesh prepares the network with the given branches closed.
func newMesh(n *network, closed []int, v values) *mesh {
	m := &mesh{net: n, values: v, closed: closed, faults: map[int]Problem{}}
	m.join()
	m.number()
	m.fixed = m.conductances()
	m.place = order(m.rows, m.fixed)
	factor, bad := factorise(m.rows, m.fixed, m.place)
	if bad >= 0 {
		m.blame(bad)
	}
	m.factor = factor
	m.prepareFlow()
	return m
}

// sets is a union-find over nodes.
type sets struct {
	parent []int
	volts  []float64 // above the parent
}

func newSets(n int) *sets {
	s := &sets{parent: make([]int, n), volts: make([]float64, n)}
	for i := range s.parent {
		s.parent[i] = i
	}
	return s
}

// find returns the root of a node and the volts of the node above it.
func (s *sets) find(i int) (root int, volts float64) {
	root = i
	for s.parent[root] != root {
		volts += s.volts[root]
		root = s.parent[root]
	}
	for at := volts; s.parent[i] != root && i != root; {
		next, step := s.parent[i], s.volts[i]
		s.parent[i], s.volts[i] = root, at
		i, at = next, at-step
	}
	return root, volts
}

// join makes a stand volts above b. If they are joined already, it returns by
// how much their difference misses that.
func (s *sets) join(a, b int, volts float64) (miss float64) {
	ra, va := s.find(a)
	rb, vb := s.find(b)
	if ra == rb {
		return math.Abs(va - vb - volts)
	}
	// The lower root stays, so that groups do not depend on the order of joins.
	if ra < rb {
		s.parent[rb], s.volts[rb] = ra, va-vb-volts
	} else {
		s.parent[ra], s.volts[ra] = rb, vb-va+volts
	}
	return 0
}

// unlike is the share of a source's voltage by which sources in parallel may
// differ; beyond it one of them is shorted or fitted the wrong way round.
const unlike = 0.25

// join finds the groups that branches without resistance make, the islands that
// all branches make, and what each node would stand at without any current. The
// unknowns of the network are what it stands off from that: small numbers, in
// which a drop keeps its digits.
func (m *mesh) join() {
	s := newSets(len(m.net.nodes))
	greatest := m.greatest()
	type clash struct {
		branch int
		says   string
	}
	var clashes []clash
	for _, i := range m.closed {
		b, e := &m.net.branches[i], m.values.volts[i]
		if m.values.ohms[i] <= 0 && s.join(b.a, b.b, e) > 1e-9*(1+e) {
			clashes = append(clashes, clash{i, "nothing limits the current through " + branchPlace(b) + ": its terminals are joined without resistance"})
		}
	}
	m.group = make([]int, len(m.net.nodes))
	for i := range m.group {
		m.group[i], _ = s.find(i)
	}
	for _, i := range m.closed {
		b, e := &m.net.branches[i], m.values.volts[i]
		if miss := s.join(b.a, b.b, e); m.values.ohms[i] > 0 && miss > 0 && miss > unlike*greatest {
			clashes = append(clashes, clash{i, "a source is short-circuited, or two of unlike voltage are joined, by a way over " + branchPlace(b)})
		}
	}
	m.island = make([]int, len(m.net.nodes))
	m.offset = make([]float64, len(m.net.nodes))
	number := map[int]int{}
	for i := range m.island {
		root, volts := s.find(i)
		if _, ok := number[root]; !ok {
			number[root] = len(number)
		}
		m.island[i], m.offset[i] = number[root], volts
	}
	m.sourced = make([]bool, len(number))
	for _, i := range m.closed {
		if b := &m.net.branches[i]; b.kind == source {
			m.sourced[m.island[b.a]] = true
		}
	}
	for _, c := range clashes {
		b := &m.net.branches[c.branch]
		m.fault(m.island[b.a], Shorted, b, c.says)
	}
}

// greatest returns the greatest voltage of any source.
func (m *mesh) greatest() float64 {
	var most float64
	for _, i := range m.closed {
		most = max(most, m.values.volts[i])
	}
	return most
}

func (m *mesh) fault(island int, kind ProblemKind, b *branch, says string) {
	if _, known := m.faults[island]; known {
		return
	}
	m.faults[island] = m.net.problem(kind, b, says)
}

// number gives each group an unknown, but for one reference in each island: the
// lowest negative terminal of a source, which stands at zero, else the first.
func (m *mesh) number() {
	reference := make([]int, len(m.sourced))
	for i := range reference {
		reference[i] = -1
	}
	for _, i := range m.closed {
		if b := &m.net.branches[i]; b.kind == source {
			if at := reference[m.island[b.b]]; at < 0 || m.offset[b.b] < m.offset[at] {
				reference[m.island[b.b]] = b.b
			}
		}
	}
	m.row = make([]int, len(m.net.nodes))
	for i, is := range m.island {
		if reference[is] < 0 {
			reference[is] = i
		}
	}
	zero := make([]float64, len(reference))
	for is, node := range reference {
		zero[is] = m.offset[node]
	}
	for i, root := range m.group {
		m.offset[i] -= zero[m.island[i]]
		m.row[i] = -1
		if root == i && m.group[reference[m.island[i]]] != i {
			m.row[i] = m.rows
			m.rows++
		}
	}
}

func (m *mesh) rowOf(n int) int { return m.row[m.group[n]] }

func (m *mesh) conductances() []entry {
	var entries []entry
	for _, i := range m.closed {
		if r := m.values.ohms[i]; r > 0 {
			b := &m.net.branches[i]
			entries = m.stamp(entries, b.a, b.b, 1/r)
		}
	}
	return entries
}

// stamp adds a conductance between two nodes to a matrix.
func (m *mesh) stamp(entries []entry, a, b int, siemens float64) []entry {
	ra, rb := m.rowOf(a), m.rowOf(b)
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

// blame notes the island of a row that has no unique solution.
func (m *mesh) blame(row int) {
	for node, root := range m.group {
		if m.row[root] == row {
			p := Problem{
				Kind: Singular, Path: m.net.nodePath(node), Nodes: []string{m.net.nodes[node].name},
				Says: "resistances around " + m.net.nodes[node].name + " lie too far apart to be solved together",
			}
			m.faults[m.island[node]] = p
			return
		}
	}
}

// prepareFlow sets up the unit network of branches without resistance.
func (m *mesh) prepareFlow() {
	m.flowRow = make([]int, len(m.net.nodes))
	for i, root := range m.group {
		m.flowRow[i] = -1
		if root != i {
			m.flowRow[i] = m.flowRows
			m.flowRows++
		}
	}
	var entries []entry
	for _, i := range m.closed {
		if b := &m.net.branches[i]; m.values.ohms[i] <= 0 && b.a != b.b {
			ra, rb := m.flowRow[b.a], m.flowRow[b.b]
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
	}
	m.flowFactor, _ = factorise(m.flowRows, entries, order(m.flowRows, entries))
}

// solution is what the network does: volts by node, amps by branch from a to b.
type solution struct {
	volts []float64
	stand []float64 // volts off from what the node would stand at without current
	amps  []float64
}

// drain is what a load draws from node a and returns at node b: a current, and
// one in proportion to its voltage.
type drain struct {
	branch  int // the load, -1 for none
	a, b    int
	amps    float64
	siemens float64
}

// solve returns voltages and currents with the sources at their voltages (or
// at zero, for responses) and the given currents drawn; nil if the network has
// no unique solution.
func (m *mesh) solve(sources bool, drains []drain) *solution {
	if m.factor == nil || m.flowFactor == nil {
		return nil
	}
	factor, bent := m.factor, m.fixed
	for _, d := range drains {
		if d.siemens != 0 {
			bent = m.stamp(bent[:len(bent):len(bent)], d.a, d.b, d.siemens)
		}
	}
	if len(bent) > len(m.fixed) {
		var bad int
		if factor, bad = factorise(m.rows, bent, m.place); bad >= 0 {
			return nil
		}
	}
	return m.solveWith(factor, sources, drains)
}

// excess returns by how much a branch's voltage exceeds what its ends would
// stand apart by without current: zero but for sources in a loop.
func (m *mesh) excess(i int) float64 {
	b := &m.net.branches[i]
	e := m.values.volts[i] + m.offset[b.b] - m.offset[b.a]
	if math.Abs(e) <= 1e-12*math.Abs(m.values.volts[i]) {
		return 0
	}
	return e
}

func (m *mesh) solveWith(factor *ldl, sources bool, drains []drain) *solution {
	s := &solution{volts: make([]float64, len(m.net.nodes)), stand: make([]float64, len(m.net.nodes)), amps: make([]float64, len(m.net.branches))}
	level := 0.0
	if sources {
		level = 1
	}
	rhs := make([]float64, m.rows)
	inject := func(node int, amps float64) {
		if r := m.rowOf(node); r >= 0 {
			rhs[r] += amps
		}
	}
	for _, i := range m.closed {
		if r := m.values.ohms[i]; r > 0 {
			b := &m.net.branches[i]
			if lift := level * m.excess(i) / r; lift != 0 {
				inject(b.a, lift)
				inject(b.b, -lift)
			}
		}
	}
	for _, d := range drains {
		amps := d.amps + d.siemens*level*(m.offset[d.a]-m.offset[d.b])
		inject(d.a, -amps)
		inject(d.b, amps)
	}
	x := factor.solve(rhs)
	for node, root := range m.group {
		if r := m.row[root]; r >= 0 {
			s.stand[node] = x[r]
		}
		s.volts[node] = level*m.offset[node] + s.stand[node]
	}
	m.branchCurrents(s, level, drains)
	return s
}

// branchCurrents sets the currents of all closed branches: by Ohm's law, and in
// branches without resistance by what the others leave at each node.
func (m *mesh) branchCurrents(s *solution, level float64, drains []drain) {
	left := make([]float64, m.flowRows) // current brought to the node by the rest
	bring := func(node int, amps float64) {
		if r := m.flowRow[node]; r >= 0 {
			left[r] += amps
		}
	}
	for _, i := range m.closed {
		if r := m.values.ohms[i]; r > 0 {
			b := &m.net.branches[i]
			j := (s.stand[b.a] - s.stand[b.b] - level*m.excess(i)) / r
			s.amps[i] = j
			bring(b.a, -j)
			bring(b.b, j)
		}
	}
	for _, d := range drains {
		amps := d.amps + d.siemens*(s.volts[d.a]-s.volts[d.b])
		if d.branch >= 0 {
			s.amps[d.branch] += amps
		}
		bring(d.a, -amps)
		bring(d.b, amps)
	}
	x := m.flowFactor.solve(left)
	at := func(node int) float64 {
		if r := m.flowRow[node]; r >= 0 {
			return x[r]
		}
		return 0
	}
	for _, i := range m.closed {
		if b := &m.net.branches[i]; m.values.ohms[i] <= 0 && b.a != b.b {
			s.amps[i] = at(b.a) - at(b.b)
		}
	}
}
