package circuit

// shape is what of a grid does not depend on how great its resistances are: which
// nodes are one group, what hangs together, and what the unknowns are.
type shape struct {
	nodes int

	group     []int     // by node: root of its group
	island    []int     // by node: number of its island
	rest      []float64 // by node: volts without any current, against its reference
	reference []int     // by island: the node at zero volts
	sourced   []bool    // by island: a preferred node is there, which a source makes one
	clashes   []clash
	clashed   []bool // by island: not solved for a clash
	row       []int  // by root of a group: unknown, -1 for a reference
	rows      int

	flowRow    []int // by node: unknown of the flow in branches without resistance
	flowRows   int
	flowFactor *ldl

	place   []int    // elimination order, once asked for
	pattern *pattern // of the matrix, once asked for

	// What a factorisation or solution writes down on its way.
	entries              []entry
	unknowns, left, amps []float64
}

// flows returns memory for the currents of links, of which only one is in use at a
// time.
func (g *shape) flows(links int) []float64 {
	if len(g.amps) != links {
		g.amps = make([]float64, links)
	}
	return g.amps
}

func newShape(nodes int, links []gridLink, preferred []int) *shape {
	g := &shape{nodes: nodes}
	g.join(links)
	g.number(preferred)
	return g
}

// join finds groups, islands and the voltages at rest.
func (g *shape) join(links []gridLink) {
	s := newSets(g.nodes)
	var greatest float64
	for i, l := range links {
		greatest = max(greatest, l.volts)
		if l.ohms <= 0 && s.join(l.a, l.b, l.volts) > 1e-9*(1+l.volts) {
			g.clashes = append(g.clashes, clash{i, true})
		}
	}
	numbers := make([]int, 5*g.nodes)
	take := func() (part []int) { part, numbers = numbers[:g.nodes], numbers[g.nodes:]; return part }
	g.group, g.island, g.row, g.flowRow = take(), take(), take(), take()
	for i := range g.group {
		g.group[i], _ = s.find(i)
	}
	for i, l := range links {
		if miss := s.join(l.a, l.b, l.volts); l.ohms > 0 && miss > 0 && miss > unlike*greatest {
			g.clashes = append(g.clashes, clash{i, false})
		}
	}
	g.rest = make([]float64, g.nodes)
	number := take()
	islands := 0
	for i := range g.island {
		root, volts := s.find(i)
		if number[root] == 0 {
			islands++
			number[root] = islands
		}
		g.island[i], g.rest[i] = number[root]-1, volts
	}
	g.clashed = make([]bool, islands)
	for _, c := range g.clashes {
		g.clashed[g.island[links[c.link].a]] = true
	}
}

// number gives each group an unknown, but for the references.
func (g *shape) number(preferred []int) {
	reference := make([]int, len(g.clashed))
	g.reference, g.sourced = reference, make([]bool, len(reference))
	for i := range reference {
		reference[i] = -1
	}
	for _, node := range preferred {
		g.sourced[g.island[node]] = true
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
	for i, root := range g.group {
		g.rest[i] -= zero[g.island[i]]
		g.row[i] = -1
		if root == i && g.group[reference[g.island[i]]] != i {
			g.row[i] = g.rows
			g.rows++
		}
	}
}

// takePatterns takes over what only hangs on which nodes are joined, and the memory
// that goes with it.
func (g *shape) takePatterns(like *shape) {
	g.flowRow, g.flowRows, g.flowFactor, g.left = like.flowRow, like.flowRows, like.flowFactor, like.left
	g.pattern, g.entries, g.unknowns, g.amps = like.pattern, like.entries, like.unknowns, like.amps
}

// prepareFlow sets up the network of unit conductances that shares currents in
// branches without resistance.
func (g *shape) prepareFlow(links []gridLink, like *grid) {
	g.entries, g.unknowns = make([]entry, 0, 3*len(links)), make([]float64, g.rows)
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
	g.left = make([]float64, g.flowRows)
	entries := g.entries[:0]
	for _, l := range links {
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
	g.entries = entries
}
