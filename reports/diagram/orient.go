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

// orient gives each node its level and column, and turns each edge so that it
// runs to the right.
func (n *network) orient() {
	n.setLevels()
	for _, e := range n.edges {
		if before(e.v, e.u) {
			e.turn()
		}
	}
	n.attach()
	n.command()
	n.straighten()
	n.setColumns()
}

// before is the order of nodes from left to right.
func before(a, b *node) bool {
	return cmp.Or(cmp.Compare(a.level, b.level), cmp.Compare(a.index, b.index)) < 0
}

// attach lists the edges at the nodes.
func (n *network) attach() {
	for _, nd := range n.nodes {
		nd.in, nd.out = nil, nil
	}
	for _, e := range n.edges {
		e.u.out = append(e.u.out, e)
		e.v.in = append(e.v.in, e)
	}
}

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

// command turns control conductors so that they lead to the relay or controller
// that they work, where no loop comes of it.
func (n *network) command() {
	for _, e := range n.edges {
		if n.side(e) == control && isWorked(e.u) && !isWorked(e.v) && !e.v.kind.Load && fedElse(e.v, e.u) && !reaches(e.u, e.v, pair(e)) {
			for _, o := range pair(e) {
				o.turn()
			}
			n.attach()
		}
	}
}

// fedElse tells whether something but one node leads to another.
func fedElse(nd, but *node) bool {
	return slices.ContainsFunc(nd.in, func(e *edge) bool { return e.u != but })
}

// isWorked tells whether a node is switched by command.
func isWorked(nd *node) bool { return nd.kind.Name == "relay" || nd.kind.Name == "controller" }

// straighten turns edges at devices that have both terminals on one side, so
// that the current runs through them from left to right, where no loop comes of
// it.
func (n *network) straighten() {
	for _, nd := range n.nodes {
		if nd.kind.OneNode || nd.kind.Load || nd.kind.Source || nd.level >= returnLevel {
			continue
		}
		if len(nd.out) == 0 && len(nd.inTerminals()) == 2 {
			last := nd.in[len(nd.in)-1].vTerm
			for _, e := range slices.Clone(nd.in) {
				if e.vTerm == last && !e.u.kind.Source && !reaches(e.u, nd, []*edge{e}) {
					e.turn()
				}
			}
			n.attach()
		}
	}
}

// pair is an edge with those beside it between the same nodes.
func pair(e *edge) []*edge {
	var all []*edge
	for _, o := range e.u.out {
		if o.v == e.v {
			all = append(all, o)
		}
	}
	return all
}

// reaches tells whether a node leads to another by edges but those left out.
func reaches(from, to *node, without []*edge) bool {
	seen := map[*node]bool{}
	var walk func(nd *node) bool
	walk = func(nd *node) bool {
		if nd == to {
			return true
		}
		if seen[nd] {
			return false
		}
		seen[nd] = true
		for _, e := range nd.out {
			if !slices.Contains(without, e) && walk(e.v) {
				return true
			}
		}
		return false
	}
	return walk(from)
}

// setColumns puts each node one column right of the furthest that leads to it;
// loads stand in one column, the return side right of it.
func (n *network) setColumns() {
	done := map[*node]bool{}
	var place func(nd *node, least int)
	place = func(nd *node, least int) {
		if done[nd] {
			return
		}
		done[nd] = true
		nd.col = least
		for _, e := range nd.in {
			place(e.u, least)
			nd.col = max(nd.col, e.u.col+1)
		}
	}
	last := 0
	for _, nd := range n.nodes {
		if nd.level < returnLevel {
			place(nd, 0)
			last = max(last, nd.col)
		}
	}
	for _, nd := range n.nodes {
		if nd.level == loadLevel && !slices.ContainsFunc(nd.out, func(e *edge) bool { return e.v.level < returnLevel }) {
			nd.col = last
		}
	}
	for _, nd := range n.nodes {
		if nd.level >= returnLevel {
			place(nd, last+1)
		}
	}
}
