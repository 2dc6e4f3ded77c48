package diagram

import (
	"cmp"
	"slices"
)

// setRows gives every node and edge its rows, and returns the number of rows.
func (n *network) setRows() int {
	g := grid{}
	placed := map[*node]bool{}
	for _, t := range n.trees() {
		offset := n.fit(g, t, placed)
		for _, nd := range t.nodes {
			nd.row, nd.top, nd.bottom = nd.row+offset, nd.top+offset, nd.bottom+offset
			g.takeNode(nd)
			placed[nd] = true
		}
		for _, e := range t.edges {
			e.row, e.land = e.row+offset, e.land+offset
			g.takeRun(e)
			n.takeLead(g, e)
		}
	}
	n.landAll(g)
	rows := 0
	for _, nd := range n.nodes {
		rows = max(rows, nd.bottom+1)
	}
	for _, e := range n.edges {
		rows = max(rows, e.row+1, e.land+1)
	}
	return rows
}

// takeLead marks where an edge from the back of a source passes below it.
func (n *network) takeLead(g grid, e *edge) {
	if e.behind {
		g[cell{inColumn(e.u.col), e.row}] = e
	}
}

// fit finds the row at which a tree goes: where all its cells are free, as near
// as can be to what its edges lead to.
func (n *network) fit(g grid, t *tree, placed map[*node]bool) int {
	last := 0
	for c := range g {
		last = max(last, c.row+1)
	}
	best, bestCost := last, -1
	for offset := 0; offset <= last; offset++ {
		if !fits(g, t, offset) {
			continue
		}
		cost := offset // upwards, all else being equal
		for _, e := range t.edges {
			if !e.primary && placed[e.v] {
				cost += 4 * away(e.row+offset, e.v, g)
			}
		}
		if bestCost < 0 || cost < bestCost {
			best, bestCost = offset, cost
		}
	}
	return best
}

// away is how far a row is from the rows of a node where something could land.
func away(row int, nd *node, g grid) int {
	if row >= nd.top && row <= nd.bottom {
		if g.free(cell{inColumn(nd.col) - 1, row}, nil) {
			return 0
		}
		return 1
	}
	return 1 + max(nd.top-row, row-nd.bottom)
}

// fits tells whether a tree finds its cells free at an offset.
func fits(g grid, t *tree, offset int) bool {
	for _, nd := range t.nodes {
		for r := nd.top; r <= nd.bottom; r++ {
			if !g.free(cell{inColumn(nd.col), r + offset}, nil) {
				return false
			}
		}
	}
	for _, e := range t.edges {
		from := behind(e.u.col)
		if e.behind {
			from = inColumn(e.u.col)
		}
		for l := from; l < inColumn(e.v.col); l++ {
			if !g.free(cell{l, e.row + offset}, nil) {
				return false
			}
		}
	}
	return true
}

// landAll finds where the edges that no node was placed along reach theirs.
func (n *network) landAll(g grid) {
	var open []*edge
	for _, e := range n.edges {
		if !e.primary {
			open = append(open, e)
		}
	}
	slices.SortStableFunc(open, func(a, b *edge) int {
		return cmp.Or(cmp.Compare(a.v.col, b.v.col), cmp.Compare(n.distance(a), n.distance(b)), cmp.Compare(a.index, b.index))
	})
	for _, e := range open {
		row, found := landing(g, e)
		if !found {
			row = e.v.bottom + 1
			g = n.insertRow(g, row)
		}
		e.land = row
		e.v.top, e.v.bottom = min(e.v.top, row), max(e.v.bottom, row)
		g.takeNode(e.v)
		g[cell{inColumn(e.v.col) - 1, row}] = e
	}
}

// distance is how far the run of an edge is from its node.
func (n *network) distance(e *edge) int {
	return max(e.v.top-e.row, e.row-e.v.bottom, 0)
}

// landing finds a row of a node where an edge can land: straight on, on a row
// that the node has, or on one that it can grow to.
func landing(g grid, e *edge) (row int, found bool) {
	v := e.v
	if canGrow(g, v, e.row) && g.free(cell{inColumn(v.col) - 1, e.row}, e) {
		return e.row, true
	}
	best := -1
	for r := v.top - 1; r <= v.bottom+1; r++ {
		if r < 0 || !canGrow(g, v, r) || !g.free(cell{inColumn(v.col) - 1, r}, e) {
			continue
		}
		if best < 0 || abs(r-e.row) < abs(best-e.row) {
			best = r
		}
	}
	return best, best >= 0
}

// canGrow tells whether a node can reach a row in its column.
func canGrow(g grid, nd *node, row int) bool {
	for r := min(row, nd.top); r <= max(row, nd.bottom); r++ {
		if !g.free(cell{inColumn(nd.col), r}, nd) {
			return false
		}
	}
	return true
}

// insertRow makes room before a row.
func (n *network) insertRow(g grid, row int) grid {
	down := func(r *int) {
		if *r >= row {
			*r++
		}
	}
	for _, nd := range n.nodes {
		down(&nd.row)
		down(&nd.top)
		down(&nd.bottom)
	}
	for _, e := range n.edges {
		down(&e.row)
		down(&e.land)
	}
	g = g.insert(row)
	for _, nd := range n.nodes { // what spans the new row
		g.takeNode(nd)
	}
	return g
}

func abs(a int) int { return max(a, -a) }
