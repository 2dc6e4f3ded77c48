package diagram

import (
	"cmp"
	"slices"
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
