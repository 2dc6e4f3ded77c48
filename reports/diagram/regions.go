package diagram

import (
	"cmp"
	"slices"

	"driploop/model/record"
)

// slab is a run of rows in one column where all that stands is in one space.
type slab struct {
	space       *record.Space
	index       int // of the space
	col         int
	top, bottom int
	region      *region
}

// bridge joins two slabs of a space over what lies between.
type bridge struct {
	left, right *slab
	top, bottom int
}

// region is a part of the diagram within one space.
type region struct {
	space   *record.Space
	index   int
	slabs   []*slab
	bridges []bridge
	first   *slab // that bears the name
	main    bool  // first of its space: it bears the anchor
}

// apartRows is the number of empty rows that part a slab in two.
const apartRows = 2

// regions finds the spaces that the nodes stand in.
func (n *network) regions() []*region {
	slabs := n.slabs()
	var all []*region
	for _, s := range slabs {
		s.region = &region{space: s.space, index: s.index, slabs: []*slab{s}}
	}
	for _, b := range n.bridges(slabs) {
		r := b.left.region
		r.bridges = append(r.bridges, b)
		r.join(b.right.region)
	}
	seen := map[*region]bool{}
	for _, s := range slabs {
		if r := s.region; !seen[r] {
			seen[r] = true
			r.first = slices.MinFunc(r.slabs, func(a, b *slab) int { return cmp.Or(cmp.Compare(a.top, b.top), cmp.Compare(a.col, b.col)) })
			all = append(all, r)
		}
	}
	slices.SortStableFunc(all, func(a, b *region) int {
		return cmp.Or(cmp.Compare(a.index, b.index), cmp.Compare(a.first.top, b.first.top), cmp.Compare(a.first.col, b.first.col))
	})
	for i, r := range all {
		r.main = i == 0 || all[i-1].space != r.space
	}
	return all
}

// join takes in another region.
func (r *region) join(other *region) {
	if other == r {
		return
	}
	for _, s := range other.slabs {
		s.region = r
	}
	r.slabs = append(r.slabs, other.slabs...)
	r.bridges = append(r.bridges, other.bridges...)
}

// slabs finds those of all columns.
func (n *network) slabs() []*slab {
	sorted := slices.Clone(n.nodes)
	slices.SortStableFunc(sorted, func(a, b *node) int { return cmp.Or(cmp.Compare(a.col, b.col), cmp.Compare(a.top, b.top)) })
	var all []*slab
	for _, nd := range sorted {
		i := n.spaceIndex(nd)
		if i == len(n.rec.Spaces) {
			continue
		}
		if len(all) > 0 {
			if last := all[len(all)-1]; last.col == nd.col && last.index == i && nd.top-last.bottom <= apartRows+1 && n.emptyBetween(last, nd) {
				last.bottom = nd.bottom
				continue
			}
		}
		all = append(all, &slab{space: n.rec.Spaces[i], index: i, col: nd.col, top: nd.top, bottom: nd.bottom})
	}
	return all
}

// emptyBetween tells whether no other node stands between a slab and a node.
func (n *network) emptyBetween(s *slab, nd *node) bool {
	return !slices.ContainsFunc(n.nodes, func(o *node) bool {
		return o.col == s.col && o.top > s.bottom && o.bottom < nd.top
	})
}

// bridges finds where neighbours on a row are in one space: in columns next to
// each other, or at both ends of a conductor.
func (n *network) bridges(slabs []*slab) []bridge {
	var all []bridge
	last := 0
	for _, s := range slabs {
		last = max(last, s.bottom)
	}
	for row := 0; row <= last; row++ {
		var left *slab
		for _, s := range slabs { // by column
			if row < s.top || row > s.bottom {
				continue
			}
			if left != nil && left.space == s.space && (s.col == left.col+1 || n.runs(row, left.col, s.col)) {
				all = extend(all, bridge{left, s, row, row})
			}
			left = s
		}
	}
	return all
}

// extend adds a bridge of one row, to the one above it if there is one.
func extend(all []bridge, b bridge) []bridge {
	for i := range all {
		if o := &all[i]; o.left == b.left && o.right == b.right && o.bottom == b.top-1 {
			o.bottom = b.bottom
			return all
		}
	}
	return append(all, b)
}

// runs tells whether an edge runs from one column to another on a row.
func (n *network) runs(row, from, to int) bool {
	return slices.ContainsFunc(n.edges, func(e *edge) bool { return e.row == row && e.land == row && e.u.col == from && e.v.col == to })
}

// name is the text of a region.
func (r *region) name(w words) text {
	return append(w.marks.piece(r.space.Path), piece{text: clean(r.space.ID), size: smallSize, bold: true, ink: Faint}).clipped(mostSpace)
}
