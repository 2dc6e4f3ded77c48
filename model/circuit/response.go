package circuit

import "math"

// hop is a branch that carries part of a current on its way, from a to b.
type hop struct {
	branch int
	amps   float64
}

// blockGrid is one block with rings as a grid of its own, without sources.
type blockGrid struct {
	grid  *grid
	nodes map[int]int          // node of the network: node of the grid
	known map[[2]int][]float64 // amps of the block's branches by entry and exit
}

// unit returns the currents that one ampere drives on its way through the mesh,
// sources at rest: all of it over bridges, divided by resistance in rings.
func (m *mesh) unit(f *forest, way []leg) []hop {
	hops := make([]hop, 0, len(way))
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
		for k, amps := range m.block(f, l.block).through(l.from, l.to) {
			if math.Abs(amps) > 1e-12 {
				hops = append(hops, hop{branches[k], amps})
			}
		}
	}
	return hops
}

func (m *mesh) block(f *forest, block int) *blockGrid {
	if b, ok := m.blocks[block]; ok {
		return b
	}
	b := &blockGrid{nodes: map[int]int{}, known: map[[2]int][]float64{}}
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
	b.grid = newGrid(len(b.nodes), links, nil)
	m.blocks[block] = b
	return b
}

// through returns the currents of the block's branches for one ampere that
// enters at one node and leaves at another.
func (b *blockGrid) through(from, to int) []float64 {
	sign := 1.0
	key := [2]int{from, to}
	if from > to {
		sign, key = -1, [2]int{to, from}
	}
	amps, ok := b.known[key]
	if !ok {
		amps = b.grid.solve(false, []drain{{branch: -1, a: b.nodes[key[1]], b: b.nodes[key[0]], amps: 1}}).amps
		b.known[key] = amps
	}
	if sign > 0 {
		return amps
	}
	turned := make([]float64, len(amps))
	for i, v := range amps {
		turned[i] = -v
	}
	return turned
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
