package circuit

import "math"

// hop is a branch that carries part of a current on its way, from a to b.
type hop struct {
	branch int
	amps   float64
}

// ring is the part of a way that lies in a block with rings: hops from start to
// end.
type ring struct {
	*crossing
	start, end int
}

// crossing is how one ampere crosses a block between two of its nodes.
type crossing struct {
	from, to int
	hops     []hop
	device   bool // a device stands on it
	ordered  *dag // its branches in the direction of the current, once asked for
}

// blockGrid is one block with rings as a grid of its own, without sources.
type blockGrid struct {
	grid  *grid
	nodes map[int]int          // node of the network: node of the grid
	known map[[2]int]*crossing // by entry and exit
}

// unit returns the currents that one ampere drives on its way through the mesh,
// sources at rest: all of it over bridges, divided by resistance in rings. Where
// there are no rings, hops are in the order of the current.
func (m *mesh) unit(f *forest, way []leg) (hops []hop, rings []ring) {
	hops = m.net.hops.list(len(way))
	for _, l := range way {
		branches := f.blocks[l.block]
		if len(branches) == 1 {
			amps := 1.0
			if m.net.branches[branches[0]].b == l.from {
				amps = -1
			}
			hops = append(hops, hop{branches[0], amps})
			continue
		}
		c := m.crossing(f, l)
		rings = append(rings, ring{c, len(hops), len(hops) + len(c.hops)})
		hops = append(hops, c.hops...)
	}
	return hops, rings
}

// crossing returns how one ampere takes a leg through a block with rings.
func (m *mesh) crossing(f *forest, l leg) *crossing {
	b := m.block(f, l.block)
	key := [2]int{l.from, l.to}
	if c, ok := b.known[key]; ok {
		return c
	}
	c := &crossing{from: l.from, to: l.to}
	flow := b.grid.solve(false, []drain{{branch: -1, a: b.nodes[l.to], b: b.nodes[l.from], amps: 1}})
	for k, i := range f.blocks[l.block] {
		if amps := flow.amps[k]; math.Abs(amps) > 1e-12 {
			c.hops = append(c.hops, hop{i, amps})
			c.device = c.device || m.net.branches[i].kind == device
		}
	}
	b.known[key] = c
	return c
}

func (m *mesh) block(f *forest, block int) *blockGrid {
	if b, ok := m.blocks[block]; ok {
		return b
	}
	b := &blockGrid{nodes: map[int]int{}, known: map[[2]int]*crossing{}}
	local := func(node int) int {
		i, ok := b.nodes[node]
		if !ok {
			i = len(b.nodes)
			b.nodes[node] = i
		}
		return i
	}
	links := make([]gridLink, 0, len(f.blocks[block]))
	for _, i := range f.blocks[block] {
		br := &m.net.branches[i]
		links = append(links, gridLink{a: local(br.a), b: local(br.b), ohms: m.values.ohms[i]})
	}
	b.grid = newGrid(len(b.nodes), links, nil, nil)
	if m.blocks == nil {
		m.blocks = map[int]*blockGrid{}
	}
	m.blocks[block] = b
	return b
}

// transfer returns the voltage that a current along one way makes along another,
// per ampere: the sum of R·i·k over the branches of both (Tellegen's theorem).
// With the same way twice it is the resistance between its ends.
func (m *mesh) transfer(one, two []hop) float64 {
	if len(one) > 8 && len(two) > 8 {
		other := make(map[int]float64, len(two))
		for _, h := range two {
			other[h.branch] = h.amps
		}
		sum := 0.0
		for _, h := range one {
			sum += m.values.ohms[h.branch] * h.amps * other[h.branch]
		}
		return sum
	}
	sum := 0.0
	for _, h := range one {
		for _, k := range two {
			if h.branch == k.branch {
				sum += m.values.ohms[h.branch] * h.amps * k.amps
			}
		}
	}
	return sum
}

// ohmsOf returns the resistance that a way has for its own current.
func (m *mesh) ohmsOf(way []hop) float64 {
	sum := 0.0
	for _, h := range way {
		sum += m.values.ohms[h.branch] * h.amps * h.amps
	}
	return sum
}
