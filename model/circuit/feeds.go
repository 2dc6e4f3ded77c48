package circuit

import (
	"cmp"
	"math"
	"slices"

	"driploop/model/figure"
)

// feeding is what one source terminal can feed.
type feeding struct {
	pole  *pole
	zone  []bool // nodes that it reaches through no device
	ahead *forest
	block []int     // by branch: its block of ahead, -1 for none
	tree  []step    // by node of the zone: the branch it was first reached over, and from which node
	first []int     // by node beyond the zone: branch of the first device on the way, -1 for none
	loops bool      // the zone has more than one way to some node
	known []*onward // by block of ahead, once asked for
	upper func(source int) *feeding
}

// findFeeding follows one source terminal.
func findFeeding(n *network, s *searcher, t *pole) *feeding {
	f := &feeding{
		pole: t, zone: make([]bool, len(n.nodes)), tree: make([]step, len(n.nodes)), first: make([]int, len(n.nodes)),
	}
	for i := range f.first {
		f.first[i] = -1
		f.tree[i] = step{-1, -1}
	}
	s.run(t.node, aheadOfAny, func(at, node int) {
		if f.zone[node] {
			return
		}
		f.zone[node] = true
		if over, ok := s.reached(at); ok {
			f.tree[node] = over
		}
	})
	f.findBlocks(n)
	f.findFirst(n, s)
	return f
}

// findBlocks parts the zone into blocks, rooted at the source: what a branch leads
// on to is all below its block, and in a block with rings all of the block.
func (f *feeding) findBlocks(n *network) {
	var inside []int
	for i := range n.branches {
		if b := &n.branches[i]; (b.kind == wire || b.kind == contact) && f.zone[b.a] && f.zone[b.b] {
			inside = append(inside, i)
		}
	}
	f.ahead = newForest(n, inside, f.pole.node)
	f.block = make([]int, len(n.branches))
	for i := range f.block {
		f.block[i] = -1
	}
	for k, branches := range f.ahead.blocks {
		f.loops = f.loops || len(branches) > 1
		for _, i := range branches {
			f.block[i] = k
		}
	}
}

// findFirst gives each node beyond the zone the first device on the way to it.
// Where ways with different first devices lead there, the unfavourable one
// counts: one without a recorded rating, else the one with the greatest.
func (f *feeding) findFirst(n *network, s *searcher) {
	var edge []int
	for i := range n.branches {
		if b := &n.branches[i]; b.kind == device && f.zone[b.a] != f.zone[b.b] {
			edge = append(edge, i)
		}
	}
	slices.SortStableFunc(edge, func(i, j int) int { return cmp.Compare(rating(&n.branches[j]), rating(&n.branches[i])) })
	for _, i := range edge {
		b := &n.branches[i]
		far := b.a
		if f.zone[b.a] {
			far = b.b
		}
		f.flood(n, s, i, far)
	}
}

// flood claims what is reached from the far side of a first device and belongs
// to none yet.
func (f *feeding) flood(n *network, s *searcher, dev, start int) {
	stack := []int{start}
	for len(stack) > 0 {
		node := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if f.zone[node] || f.first[node] >= 0 || !f.pole.reaches[node] {
			continue
		}
		f.first[node] = dev
		for _, i := range n.at[node] {
			if _, ok := s.pass(&everywhere, 0, i); ok && i != dev {
				stack = append(stack, n.branches[i].other(node))
			}
		}
	}
}

// rating returns the rating of a device, +Inf if it is not recorded.
func rating(b *branch) float64 {
	if v, ok := sane(&b.comp.Rating); ok {
		return v
	}
	return math.Inf(1)
}

// reaches tells whether the source feeds a conductor, and whether it lies ahead
// of the first device. A source feeds what lands on a node that it reaches.
func (f *feeding) reaches(b *branch) (fed, ahead bool) {
	return f.pole.reaches[b.a] || f.pole.reaches[b.b], f.zone[b.a] || f.zone[b.b]
}

// feed describes how the source feeds one conductor.
func (f *feeding) feed(n *network, s *searcher, i int) Feed {
	b := &n.branches[i]
	src := &n.branches[f.pole.branch]
	feed := Feed{Source: f.pole.name, SourceKind: src.comp.Kind.V, SelfLimiting: figure.False()}
	if src.class == chargeClass {
		if limiting, ok := src.comp.SelfLimiting.Get(); ok {
			feed.SelfLimiting = truth(limiting)
		} else {
			feed.SelfLimiting = figure.OpenTruth(figure.Missing(src.path + ".self_limiting"))
		}
	}
	if _, ahead := f.reaches(b); !ahead {
		if d := max(f.first[b.a], f.first[b.b]); d >= 0 {
			feed.Device = n.branches[f.unfavourable(n, b)].id
		}
		return feed
	}
	feed.Ahead = true
	f.describeAhead(n, s, i, &feed)
	return feed
}

// unfavourable picks between the first devices of both ends of a conductor.
func (f *feeding) unfavourable(n *network, b *branch) int {
	da, db := f.first[b.a], f.first[b.b]
	if da < 0 || db >= 0 && rating(&n.branches[db]) > rating(&n.branches[da]) {
		return db
	}
	return da
}

// describeAhead fills in where the ways on from a conductor lead that lies ahead
// of its first device.
func (f *feeding) describeAhead(n *network, s *searcher, i int, feed *Feed) {
	k := f.block[i]
	if k < 0 {
		return // from a busbar to itself
	}
	o := f.onward(n, k)
	feed.Bare, feed.BareVia = o.bare, o.bareVia
	for _, d := range o.devices {
		if id := n.branches[d].id; !slices.Contains(feed.NextDevices, id) {
			feed.NextDevices = append(feed.NextDevices, id)
		}
	}
	f.landing(n, s, i, feed)
}

// landing fills in the device that a conductor itself lands on, and the way there;
// of two the one with the longer way counts, or whose way is not known.
func (f *feeding) landing(n *network, s *searcher, i int, feed *Feed) {
	b := &n.branches[i]
	for _, far := range []int{b.b, b.a} {
		if far == f.ahead.top[f.block[i]] {
			continue
		}
		for _, j := range n.at[far] {
			if n.branches[j].kind != device {
				continue
			}
			here := Feed{Source: feed.Source, EndsAtDevice: n.branches[j].id}
			f.measure(n, s, i, b.other(far), &here)
			first := feed.EndsAtDevice == ""
			if first || longer(here.OwnLength, feed.OwnLength) {
				feed.OwnFrom, feed.OwnLength, feed.OwnEnclosed = here.OwnFrom, here.OwnLength, here.OwnEnclosed
			}
			if first || longer(here.Length, feed.Length) {
				feed.EndsAtDevice, feed.Length, feed.Via, feed.Enclosed = here.EndsAtDevice, here.Length, here.Via, here.Enclosed
			}
			break
		}
	}
}

// longer tells whether a length may be the longer one: for all that is known.
func longer(a, b figure.Figure) bool { return b.Known && (!a.Known || a.Value > b.Value) }
