package circuit

import "slices"

// order returns a minimum-degree elimination order: the place of each row.
// Degrees are exact; ties go to the lower row, so that the order is
// deterministic.
func order(n int, entries []entry) []int {
	near := roomFor(n, entries)
	degree := make([]int, n)
	join := func(a, b int) {
		if a == b {
			return
		}
		if len(near[a]) > len(near[b]) {
			a, b = b, a
		}
		if slices.Contains(near[a], int32(b)) {
			return
		}
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

// roomFor returns empty lists of neighbours with room for those that entries make.
func roomFor(n int, entries []entry) [][]int32 {
	count := make([]int, n)
	sum := 0
	for _, e := range entries {
		if e.row != e.col {
			count[e.row]++
			count[e.col]++
			sum += 2
		}
	}
	near, all := make([][]int32, n), make([]int32, sum)
	for row, c := range count {
		near[row], all = all[:0:c], all[c:]
	}
	return near
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
