package circuit

import (
	"cmp"
	"math"
	"slices"
)

// flow is the current of one load on its way out from the sources and back, in
// the order that it takes.
type flow struct {
	out, back []int // branches, from the source on; where ways divide, largest current first
	source    int   // source that gives most, -1 if none
}

// passes tells whether the current takes a branch.
func (f flow) passes(i int) bool { return slices.Contains(f.out, i) || slices.Contains(f.back, i) }

// follow returns the way of a load's current in a solution. Currents of a
// network without pumps run from high to low potential, so that they never go
// in a circle between two sources.
func follow(n *network, s *solution, load int) flow {
	b := &n.branches[load]
	supply, ret := b.a, b.b
	if s.amps[load] < 0 {
		supply, ret = ret, supply
	}
	limit := math.Abs(s.amps[load]) * 1e-9
	f := flow{source: -1}
	up, sources := collect(n, s, supply, load, limit, true)
	down, more := collect(n, s, ret, load, limit, false)
	f.out, f.back = up, down
	best := 0.0
	for _, src := range append(sources, more...) {
		if amps := math.Abs(s.amps[src]); amps > best*(1+same) {
			best, f.source = amps, src
		}
	}
	return f
}

// collect gathers the branches whose current reaches a node (upstream) or leaves
// it (downstream), up to the sources, in the order of the current.
func collect(n *network, s *solution, start, load int, limit float64, upstream bool) (ordered, sources []int) {
	// enters tells whether a branch brings current to a node, seen the way of
	// the search: upstream against the current.
	enters := func(i, node int) bool {
		b := &n.branches[i]
		if b.a == b.b || math.Abs(s.amps[i]) <= limit {
			return false
		}
		into := (s.amps[i] > 0) == (b.b == node)
		return into == upstream
	}
	found := map[int]bool{}
	inside := map[int]bool{start: true}
	queue := []int{start}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, i := range n.at[node] {
			b := &n.branches[i]
			if i == load || found[i] || isDraw(b) || !enters(i, node) {
				continue
			}
			found[i] = true
			if b.kind == source {
				sources = append(sources, i)
				continue
			}
			if next := b.other(node); !inside[next] {
				inside[next] = true
				queue = append(queue, next)
			}
		}
	}
	return sortFlow(n, s, found, inside), sources
}

// sortFlow puts branches in the order of their current: each after all that
// feed it, the largest first where several are ready.
func sortFlow(n *network, s *solution, found, inside map[int]bool) []int {
	waiting := map[int]int{} // by node: branches that still have to come in
	tail := func(i int) (from, to int) {
		if b := &n.branches[i]; s.amps[i] > 0 {
			return b.a, b.b
		}
		return n.branches[i].b, n.branches[i].a
	}
	leaving := map[int][]int{}
	for _, i := range sortedKeys(found) {
		if n.branches[i].kind == source {
			continue
		}
		from, to := tail(i)
		waiting[to]++
		leaving[from] = append(leaving[from], i)
	}
	var ready []int
	for _, node := range sortedKeys(inside) {
		if waiting[node] == 0 {
			ready = append(ready, leaving[node]...)
		}
	}
	var ordered []int
	for len(ready) > 0 {
		k := 0
		for j := range ready {
			if c := cmp.Compare(math.Abs(s.amps[ready[j]]), math.Abs(s.amps[ready[k]])*(1+same)); c > 0 {
				k = j
			}
		}
		i := ready[k]
		ready = slices.Delete(ready, k, k+1)
		ordered = append(ordered, i)
		_, to := tail(i)
		if waiting[to]--; waiting[to] == 0 {
			ready = append(ready, leaving[to]...)
		}
	}
	return ordered
}

func sortedKeys(m map[int]bool) []int {
	keys := make([]int, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
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

// parts returns the ids of devices or of switches among branches, each once.
func (n *network) parts(branches []int, fits func(*branch) bool) []string {
	var ids []string
	for _, i := range branches {
		if b := &n.branches[i]; b.comp != nil && fits(b) && !slices.Contains(ids, b.id) {
			ids = append(ids, b.id)
		}
	}
	return ids
}

// worstWay returns the greatest sum of a weight along a way through branches
// that are in the order of their current, and the branches of that way.
func worstWay(n *network, s *solution, ordered []int, weight func(i int) float64) (sum float64, way []int) {
	type best struct {
		sum float64
		way *link
	}
	at := map[int]best{}
	end := best{}
	for _, i := range ordered {
		b := &n.branches[i]
		from, to := b.a, b.b
		if s.amps[i] < 0 {
			from, to = to, from
		}
		here := at[from]
		next := best{here.sum + weight(i), &link{i, here.way}}
		if old, ok := at[to]; !ok || next.sum > old.sum {
			at[to] = next
		}
		if next.sum >= end.sum {
			end = next
		}
	}
	for l := end.way; l != nil; l = l.before {
		way = append(way, l.branch)
	}
	slices.Reverse(way)
	return end.sum, way
}

type link struct {
	branch int
	before *link
}

// isDraw tells whether a branch draws current.
func isDraw(b *branch) bool { return b.kind == load || b.kind == coil }
