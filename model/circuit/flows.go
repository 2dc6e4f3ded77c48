package circuit

import (
	"math"
	"slices"
)

// flow is the way of one load's current from the sources and back, in the order
// that it takes.
type flow struct {
	out, back []int // branches; where ways divide, largest current first
	source    int   // the source that gives most, -1 if none
	dag       *dag
}

// dag is the branches of a current, each in the direction that it flows. A
// current runs from high to low potential, so that it never goes in a circle.
type dag struct {
	edges []edge
	in    map[int][]int // by node: edges that come in
	out   map[int][]int
}

type edge struct {
	branch, from, to int
	amps             float64
}

// newDag puts the branches of a way in the direction of its current, or against
// it if sign is negative.
func newDag(n *network, way []hop, sign float64) *dag {
	d := &dag{in: map[int][]int{}, out: map[int][]int{}}
	for _, h := range way {
		br := &n.branches[h.branch]
		e := edge{h.branch, br.a, br.b, math.Abs(h.amps)}
		if h.amps*sign < 0 {
			e.from, e.to = e.to, e.from
		}
		k := len(d.edges)
		d.edges = append(d.edges, e)
		d.out[e.from] = append(d.out[e.from], k)
		d.in[e.to] = append(d.in[e.to], k)
	}
	return d
}

// follow returns the way of a load's current, given what one ampere of it does.
// The current leaves the load at one end and comes in at the other.
func follow(n *network, l *lone) flow {
	b := &n.branches[l.load]
	leaves, comes, sign := b.b, b.a, 1.0
	if l.problem == nil && l.draws[0] < 0 || l.problem != nil && l.family.meshes[0].restOver(b) < 0 {
		leaves, comes, sign = b.a, b.b, -1
	}
	d := newDag(n, l.own, sign)
	f := flow{source: -1, dag: d}
	back, sources := d.reach(n, leaves, d.out, func(e edge) int { return e.to })
	out, more := d.reach(n, comes, d.in, func(e edge) int { return e.from })
	f.out, f.back = d.sort(out), d.sort(back)
	best := 0.0
	for _, k := range append(sources, more...) {
		if e := d.edges[k]; e.amps > best*(1+same) || e.amps > best*(1-same) && e.branch < f.source {
			best, f.source = e.amps, e.branch
		}
	}
	return f
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
		e := d.edges[ready[at]]
		ready = slices.Delete(ready, at, at+1)
		ordered = append(ordered, e.branch)
		if waiting[e.to]--; waiting[e.to] == 0 {
			for _, k := range d.out[e.to] {
				if found[k] {
					ready = append(ready, k)
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

// wires returns the ids of the conductors among branches.
func (n *network) wires(branches []int) []string {
	var ids []string
	for _, i := range branches {
		if n.branches[i].kind == wire {
			ids = append(ids, n.branches[i].id)
		}
	}
	return ids
}

// parts returns the ids of the components among branches that fit, each once.
func (n *network) parts(branches []int, fits func(*branch) bool) []string {
	var ids []string
	for _, i := range branches {
		if b := &n.branches[i]; b.comp != nil && fits(b) && !slices.Contains(ids, b.id) {
			ids = append(ids, b.id)
		}
	}
	return ids
}

// isDraw tells whether a branch draws current.
func isDraw(b *branch) bool { return b.kind == load || b.kind == coil }
