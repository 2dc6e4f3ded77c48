package circuit

// ldl is the factorisation P·A·Pᵀ = L·D·Lᵀ of a sparse symmetric positive
// definite matrix, P a minimum-degree order. Networks of conductors are nearly
// trees, so that L has hardly more entries than A and both steps cost about as
// much as reading it.
//
// Shapes: A is n×n; L unit lower triangular, kept by columns; d has n pivots.
type ldl struct {
	*pattern
	values []float64
	d      []float64
}

// pattern is where a matrix and its factor have entries, whatever their values.
type pattern struct {
	n      int
	place  []int // place of a row in the order
	slot   []int // by entry given: its element of the upper triangle of P·A·Pᵀ
	above  []int // first element of each column of that triangle
	inRow  []int // by element: its row
	parent []int // elimination tree, -1 at a root
	start  []int // first entry of each column of L
	rows   []int

	// What a factorisation or solution writes down on its way.
	elements, y, x     []float64
	path, mark, filled []int
}

// entry is one element of the upper or lower triangle of a symmetric matrix;
// entries of the same place add up.
type entry struct {
	row, col int
	value    float64
}

// pivotLimit is the share of a row's own diagonal below which a pivot counts as
// zero: all but a few of the 16 digits have cancelled.
const pivotLimit = 1e-13

// factorise returns the factorisation, or the row at which the matrix is not
// positive definite to working precision. place may come from order or from an
// earlier matrix of the same pattern.
func factorise(n int, entries []entry, place []int) (f *ldl, bad int) {
	return newPattern(n, entries, place).factorise(entries)
}

// newPattern finds where a matrix and its factor have entries.
func newPattern(n int, entries []entry, place []int) *pattern {
	p := &pattern{n: n, place: place, parent: make([]int, n), start: make([]int, n+1)}
	p.sort(entries)
	p.y, p.x = make([]float64, n), make([]float64, n)
	p.path, p.mark, p.filled = make([]int, n), make([]int, n), make([]int, n)
	for k := range n {
		p.parent[k], p.mark[k] = -1, k
		for at := p.above[k]; at < p.above[k+1]; at++ {
			for i := p.inRow[at]; i < k && p.mark[i] != k; i = p.parent[i] {
				if p.parent[i] < 0 {
					p.parent[i] = k
				}
				p.filled[i]++
				p.mark[i] = k
			}
		}
	}
	for k := range n {
		p.start[k+1] = p.start[k] + p.filled[k]
	}
	p.rows = make([]int, p.start[n])
	return p
}

// sort gives each entry its element in the columns of the upper triangle of
// P·A·Pᵀ.
func (p *pattern) sort(entries []entry) {
	p.above = make([]int, p.n+1)
	for _, e := range entries {
		p.above[max(p.place[e.row], p.place[e.col])+1]++
	}
	for k := range p.n {
		p.above[k+1] += p.above[k]
	}
	next := append([]int(nil), p.above[:p.n]...)
	p.slot, p.inRow, p.elements = make([]int, len(entries)), make([]int, len(entries)), make([]float64, len(entries))
	for j, e := range entries {
		i, k := p.place[e.row], p.place[e.col]
		if i > k {
			i, k = k, i
		}
		p.slot[j], p.inRow[next[k]] = next[k], i
		next[k]++
	}
}

// factorise returns the factorisation of a matrix of the pattern, or the row at
// which it is not positive definite.
func (p *pattern) factorise(entries []entry) (f *ldl, bad int) {
	for j, e := range entries {
		p.elements[p.slot[j]] = e.value
	}
	values := make([]float64, p.start[p.n]+p.n)
	f = &ldl{pattern: p, values: values[p.n:], d: values[:p.n]}
	y, path, mark, filled := p.y, p.path, p.mark, p.filled
	for k := range p.n {
		mark[k], filled[k], y[k] = -1, 0, 0
	}
	for k := range p.n {
		top := p.n
		mark[k] = k
		y[k] = 0
		for at := p.above[k]; at < p.above[k+1]; at++ {
			i := p.inRow[at]
			y[i] += p.elements[at]
			depth := 0
			for ; mark[i] != k; i = p.parent[i] {
				path[depth] = i
				depth++
				mark[i] = k
			}
			for depth > 0 {
				depth--
				top--
				path[top] = path[depth]
			}
		}
		diagonal := y[k]
		f.d[k] = diagonal
		y[k] = 0
		for ; top < p.n; top++ {
			i := path[top]
			yi := y[i]
			y[i] = 0
			end := p.start[i] + filled[i]
			for at := p.start[i]; at < end; at++ {
				y[p.rows[at]] -= f.values[at] * yi
			}
			l := yi / f.d[i]
			f.d[k] -= l * yi
			p.rows[end], f.values[end] = k, l
			filled[i]++
		}
		if !(f.d[k] > pivotLimit*diagonal) {
			return nil, unplace(p.place, k)
		}
	}
	return f, -1
}

func unplace(place []int, k int) int {
	for row, p := range place {
		if p == k {
			return row
		}
	}
	return 0
}

// solve returns x of A·x = b; b is left as it was.
func (f *ldl) solve(b []float64) []float64 {
	out := make([]float64, f.n)
	f.solveInto(out, b)
	return out
}

// solveInto writes x of A·x = b into out, which may be b.
func (f *ldl) solveInto(out, b []float64) {
	x := f.x
	for row, k := range f.place {
		x[k] = b[row]
	}
	for j := range f.n {
		if xj := x[j]; xj != 0 {
			for p := f.start[j]; p < f.start[j+1]; p++ {
				x[f.rows[p]] -= f.values[p] * xj
			}
		}
	}
	for j := f.n - 1; j >= 0; j-- {
		sum := x[j] / f.d[j]
		for p := f.start[j]; p < f.start[j+1]; p++ {
			sum -= f.values[p] * x[f.rows[p]]
		}
		x[j] = sum
	}
	for row, k := range f.place {
		out[row] = x[k]
	}
}
