package circuit

// ldl is the factorisation P·A·Pᵀ = L·D·Lᵀ of a sparse symmetric positive
// definite matrix, P a minimum-degree order. Networks of conductors are nearly
// trees, so that L has hardly more entries than A and both steps cost about as
// much as reading it.
//
// Shapes: A is n×n; L unit lower triangular, kept by columns; d has n pivots.
type ldl struct {
	n       int
	place   []int // place of a row in the order
	parent  []int // elimination tree, -1 at a root
	start   []int // first entry of each column of L
	rows    []int
	values  []float64
	d       []float64
	scratch []float64
}

// entry is one element of the upper or lower triangle of a symmetric matrix;
// entries of the same place add up.
type entry struct {
	row, col int
	value    float64
}

// order returns a minimum-degree elimination order: the place of each row.
// Degrees are exact; ties go to the lower row, so that the order is
// deterministic.
func order(n int, entries []entry) []int {
	near := make([][]int32, n)
	known := make(map[uint64]struct{}, len(entries))
	degree := make([]int, n)
	join := func(a, b int) {
		if a == b {
			return
		}
		if a > b {
			a, b = b, a
		}
		key := uint64(a)<<32 | uint64(b)
		if _, seen := known[key]; seen {
			return
		}
		known[key] = struct{}{}
		near[a] = append(near[a], int32(b))
		near[b] = append(near[b], int32(a))
		degree[a]++
		degree[b]++
	}
	for _, e := range entries {
		join(e.row, e.col)
	}
	queue := make(degreeQueue, n, n+n/2)
	for i := range queue {
		queue[i] = ranked{row: i, degree: degree[i]}
	}
	queue.init()

	place := make([]int, n)
	for i := range place {
		place[i] = -1
	}
	var around []int
	for k := 0; k < n; {
		top := queue.pop()
		if place[top.row] >= 0 || top.degree != degree[top.row] {
			continue // an older entry of a row that has changed
		}
		place[top.row] = k
		k++
		around = around[:0]
		for _, j := range near[top.row] {
			if place[j] < 0 {
				around = append(around, int(j))
				degree[j]--
			}
		}
		for i, a := range around {
			for _, b := range around[i+1:] {
				join(a, b)
			}
		}
		for _, j := range around {
			queue.push(ranked{row: j, degree: degree[j]})
		}
	}
	return place
}

type ranked struct{ row, degree int }

// degreeQueue is a heap of rows by degree.
type degreeQueue []ranked

func (q degreeQueue) less(i, j int) bool {
	if q[i].degree != q[j].degree {
		return q[i].degree < q[j].degree
	}
	return q[i].row < q[j].row
}

func (q degreeQueue) init() {
	for i := len(q)/2 - 1; i >= 0; i-- {
		q.down(i)
	}
}

func (q degreeQueue) down(i int) {
	for {
		least := i
		for j := 2*i + 1; j <= 2*i+2 && j < len(q); j++ {
			if q.less(j, least) {
				least = j
			}
		}
		if least == i {
			return
		}
		q[i], q[least] = q[least], q[i]
		i = least
	}
}

func (q *degreeQueue) push(r ranked) {
	*q = append(*q, r)
	for i := len(*q) - 1; i > 0; {
		up := (i - 1) / 2
		if !q.less(i, up) {
			return
		}
		(*q)[i], (*q)[up] = (*q)[up], (*q)[i]
		i = up
	}
}

func (q *degreeQueue) pop() ranked {
	old := *q
	top, last := old[0], len(old)-1
	old[0] = old[last]
	*q = old[:last]
	q.down(0)
	return top
}

// pivotLimit is the share of a row's own diagonal below which a pivot counts as
// zero: all but a few of the 16 digits have cancelled.
const pivotLimit = 1e-13

// factorise returns the factorisation, or the row at which the matrix is not
// positive definite to working precision. place may come from order or from an
// earlier matrix of the same pattern.
func factorise(n int, entries []entry, place []int) (f *ldl, bad int) {
	f = &ldl{n: n, place: place, parent: make([]int, n), d: make([]float64, n), scratch: make([]float64, n)}
	colStart, colRows, colValues := upper(n, entries, place)

	count := make([]int, n)
	mark := make([]int, n)
	for k := range n {
		f.parent[k], mark[k] = -1, k
		for p := colStart[k]; p < colStart[k+1]; p++ {
			for i := colRows[p]; i < k && mark[i] != k; i = f.parent[i] {
				if f.parent[i] < 0 {
					f.parent[i] = k
				}
				count[i]++
				mark[i] = k
			}
		}
	}
	f.start = make([]int, n+1)
	for k := range n {
		f.start[k+1] = f.start[k] + count[k]
		count[k] = 0
		mark[k] = -1
	}
	f.rows = make([]int, f.start[n])
	f.values = make([]float64, f.start[n])

	y := make([]float64, n)
	path := make([]int, n)
	for k := range n {
		top := n
		mark[k] = k
		y[k] = 0
		for p := colStart[k]; p < colStart[k+1]; p++ {
			i := colRows[p]
			y[i] += colValues[p]
			depth := 0
			for ; mark[i] != k; i = f.parent[i] {
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
		for ; top < n; top++ {
			i := path[top]
			yi := y[i]
			y[i] = 0
			end := f.start[i] + count[i]
			for p := f.start[i]; p < end; p++ {
				y[f.rows[p]] -= f.values[p] * yi
			}
			l := yi / f.d[i]
			f.d[k] -= l * yi
			f.rows[end], f.values[end] = k, l
			count[i]++
		}
		if !(f.d[k] > pivotLimit*diagonal) {
			return nil, unplace(place, k)
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

// upper sorts entries into the columns of the upper triangle of P·A·Pᵀ.
func upper(n int, entries []entry, place []int) (start, rows []int, values []float64) {
	start = make([]int, n+1)
	for _, e := range entries {
		start[max(place[e.row], place[e.col])+1]++
	}
	for k := range n {
		start[k+1] += start[k]
	}
	next := append([]int(nil), start[:n]...)
	rows, values = make([]int, len(entries)), make([]float64, len(entries))
	for _, e := range entries {
		i, k := place[e.row], place[e.col]
		if i > k {
			i, k = k, i
		}
		rows[next[k]], values[next[k]] = i, e.value
		next[k]++
	}
	return start, rows, values
}

// solve returns x of A·x = b; b is left as it was.
func (f *ldl) solve(b []float64) []float64 {
	x := f.scratch
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
	out := make([]float64, f.n)
	for row, k := range f.place {
		out[row] = x[k]
	}
	return out
}
