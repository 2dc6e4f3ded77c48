package circuit

import (
	"math"
	"slices"
)

// limits is how much the ratings of devices let flow towards each place for long,
// in one state of the switches: of devices in series the least rating, of those
// side by side the sum. That is the greatest flow through a network whose devices
// hold their ratings, the same as the least sum of ratings that cuts a place off
// from every source (max-flow min-cut theorem, Ford and Fulkerson, 1956).
//
// Flows are found block by block: up to the root of each tree, then down again, so
// that only rings need a search.
type limits struct {
	net     *network
	forest  *forest
	block   []int     // by branch, -1 for none
	endless []bool    // by node: a source stands there
	unrated float64   // what a device without a rating counts as
	below   []float64 // by node: what comes from its own sources and the blocks under it
	down    []float64 // by node: what the block above brings
	beside  []float64 // by block: what comes to its top from elsewhere
}

// newLimits finds the limits over branches that conduct; sources are the nodes at
// which current comes in.
func newLimits(n *network, f *forest, sources []int, unrated float64) *limits {
	l := &limits{
		net: n, forest: f, unrated: unrated, block: make([]int, len(n.branches)), endless: make([]bool, len(n.nodes)),
		below: make([]float64, len(n.nodes)), down: make([]float64, len(n.nodes)), beside: make([]float64, len(f.blocks)),
	}
	for i := range l.block {
		l.block[i] = -1
	}
	for k, branches := range f.blocks {
		for _, i := range branches {
			l.block[i] = k
		}
	}
	for _, node := range sources {
		l.endless[node], l.below[node] = true, math.Inf(1)
	}
	if f.under == nil {
		f.findUnder()
	}
	for k := range f.blocks { // what hangs below a block stands before it
		l.below[f.top[k]] += l.into(k, f.top[k], -1)
	}
	for k := len(f.blocks) - 1; k >= 0; k-- {
		if under := f.under[f.top[k]]; under[len(under)-1] == k {
			l.spread(f.top[k], under)
		}
		for _, node := range f.members[k] {
			l.down[node] = l.into(k, node, -1)
		}
	}
	return l
}

// spread notes for each block under a node what comes there from all else.
func (l *limits) spread(node int, under []int) {
	brought := make([]float64, len(under))
	after := make([]float64, len(under)+1)
	for j := len(under) - 1; j >= 0; j-- {
		brought[j] = l.into(under[j], node, -1)
		after[j] = after[j+1] + brought[j]
	}
	before := l.down[node]
	if l.endless[node] {
		before = math.Inf(1)
	}
	for j, k := range under {
		l.beside[k] = before + after[j+1]
		before += brought[j]
	}
}

// at returns what comes to a node of a block from outside the block.
func (l *limits) at(node, block int) float64 {
	if node == l.forest.top[block] {
		return l.beside[block]
	}
	return l.below[node]
}

// width returns what a branch lets through.
func (l *limits) width(i int) float64 {
	b := &l.net.branches[i]
	if b.kind != device {
		return math.Inf(1)
	}
	if v := rating(b); !math.IsInf(v, 1) {
		return v
	}
	return l.unrated
}

// into returns what a block brings to one of its nodes, over all its branches but
// one, -1 for none left out.
func (l *limits) into(block, node, without int) float64 {
	branches := l.forest.blocks[block]
	if len(branches) > 1 {
		return l.ring(block, node, without).run()
	}
	if branches[0] == without {
		return 0
	}
	return min(l.width(branches[0]), l.at(l.net.branches[branches[0]].other(node), block))
}

// towards returns what can come through a conductor towards its far end, given the
// near one.
func (l *limits) towards(i, near int) float64 {
	k := l.block[i]
	switch {
	case k < 0: // from a busbar to itself
		return l.below[near] + l.down[near]
	case len(l.forest.blocks[k]) == 1:
		return l.at(near, k)
	}
	return l.at(near, k) + l.into(k, near, i)
}

// cut returns the devices whose ratings make up what comes through a conductor,
// those nearest the sources where several do.
func (l *limits) cut(i, near int) []int {
	found := map[int]bool{}
	k := l.block[i]
	if k < 0 {
		l.cutAt(found, near, -1)
		return sortedKeys(found)
	}
	l.cutAt(found, near, k)
	if len(l.forest.blocks[k]) > 1 {
		l.cutInto(found, k, near, i)
	}
	return sortedKeys(found)
}

// cutAt adds the devices that limit what comes to a node from outside a block.
func (l *limits) cutAt(found map[int]bool, node, block int) {
	if above := l.forest.above[node]; above >= 0 && above != block && l.down[node] > 0 {
		l.cutInto(found, above, node, -1)
	}
	for _, k := range l.forest.under[node] {
		if k != block && l.into(k, node, -1) > 0 {
			l.cutInto(found, k, node, -1)
		}
	}
}

// cutInto adds the devices that limit what a block brings to a node.
func (l *limits) cutInto(found map[int]bool, block, node, without int) {
	branches := l.forest.blocks[block]
	if len(branches) > 1 {
		l.ring(block, node, without).cut(found)
		return
	}
	far := l.net.branches[branches[0]].other(node)
	if l.width(branches[0]) < l.at(far, block) {
		found[branches[0]] = true
		return
	}
	l.cutAt(found, far, block)
}

func sortedKeys(m map[int]bool) []int {
	keys := make([]int, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
