package circuit

import "math"

// ringFlow is the greatest flow to one node of a block with rings. What is joined
// without a device is one place.
type ringFlow struct {
	limits *limits
	block  int
	place  map[int]int // by node
	edges  []valve     // devices between places
	inlets []inlet     // what comes in from outside the block
	at     [][]int     // by place: edges
	goal   int
}

// valve is a device between two places; flow is from a to b.
type valve struct {
	branch, a, b int
	width, flow  float64
}

// inlet is a node at which current comes into a block.
type inlet struct {
	node, place int
	width, flow float64
}

// ring prepares the flow to a node of a block, all its branches but one in use.
func (l *limits) ring(block, node, without int) *ringFlow {
	r := &ringFlow{limits: l, block: block, place: map[int]int{}}
	branches := l.forest.blocks[block]
	var parent []int
	find := func(p int) int {
		for parent[p] != p {
			parent[p] = parent[parent[p]]
			p = parent[p]
		}
		return p
	}
	place := func(node int) int {
		p, ok := r.place[node]
		if !ok {
			p = len(parent)
			r.place[node], parent = p, append(parent, p)
		}
		return p
	}
	for _, i := range branches {
		b := &l.net.branches[i]
		pa, pb := place(b.a), place(b.b)
		if i != without && b.kind != device {
			parent[find(pa)] = find(pb)
		}
	}
	for n, p := range r.place {
		r.place[n] = find(p)
	}
	r.at, r.goal = make([][]int, len(parent)), r.place[node]
	for _, i := range branches {
		b := &l.net.branches[i]
		e := valve{branch: i, a: r.place[b.a], b: r.place[b.b], width: l.width(i)}
		if b.kind != device || e.a == e.b || i == without {
			continue
		}
		r.at[e.a], r.at[e.b] = append(r.at[e.a], len(r.edges)), append(r.at[e.b], len(r.edges))
		r.edges = append(r.edges, e)
	}
	r.addInlets(node)
	return r
}

func (r *ringFlow) addInlets(goal int) {
	f := r.limits.forest
	for _, node := range append([]int{f.top[r.block]}, f.members[r.block]...) {
		if v := r.limits.at(node, r.block); node != goal && v > 0 {
			r.inlets = append(r.inlets, inlet{node: node, place: r.place[node], width: v})
		}
	}
}

// run returns the flow: as long as there is a way with room left, it is filled,
// shortest ways first (Edmonds and Karp, 1972).
func (r *ringFlow) run() float64 {
	total := 0.0
	for {
		from, over := r.search()
		if over[r.goal] == unreached {
			return total
		}
		room := math.Inf(1)
		r.walk(from, over, func(e *valve, sign float64) { room = min(room, e.width-sign*e.flow) }, func(in *inlet) { room = min(room, in.width-in.flow) })
		if math.IsInf(room, 1) {
			return room
		}
		r.walk(from, over, func(e *valve, sign float64) { e.flow += sign * room }, func(in *inlet) { in.flow += room })
		total += room
	}
}

const unreached = -2

// search returns by place how it is reached from the inlets over what has room:
// from which place, and over which edge; an inlet counts as edge −3, −4, …
func (r *ringFlow) search() (from, over []int) {
	from, over = make([]int, len(r.at)), make([]int, len(r.at))
	for p := range over {
		from[p], over[p] = -1, unreached
	}
	var queue []int
	for k, in := range r.inlets {
		if over[in.place] == unreached && in.flow < in.width {
			over[in.place] = unreached - 1 - k
			queue = append(queue, in.place)
		}
	}
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		for _, k := range r.at[p] {
			e := &r.edges[k]
			next, sign := e.b, 1.0
			if p == e.b {
				next, sign = e.a, -1
			}
			if over[next] == unreached && sign*e.flow < e.width {
				from[next], over[next] = p, k
				queue = append(queue, next)
			}
		}
	}
	return from, over
}

// walk visits the way found by a search, from the goal back to its inlet.
func (r *ringFlow) walk(from, over []int, edge func(*valve, float64), in func(*inlet)) {
	p := r.goal
	for over[p] >= 0 {
		e := &r.edges[over[p]]
		sign := 1.0
		if e.a == p {
			sign = -1
		}
		edge(e, sign)
		p = from[p]
	}
	in(&r.inlets[unreached-1-over[p]])
}

// cut adds the devices that limit the flow, those nearest the inlets.
func (r *ringFlow) cut(found map[int]bool) {
	if math.IsInf(r.run(), 1) {
		return
	}
	_, over := r.search()
	for _, e := range r.edges {
		if (over[e.a] == unreached) != (over[e.b] == unreached) {
			found[e.branch] = true
		}
	}
	for _, in := range r.inlets {
		if over[in.place] == unreached {
			r.limits.cutAt(found, in.node, r.block)
		}
	}
}
