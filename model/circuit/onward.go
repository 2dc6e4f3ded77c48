package circuit

import "slices"

// onward is where the ways on from a block lead, before any device.
type onward struct {
	devices []int // branches, in order of the record
	bare    bool
	bareVia string
}

// onward follows every way on from a block of the zone: over simple ways, which
// cross no node twice, a conductor leads on to every node of its block but the one
// nearest the source, and to all that hangs below.
//
// Inside a series bank the way goes on through the next battery: a link is no bare
// end, though what protects the bank's output does not protect the link from a
// fault to ground.
func (f *feeding) onward(n *network, block int) *onward {
	if f.known == nil {
		f.known = make([]*onward, len(f.ahead.blocks))
	}
	if o := f.known[block]; o != nil {
		return o
	}
	o := &onward{}
	f.known[block] = o
	f.gather(n, o, f.below(block), map[*feeding]bool{f: true})
	slices.Sort(o.devices)
	return o
}

// below returns the nodes of a block but its top, and all nodes below them.
func (f *feeding) below(block int) []int {
	if f.ahead.under == nil {
		f.ahead.findUnder()
	}
	var nodes []int
	blocks := []int{block}
	for len(blocks) > 0 {
		k := blocks[len(blocks)-1]
		blocks = blocks[:len(blocks)-1]
		for _, node := range f.ahead.members[k] {
			nodes = append(nodes, node)
			blocks = append(blocks, f.ahead.under[node]...)
		}
	}
	slices.Sort(nodes)
	return nodes
}

// gather notes what stands at nodes: devices, and ends without one.
func (f *feeding) gather(n *network, o *onward, nodes []int, seen map[*feeding]bool) {
	from := &n.branches[f.pole.branch]
	for _, node := range nodes {
		for _, j := range n.at[node] {
			b := &n.branches[j]
			switch {
			case b.kind == device:
				if !slices.Contains(o.devices, j) {
					o.devices = append(o.devices, j)
				}
			case b.kind == load || b.kind == coil:
				o.end(b.id)
			case b.kind == source && j != f.pole.branch:
				next := f.upper(j)
				if from.class != batteryClass || b.class != batteryClass || node != b.b || !f.pole.positive || next == nil {
					o.end(n.nodes[node].name)
				} else if !seen[next] {
					seen[next] = true
					next.gather(n, o, next.every(), seen)
				}
			}
		}
		if len(n.at[node]) <= 1 {
			o.end(n.nodes[node].name)
		}
	}
}

// every returns the nodes of the zone.
func (f *feeding) every() []int {
	var nodes []int
	for node, in := range f.zone {
		if in {
			nodes = append(nodes, node)
		}
	}
	return nodes
}

// end notes a way on that ends without a device; the first one names it.
func (o *onward) end(name string) {
	if !o.bare {
		o.bare, o.bareVia = true, name
	}
}
