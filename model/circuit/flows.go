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
