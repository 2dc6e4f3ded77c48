package diagram

// lane is a column or the gap right of one: column c is lane 2c, the gap behind
// it lane 2c+1.
type lane int

func inColumn(c int) lane { return lane(2 * c) }
func behind(c int) lane   { return lane(2*c + 1) }

// cell is one row of a lane.
type cell struct {
	lane lane
	row  int
}

// grid tells what each cell is taken by: a *node or an *edge.
type grid map[cell]any

// free tells whether nothing else stands in the cell.
func (g grid) free(c cell, by any) bool {
	owner, taken := g[c]
	return !taken || owner == by
}

// takeRun marks what an edge runs through on its row.
func (g grid) takeRun(e *edge) {
	for l := behind(e.u.col); l < inColumn(e.v.col); l++ {
		g[cell{l, e.row}] = e
	}
}

// takeNode marks the rows of a node.
func (g grid) takeNode(nd *node) {
	for r := nd.top; r <= nd.bottom; r++ {
		g[cell{inColumn(nd.col), r}] = nd
	}
}

// insert adds an empty row before a row, and moves what stands below.
func (g grid) insert(row int) grid {
	out := grid{}
	for c, owner := range g {
		if c.row >= row {
			c.row++
		}
		out[c] = owner
	}
	return out
}
