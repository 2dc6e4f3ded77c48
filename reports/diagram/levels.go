package diagram

import (
	"cmp"
	"slices"

	"driploop/model/record"
)

// Levels order the nodes from left to right: sources, what they feed by the
// number of conductors between, loads, and the return side.
const (
	loadLevel   = 1 << 20
	returnLevel = 1 << 21
	groundLevel = 1 << 22
)

// setLevels finds the level of each node: by conductors that feed, then, for
// what only the return side reaches, by that.
func (n *network) setLevels() {
	feeding := n.neighbours(
		func(e *edge) bool { return n.side(e) <= control },
		func(nd *node, terminal string) bool { return !isCommand(nd, terminal) })
	back := n.neighbours(
		func(e *edge) bool { return n.side(e) > control },
		func(*node, string) bool { return true })
	for _, nd := range n.nodes {
		nd.level = -1
	}
	n.spread(feeding, 0, func(nd *node) bool { return nd.kind.Source })
	for _, nd := range n.nodes { // parts without a source
		if nd.level < 0 && len(feeding[nd]) > 0 {
			root := n.rootOf(nd, feeding)
			n.spread(feeding, 0, func(x *node) bool { return x == root })
		}
	}
	n.levelLoads(feeding)
	n.levelReturns(back)
}

// neighbours lists the nodes that edges of a kind lead to from each, as far as
// anything comes out of its terminal.
func (n *network) neighbours(fits func(*edge) bool, comesOut func(*node, string) bool) map[*node][]*node {
	next := map[*node][]*node{}
	for _, e := range n.edges {
		if !fits(e) {
			continue
		}
		if comesOut(e.u, e.uTerm) {
			next[e.u] = append(next[e.u], e.v)
		}
		if comesOut(e.v, e.vTerm) {
			next[e.v] = append(next[e.v], e.u)
		}
	}
	return next
}

// isCommand tells whether a terminal only takes a command: that of a coil which
// no contact shares.
func isCommand(nd *node, terminal string) bool {
	on := func(between []string) bool { return slices.Contains(between, terminal) }
	return slices.ContainsFunc(nd.comp.Coils, func(c *record.Coil) bool { return on(c.Between) }) &&
		!slices.ContainsFunc(nd.comp.Links, func(l *record.Link) bool { return on(l.Between) })
}

// spread gives the starting nodes a level, and all that they reach and that has
// none yet, one more by each step.
func (n *network) spread(next map[*node][]*node, level int, starts func(*node) bool) {
	var front []*node
	for _, nd := range n.nodes {
		if nd.level < 0 && starts(nd) {
			nd.level = level
			front = append(front, nd)
		}
	}
	for len(front) > 0 {
		nd := front[0]
		front = front[1:]
		for _, to := range next[nd] {
			if to.level < 0 {
				to.level = nd.level + 1
				front = append(front, to)
			}
		}
	}
}

// rootOf chooses where to begin in a part without a source: at what is no load,
// if there is any.
func (n *network) rootOf(start *node, next map[*node][]*node) *node {
	seen := map[*node]bool{start: true}
	part := []*node{start}
	for i := 0; i < len(part); i++ {
		for _, to := range next[part[i]] {
			if !seen[to] {
				seen[to] = true
				part = append(part, to)
			}
		}
	}
	return slices.MinFunc(part, func(a, b *node) int {
		return cmp.Or(cmp.Compare(rootRank(a), rootRank(b)), cmp.Compare(a.index, b.index))
	})
}

func rootRank(nd *node) int {
	switch {
	case nd.kind.OneNode:
		return 0
	case nd.kind.Load:
		return 2
	}
	return 1
}

// levelLoads moves the loads that feed nothing to the level of loads.
func (n *network) levelLoads(next map[*node][]*node) {
	var ends []*node
	for _, nd := range n.nodes {
		if !nd.kind.Load || nd.level <= 0 {
			continue
		}
		if !slices.ContainsFunc(next[nd], func(to *node) bool { return to.level > nd.level }) {
			ends = append(ends, nd)
		}
	}
	for _, nd := range ends {
		nd.level = loadLevel
	}
}

// levelReturns orders the return side: from what the loads land on to what is
// nearest to the sources, then points of ground.
func (n *network) levelReturns(next map[*node][]*node) {
	distance := map[*node]int{}
	var front []*node
	for _, nd := range n.nodes {
		if nd.kind.Source {
			distance[nd] = 0
			front = append(front, nd)
		}
	}
	for len(front) > 0 {
		nd := front[0]
		front = front[1:]
		for _, to := range next[nd] {
			if _, seen := distance[to]; !seen {
				distance[to] = distance[nd] + 1
				if to.level < 0 || to.level >= returnLevel { // a way back leads through no load
					front = append(front, to)
				}
			}
		}
	}
	for _, nd := range n.nodes {
		switch d, reached := distance[nd]; {
		case nd.level >= 0:
		case nd.kind.Name == "ground":
			nd.level = groundLevel
		case nd.kind.Load:
			nd.level = loadLevel
		case reached:
			nd.level = groundLevel - 1 - d
		default:
			nd.level = returnLevel
		}
	}
}
