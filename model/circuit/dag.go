package circuit

import "slices"

// dag is the branches of a current, each in the direction that it flows. A
// current runs from high to low potential, so that it never goes in a circle.
type dag struct {
	edges []edge
	in    map[int][]int // by node: edges that come in
	out   map[int][]int
	order []int // edges, each after all that feed it, once arranged
}

type edge struct {
	branch, from, to int
	amps             float64
}

// bank returns a source with those in series with it and the links between, from
// the lowest to the uppermost.
func (d *dag) bank(n *network, k int, out, back map[int]bool) []edge {
	walk := func(from int, next func(edge) []int) (chain []edge) {
		seen := map[int]bool{from: true}
		var links []edge
		for at := from; ; {
			on := -1
			for _, k := range next(d.edges[at]) {
				if !out[k] && !back[k] && !seen[k] {
					on = k
					break
				}
			}
			if on < 0 {
				return chain
			}
			seen[on] = true
			links = append(links, d.edges[on])
			if n.branches[d.edges[on].branch].kind == source {
				chain, links = append(chain, links...), nil
			}
			at = on
		}
	}
	below := walk(k, func(e edge) []int { return d.in[e.from] })
	slices.Reverse(below)
	above := walk(k, func(e edge) []int { return d.out[e.to] })
	return slices.Concat(below, []edge{d.edges[k]}, above)
}

func newDag(edges []edge) *dag {
	d := &dag{edges: edges, in: make(map[int][]int, len(edges)), out: make(map[int][]int, len(edges))}
	for k, e := range d.edges {
		d.out[e.from] = append(d.out[e.from], k)
		d.in[e.to] = append(d.in[e.to], k)
	}
	return d
}

func (d *dag) every() map[int]bool {
	all := make(map[int]bool, len(d.edges))
	for k := range d.edges {
		all[k] = true
	}
	return all
}

// stretch returns some of the edges as one fork.
func (d *dag) stretch(found map[int]bool) stretch {
	branches := d.sort(found)
	return stretch{branches, []fork{{0, len(branches), d}}}
}

// reach gathers the edges between a node and the sources.
func (d *dag) reach(n *network, start int, next map[int][]int, far func(edge) int) (found map[int]bool, sources []int) {
	found = map[int]bool{}
	seen := map[int]bool{start: true}
	queue := []int{start}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, k := range next[node] {
			e := d.edges[k]
			if n.branches[e.branch].kind == source {
				sources = append(sources, k)
				continue
			}
			found[k] = true
			if to := far(e); !seen[to] {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return found, sources
}

// sort returns the branches of edges in the order of the current: each after all
// that feed it, the largest first where several are ready, then in the order of
// the record.
func (d *dag) sort(found map[int]bool) []int {
	ordered := d.inFlow(found)
	branches := make([]int, len(ordered))
	for i, k := range ordered {
		branches[i] = d.edges[k].branch
	}
	return branches
}

// arrange notes the order of all edges.
func (d *dag) arrange() { d.order = d.inFlow(d.every()) }

func (d *dag) inFlow(found map[int]bool) []int {
	waiting := map[int]int{} // by node: edges still to come in
	for k := range found {
		waiting[d.edges[k].to]++
	}
	var ready []int
	for k := range found {
		if waiting[d.edges[k].from] == 0 {
			ready = append(ready, k)
		}
	}
	slices.Sort(ready)
	var ordered []int
	for len(ready) > 0 {
		at := 0
		for j, k := range ready {
			if d.before(k, ready[at]) {
				at = j
			}
		}
		k := ready[at]
		ready = slices.Delete(ready, at, at+1)
		ordered = append(ordered, k)
		to := d.edges[k].to
		if waiting[to]--; waiting[to] == 0 {
			for _, next := range d.out[to] {
				if found[next] {
					ready = append(ready, next)
				}
			}
		}
	}
	return ordered
}

func (d *dag) before(j, k int) bool {
	a, b := d.edges[j], d.edges[k]
	if !alike(a.amps, b.amps) {
		return a.amps > b.amps
	}
	return a.branch < b.branch
}

// worstWay returns the greatest sum of a weight along a way through branches
// that are in the order of their current, and the branches of that way.
func (d *dag) worstWay(ordered []int, weight func(branch int) float64) (sum float64, way []int) {
	byBranch := make(map[int]edge, len(d.edges))
	for _, e := range d.edges {
		byBranch[e.branch] = e
	}
	at := map[int]trail{}
	var end trail
	for _, i := range ordered {
		e := byBranch[i]
		before, ok := at[e.from]
		next := trail{sum: before.sum + weight(i), branch: i}
		if ok {
			next.before = &before
		}
		if old, known := at[e.to]; !known || next.sum > old.sum {
			at[e.to] = next
		}
		if next.sum >= end.sum {
			end = next
		}
	}
	for t := &end; t != nil && len(ordered) > 0; t = t.before {
		way = append(way, t.branch)
	}
	slices.Reverse(way)
	return end.sum, way
}

// trail is a way so far, last branch first.
type trail struct {
	sum    float64
	branch int
	before *trail
}
