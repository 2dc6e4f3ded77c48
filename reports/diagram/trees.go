package diagram

import (
	"cmp"
	"slices"
)

// tree is a part of the network that was placed from one root along primary
// edges, in rows of its own that begin at 0.
type tree struct {
	nodes []*node
	edges []*edge // that leave its nodes
	rows  int
}

// group is the edges from one node to another, side by side.
type group struct {
	to    *node
	edges []*edge
	rank  []int // order among the groups of a node
}

// setPrimary chooses, for each node, the edges along which it is placed: those
// from the node on its left that feeds it the most directly.
func (n *network) setPrimary() {
	for _, nd := range n.nodes {
		if len(nd.in) == 0 {
			continue
		}
		best := slices.MinFunc(nd.in, func(a, b *edge) int {
			return cmp.Or(
				cmp.Compare(n.side(a), n.side(b)),
				cmp.Compare(b.u.col, a.u.col),
				cmp.Compare(a.index, b.index))
		})
		for _, e := range nd.in {
			e.primary = e.u == best.u && e.behind == best.behind
		}
	}
}

// trees places each root with what hangs on it, batteries first.
func (n *network) trees() []*tree {
	var roots []*node
	for _, nd := range n.nodes {
		if len(nd.in) == 0 {
			roots = append(roots, nd)
		}
	}
	slices.SortStableFunc(roots, func(a, b *node) int {
		return cmp.Or(cmp.Compare(sourceRank(a), sourceRank(b)), cmp.Compare(a.index, b.index))
	})
	var all []*tree
	for _, root := range roots {
		t := &tree{}
		t.rows = n.place(t, root, 0, 1)
		all = append(all, t)
	}
	return all
}

func sourceRank(nd *node) int {
	switch {
	case nd.kind.Name == "battery":
		return 0
	case nd.kind.Source:
		return 1
	}
	return 2
}

// place gives a node and what hangs on it their rows from r on; landing is the
// number of edges that it is placed along. It returns the first row below.
func (n *network) place(t *tree, nd *node, r, landing int) int {
	t.nodes = append(t.nodes, nd)
	nd.row, nd.top, nd.bottom = r, r, r+landing-1
	next := r
	for _, tile := range n.tiles(nd) {
		end := next
		for i, g := range tile {
			end = max(end, n.placeGroup(t, nd, g, next+i))
		}
		next = end
	}
	return max(next, nd.bottom+1)
}

// placeGroup gives the edges of a group their rows from r on, and places what
// hangs on them.
func (n *network) placeGroup(t *tree, nd *node, g group, r int) int {
	if g.edges[0].behind {
		r = max(r, nd.bottom+1) // below its own symbol
	}
	for i, e := range g.edges {
		e.row, e.land = r+i, r+i
		if !e.behind {
			nd.bottom = max(nd.bottom, e.row)
		}
	}
	t.edges = append(t.edges, g.edges...)
	if g.edges[0].primary {
		return n.place(t, g.to, r, len(g.edges))
	}
	return r + len(g.edges)
}

// groups lists the edges out of a node by where they lead, in the order of their
// rows: by what they are for, and by the space of what they feed in the end.
func (n *network) groups(nd *node) []group {
	var all []group
	for _, e := range nd.out {
		i := slices.IndexFunc(all, func(g group) bool { return g.to == e.v && g.edges[0].behind == e.behind })
		if i < 0 {
			all = append(all, group{to: e.v})
			i = len(all) - 1
		}
		all[i].edges = append(all[i].edges, e)
	}
	for i := range all {
		g := &all[i]
		purpose, jumps := int(n.side(g.edges[0])), 0
		if g.edges[0].behind {
			purpose = int(bonding) + 1
		}
		if !g.edges[0].primary {
			jumps = 1
		}
		g.rank = []int{purpose, n.spaceRank(g.to, map[*node]bool{}), jumps, g.edges[0].index}
	}
	slices.SortStableFunc(all, func(a, b group) int { return slices.Compare(a.rank, b.rank) })
	return all
}

// spaceRank is the place in the record of the space of the first load that a
// node leads to.
func (n *network) spaceRank(nd *node, seen map[*node]bool) int {
	if seen[nd] {
		return len(n.rec.Spaces)
	}
	seen[nd] = true
	best := len(n.rec.Spaces)
	for _, e := range nd.out {
		if e.v.level < returnLevel {
			best = min(best, n.spaceRank(e.v, seen))
		}
	}
	if best < len(n.rec.Spaces) {
		return best
	}
	return n.spaceIndex(nd)
}

// spaceIndex is the place of a node's space in the record.
func (n *network) spaceIndex(nd *node) int {
	for i, s := range n.rec.Spaces {
		if s.ID == nd.comp.Space.Or("") {
			return i
		}
	}
	return len(n.rec.Spaces)
}
