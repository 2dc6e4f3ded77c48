package diagram

import "slices"

// A tall ladder is folded: of the branches of one bus, some stand right of the
// others, each on a run that passes above what stands left of it.

// leastFolded is the number of rows from which a branch is worth a stack.
const leastFolded = 3

// fold puts the branches of the node where the network forks into stacks side
// by side, by moving them to the right.
func (n *network) fold(stacks int) {
	n.setPrimary()
	split := n.forks()
	if stacks < 2 || split == nil {
		return
	}
	var large []group
	for _, g := range n.groups(split) {
		if n.isAlone(g, split) && n.height(g) >= leastFolded {
			large = append(large, g)
		}
	}
	by := (len(large) + stacks - 1) / stacks
	if by == 0 || len(large) < stacks {
		return
	}
	last := 0
	for _, nd := range n.nodes {
		last = max(last, nd.col)
	}
	n.stack = map[*node]int{}
	for i, g := range large {
		s := i / by
		n.stack[g.to] = s
		for _, nd := range n.below(branching(g.to)) {
			nd.col += s * (last - split.col)
		}
	}
}

// forks finds the node with the most branches that are worth a stack.
func (n *network) forks() *node {
	var best *node
	most := 1
	for _, nd := range n.nodes {
		branches := 0
		for _, g := range n.groups(nd) {
			if n.isAlone(g, nd) && n.height(g) >= leastFolded {
				branches++
			}
		}
		if branches > most {
			best, most = nd, branches
		}
	}
	return best
}

// branching is the first node from one on, along its only way, that forks.
func branching(nd *node) *node {
	for len(nd.out) == 1 {
		nd = nd.out[0].v
	}
	return nd
}

// below lists a node and what is placed along edges from it.
func (n *network) below(nd *node) []*node {
	all := []*node{nd}
	for i := 0; i < len(all); i++ {
		for _, e := range all[i].out {
			if e.primary && !slices.Contains(all, e.v) {
				all = append(all, e.v)
			}
		}
	}
	return all
}

// height is the number of rows that a group takes, about.
func (n *network) height(g group) int {
	if !g.edges[0].primary {
		return len(g.edges)
	}
	rows := 0
	for _, nd := range n.below(g.to) {
		if len(nd.out) == 0 {
			rows++
		}
	}
	return max(rows, len(g.edges))
}

// isAlone tells whether no conductor but those of the group leads to or from
// what stands below it.
func (n *network) isAlone(g group, from *node) bool {
	if !g.edges[0].primary {
		return false
	}
	below := n.below(g.to)
	for _, nd := range below {
		for _, e := range nd.in {
			if e.u != from && !slices.Contains(below, e.u) {
				return false
			}
		}
		for _, e := range nd.out {
			if !slices.Contains(below, e.v) {
				return false
			}
		}
	}
	return true
}

// tiles lists the groups of a node by what shares rows: each alone, or one of
// each stack, that of the rightmost first.
func (n *network) tiles(nd *node) [][]group {
	var stacks [][]group
	var all [][]group
	for _, g := range n.groups(nd) {
		s, folded := n.stack[g.to]
		if !folded || !g.edges[0].primary {
			all = append(all, []group{g})
			continue
		}
		for len(stacks) <= s {
			stacks = append(stacks, nil)
		}
		stacks[s] = append(stacks[s], g)
	}
	for i := 0; len(stacks) > 0 && i < len(stacks[0]); i++ {
		var tile []group
		for s := len(stacks) - 1; s >= 0; s-- {
			if i < len(stacks[s]) {
				tile = append(tile, stacks[s][i])
			}
		}
		all = append(all, tile)
	}
	return all
}
