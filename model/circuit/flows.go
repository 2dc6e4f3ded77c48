package circuit

import (
	"math"
	"slices"
)

// flow is the way of one load's current from the sources and back, in the order
// that it takes.
type flow struct {
	out, back stretch
	source    int    // the source that gives most, of a bank the uppermost; -1 if none
	bank      []edge // that source with those in series below it and the links between
	edges     []edge // all of it, sources among them
}

// stretch is branches in the order of a current that takes them; where ways
// divide, the largest part first.
type stretch struct {
	branches []int
	forks    []fork
}

// fork is where a stretch divides and comes together again.
type fork struct {
	start, end int // of the branches
	dag        *dag
}

// all returns the branches of both ways.
func (f *flow) all() []int { return slices.Concat(f.out.branches, f.back.branches) }

// each calls a function with every branch of both ways.
func (f *flow) each(visit func(branch int)) {
	for _, i := range f.out.branches {
		visit(i)
	}
	for _, i := range f.back.branches {
		visit(i)
	}
}

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

// follow returns the way of a load's current, given what one ampere of it does.
// The current leaves the load at one end and comes in at the other.
func follow(n *network, l *lone) flow {
	b := &n.branches[l.load]
	leaves, comes, sign := b.b, b.a, 1.0
	if l.problem == nil && l.draws[0] < 0 || l.problem != nil && l.family.meshes[0].restOver(b) < 0 {
		leaves, comes, sign = b.a, b.b, -1
	}
	if !ringsWithSource(n, l.own, l.rings) {
		return straight(n, l.own, l.rings, sign)
	}
	d := newDag(directed(n, l.own, sign))
	f := flow{source: -1, edges: d.edges}
	back, sources := d.reach(n, leaves, d.out, func(e edge) int { return e.to })
	out, more := d.reach(n, comes, d.in, func(e edge) int { return e.from })
	f.out, f.back = d.stretch(out), d.stretch(back)
	best := 0.0
	most := -1
	for _, k := range append(sources, more...) {
		if e := d.edges[k]; most < 0 || e.amps > best*(1+same) || e.amps > best*(1-same) && e.branch < d.edges[most].branch {
			best, most = e.amps, k
		}
	}
	if most >= 0 {
		f.bank = d.bank(n, most, out, back)
		f.source = f.bank[len(f.bank)-1].branch
	}
	return f
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

// ringsWithSource tells whether a source stands in a part with rings, such as
// batteries in parallel.
func ringsWithSource(n *network, way []hop, rings []ring) bool {
	for _, r := range rings {
		for _, h := range way[r.start:r.end] {
			if n.branches[h.branch].kind == source {
				return true
			}
		}
	}
	return false
}

// straight returns the way of a current whose sources all stand in series: up to
// the first source back, from the last one out. Links between the batteries of a
// bank are neither.
func straight(n *network, way []hop, rings []ring, sign float64) flow {
	f := flow{source: -1, edges: directed(n, way, sign)}
	if sign < 0 {
		slices.Reverse(f.edges)
		turned := make([]ring, len(rings))
		for k, r := range rings {
			turned[len(rings)-1-k] = ring{r.crossing, len(way) - r.end, len(way) - r.start}
		}
		rings = turned
	}
	first, last := len(f.edges), -1
	for k, e := range f.edges {
		if n.branches[e.branch].kind != source {
			continue
		}
		first, last = min(first, k), k
		f.source = e.branch
	}
	if f.source < 0 {
		first = 0
	} else {
		f.bank = f.edges[first : last+1]
	}
	f.back = inOrder(f.edges, rings, 0, first)
	f.out = inOrder(f.edges, rings, last+1, len(f.edges))
	return f
}

// inOrder returns the edges from start to end as a stretch.
func inOrder(edges []edge, rings []ring, start, end int) stretch {
	s := stretch{branches: make([]int, 0, end-start)}
	for k := start; k < end; {
		r := slices.IndexFunc(rings, func(r ring) bool { return r.start == k })
		if r < 0 {
			s.branches = append(s.branches, edges[k].branch)
			k++
			continue
		}
		d := newDag(edges[rings[r].start:rings[r].end])
		at := len(s.branches)
		s.branches = append(s.branches, d.sort(d.every())...)
		s.forks = append(s.forks, fork{at, len(s.branches), d})
		k = rings[r].end
	}
	return s
}

// directed returns the branches of a way in the direction of its current, or
// against it if sign is negative.
func directed(n *network, way []hop, sign float64) []edge {
	edges := make([]edge, len(way))
	for k, h := range way {
		br := &n.branches[h.branch]
		edges[k] = edge{h.branch, br.a, br.b, math.Abs(h.amps)}
		if h.amps*sign < 0 {
			edges[k].from, edges[k].to = br.b, br.a
		}
	}
	return edges
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

// greatest returns the greatest sum of a weight along a way through a stretch.
func (s stretch) greatest(weight func(branch int) float64) (sum float64) {
	if len(s.forks) > 0 {
		sum, _ = s.worst(weight)
		return sum
	}
	for _, i := range s.branches {
		sum += weight(i)
	}
	return sum
}

// worst returns the greatest sum of a weight along a way through a stretch, and
// the branches of that way.
func (s stretch) worst(weight func(branch int) float64) (sum float64, way []int) {
	k := 0
	plain := func(end int) {
		for ; k < end; k++ {
			sum += weight(s.branches[k])
			way = append(way, s.branches[k])
		}
	}
	for _, f := range s.forks {
		plain(f.start)
		part, through := f.dag.worstWay(s.branches[f.start:f.end], weight)
		sum += part
		way = append(way, through...)
		k = f.end
	}
	plain(len(s.branches))
	return sum, way
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

// wireIDs returns the ids of the conductors among branches.
func (n *network) wireIDs(branches []int) []string {
	var ids []string
	for _, i := range branches {
		if n.branches[i].kind == wire {
			ids = append(ids, n.branches[i].id)
		}
	}
	return ids
}

// partIDs returns the ids of the components among branches that fit, each once.
func (n *network) partIDs(branches []int, fits func(*branch) bool) []string {
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
