package circuit

// values are the numbers of one way to fill in what is open or a range: ohms of
// each branch, and volts that a source holds. Loads are not part of a mesh.
type values struct {
	ohms  []float64 // Ω by branch
	volts []float64 // V by branch, 0 but for sources
}

// mesh is a network in one state of its switches and one set of values, as a
// grid over its closed branches.
type mesh struct {
	*grid
	net    *network
	values values
	closed []int // branches of the grid's links
	round  int   // which made-up values it has

	idle    *solution          // without any load, once asked for
	derived *mesh              // with some charging sources limited, the last one made
	faults  map[int]Problem    // by island
	blocks  map[int]*blockGrid // by block of the forest, once asked for
}

// newMesh prepares the network with the given branches closed; like is a mesh of
// the same branches, nil for none.
func newMesh(n *network, closed []int, v values, round int, like *mesh) *mesh {
	m := &mesh{net: n, values: v, closed: closed, round: round}
	links := make([]gridLink, len(closed))
	var negatives []int
	for k, i := range closed {
		b := &n.branches[i]
		links[k] = gridLink{b.a, b.b, v.ohms[i], v.volts[i]}
		if b.kind == source {
			negatives = append(negatives, b.b)
		}
	}
	var pattern *grid
	if like != nil {
		pattern = like.grid
	}
	m.grid = newGrid(len(n.nodes), links, negatives, pattern)
	m.noteFaults()
	return m
}

// noteFaults words what kept islands from being solved.
func (m *mesh) noteFaults() {
	if len(m.clashes)+len(m.singular) > 0 {
		m.faults = map[int]Problem{}
	}
	for _, c := range m.clashes {
		b := &m.net.branches[m.closed[c.link]]
		says := "a source is short-circuited, or two of unlike voltage are joined, by a way over " + branchPlace(b)
		if c.hard {
			says = "nothing limits the current through " + branchPlace(b) + ": its terminals are joined without resistance"
		}
		if is := m.island[b.a]; m.faults[is].Kind == "" {
			m.faults[is] = m.net.problem(Shorted, b, says)
		}
	}
	for _, node := range m.singular {
		m.faults[m.island[node]] = Problem{
			Kind: Singular, Path: m.net.nodePath(node), At: m.net.nodeAt(node), Nodes: []string{m.net.nodes[node].name},
			Says: "resistances around " + m.net.nodes[node].name + " lie too far apart to be solved together",
		}
	}
}

// solution is what the network does: volts by node, amps by branch from a to b.
type solution struct {
	volts []float64
	amps  []float64
}

// solve returns voltages and currents with the given currents drawn; nil if
// there is no solution.
func (m *mesh) solve(drains []drain) *solution {
	s := &solution{volts: make([]float64, m.nodes), amps: make([]float64, len(m.net.branches))}
	f := &flowing{stand: s.volts, amps: m.flows(len(m.links))}
	if !m.solveInto(f, true, drains) {
		return nil
	}
	for k, i := range m.closed {
		s.amps[i] = f.amps[k]
	}
	for _, d := range drains {
		if d.branch >= 0 {
			s.amps[d.branch] += m.drawn(f, 1, d)
		}
	}
	for node := range s.volts {
		s.volts[node] += m.rest[node]
	}
	return s
}

// atRest returns the network without loads.
func (m *mesh) atRest() *solution {
	if m.idle == nil {
		m.idle = m.solve(nil)
	}
	return m.idle
}
