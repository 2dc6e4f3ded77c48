package circuit

import (
	"cmp"
	"math"
	"slices"

	"driploop/model/figure"
)

// feeding is what one source terminal can feed.
type feeding struct {
	pole     *pole
	zone     []bool // nodes that it reaches through no device
	tree     []step // by node of the zone: the branch it was first reached over, and from which node
	first    []int  // by node beyond the zone: branch of the first device on the way, -1 for none
	width    []bottleneck
	loops    bool   // the zone has more than one way to some node
	shortest []step // by node reached: the last step of the shortest way
}

// findFeeding follows one source terminal.
func findFeeding(n *network, s *searcher, t *pole) *feeding {
	f := &feeding{pole: t, zone: make([]bool, len(n.nodes)), tree: make([]step, len(n.nodes)), first: make([]int, len(n.nodes))}
	for i := range f.first {
		f.first[i] = -1
		f.tree[i] = step{-1, -1}
	}
	joined := 0
	s.run(t.node, aheadOfAny, func(at, node int) {
		if f.zone[node] {
			return
		}
		f.zone[node] = true
		if over, ok := s.reached(at); ok {
			f.tree[node] = over
			joined++
		}
	})
	inside := 0
	for i := range n.branches {
		b := &n.branches[i]
		if (b.kind == wire || b.kind == contact) && f.zone[b.a] && f.zone[b.b] {
			inside++
		}
	}
	f.loops = inside > joined
	f.findShortest(n, s)
	f.findFirst(n, s)
	f.width = widest(n, s, t.node)
	return f
}

// findShortest notes the shortest way to every node.
func (f *feeding) findShortest(n *network, s *searcher) {
	f.shortest = make([]step, len(n.nodes))
	for i := range f.shortest {
		f.shortest[i] = step{-1, -1}
	}
	done := make([]bool, len(n.nodes))
	s.run(f.pole.node, everywhere, func(at, node int) {
		if over, ok := s.reached(at); ok && !done[node] {
			f.shortest[node] = over
		}
		done[node] = true
	})
}

// nearer returns the end of a branch that the shortest way from the source
// reaches without it, -1 for none.
func (f *feeding) nearer(b *branch, i int) int {
	switch {
	case !f.pole.reaches[b.a]:
		return -1
	case f.shortest[b.a].branch == i:
		return b.b
	}
	return b.a
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
	if v, ok := sane(b.comp.Rating); ok {
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

// onward is where the ways on from a conductor lead, before any device.
type onward struct {
	devices  []int // branches, in order of the record
	bare     bool
	bareVia  string
	returns  bool // a way leads back to the source terminal
	landsOn  int  // device on which the conductor itself lands, -1 for none
	starting int  // node that the conductor is entered from
}

// describeAhead fills in where the ways on from a conductor lead that lies
// ahead of its first device. In a ring a conductor is fed from both ends; then
// the ways on from both count.
func (f *feeding) describeAhead(n *network, s *searcher, i int, feed *Feed) {
	b := &n.branches[i]
	near, far := b.a, b.b
	if f.tree[b.a].branch == i || !f.zone[b.a] {
		near, far = b.b, b.a
	}
	ways := []onward{f.onward(n, s, i, near, far)}
	if ways[0].returns && near != far {
		ways = append(ways, f.onward(n, s, i, far, near))
	}
	seen := map[int]bool{}
	var devices []int
	for _, w := range ways {
		for _, d := range w.devices {
			if !seen[d] {
				seen[d] = true
				devices = append(devices, d)
			}
		}
		if w.bare && !feed.Bare {
			feed.Bare, feed.BareVia = true, w.bareVia
		}
		if w.landsOn >= 0 && feed.EndsAtDevice == "" {
			feed.EndsAtDevice = n.branches[w.landsOn].id
			f.measure(n, s, i, w.starting, feed)
		}
	}
	slices.Sort(devices)
	for _, d := range devices {
		if id := n.branches[d].id; !slices.Contains(feed.NextDevices, id) {
			feed.NextDevices = append(feed.NextDevices, id)
		}
	}
}

// onward follows every way on from a conductor that is entered at near and left
// at far. Inside a series bank the way goes on through the next battery: its
// link is no end, but what protects the bank's output does not protect it from
// a fault to ground either, so that such a link has next devices and no bare
// end.
func (f *feeding) onward(n *network, s *searcher, i, near, far int) onward {
	o := onward{landsOn: -1, starting: near}
	w := aheadOfAny
	w.without, w.barrier = i, f.pole.node
	from := &n.branches[f.pole.branch]
	starts := []int{far}
	entered := map[int]bool{f.pole.branch: true}
	for len(starts) > 0 {
		start := starts[0]
		starts = starts[1:]
		s.run(start, w, func(_, node int) {
			if node == f.pole.node {
				o.returns = true
				return
			}
			ends := 0
			for _, j := range n.at[node] {
				b := &n.branches[j]
				ends++
				switch {
				case j == i || b.kind == wire || b.kind == contact:
				case b.kind == device:
					if !slices.Contains(o.devices, j) {
						o.devices = append(o.devices, j)
					}
					if node == far && o.landsOn < 0 {
						o.landsOn = j
					}
				case b.kind == load || b.kind == coil:
					o.end(b.id)
				case b.kind == source && !entered[j]:
					entered[j] = true
					if from.class == batteryClass && b.class == batteryClass && node == b.b && f.pole.positive {
						starts = append(starts, b.a) // on through the bank
						continue
					}
					o.end(n.nodes[node].name)
				}
			}
			if ends <= 1 {
				o.end(n.nodes[node].name)
			}
		})
	}
	return o
}

// end notes a way on that ends without a device; the first one names it.
func (o *onward) end(name string) {
	if !o.bare {
		o.bare, o.bareVia = true, name
	}
}
