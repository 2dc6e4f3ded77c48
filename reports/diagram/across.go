package diagram

import (
	"cmp"
	"slices"
)

// setTracks gives the vertical pieces in each gap a track of their own where
// they would meet.
func (p *plan) setTracks() {
	p.gaps = make([]gap, p.cols+1)
	for c := -1; c < p.cols; c++ {
		g := p.gapAfter(c)
		var verticals []*edge
		for _, e := range p.net.edges {
			if e.v.col == c+1 && e.row != e.land {
				verticals = append(verticals, e)
			}
		}
		g.tracks = assign(verticals, func(e *edge) (int, int) { return min(e.row, e.land), max(e.row, e.land) }, func(e *edge, t int) { e.track = t })
		var leads []*node
		for _, nd := range p.net.nodes {
			if nd.col == c+1 && nd.leadRow() > nd.row {
				leads = append(leads, nd)
			}
		}
		g.tracks = max(g.tracks, assign(leads, func(nd *node) (int, int) { return nd.row, nd.leadRow() }, func(nd *node, t int) { nd.lead = t }))
	}
	for _, nd := range p.net.nodes {
		if _, _, stud := nd.studs(nd.in, func(e *edge) int { return e.land }); stud {
			p.gapBefore(nd.col).studs = true
		}
		if _, _, stud := nd.studs(nd.out, func(e *edge) int { return e.row }); stud {
			p.gapAfter(nd.col).studsLeft = true
		}
	}
}

// assign gives each the first track on which it meets none before it, and
// returns the number of tracks.
func assign[T any](all []T, rows func(T) (int, int), set func(T, int)) int {
	slices.SortStableFunc(all, func(a, b T) int {
		fromA, toA := rows(a)
		fromB, toB := rows(b)
		return cmp.Or(cmp.Compare(toA-fromA, toB-fromB), cmp.Compare(fromA, fromB))
	})
	var tracks [][]T
	for _, e := range all {
		from, to := rows(e)
		t := slices.IndexFunc(tracks, func(on []T) bool {
			return !slices.ContainsFunc(on, func(o T) bool {
				a, b := rows(o)
				return a <= to && from <= b
			})
		})
		if t < 0 {
			t = len(tracks)
			tracks = append(tracks, nil)
		}
		tracks[t] = append(tracks[t], e)
		set(e, t)
	}
	return len(tracks)
}

// studs tells between which rows a bar stands at the side of a node whose
// symbol has but one terminal there.
func (nd *node) studs(edges []*edge, row func(*edge) int) (from, to int, stud bool) {
	if nd.shape == bar || nd.shape == box {
		return 0, 0, false
	}
	from, to = nd.row, nd.row
	for _, e := range edges {
		if e.behind && e.u == nd {
			continue
		}
		from, to = min(from, row(e)), max(to, row(e))
	}
	return from, to, from != to
}

// setAcross finds the columns and gaps.
func (p *plan) setAcross() {
	p.colX, p.colW = make([]float64, p.cols), make([]float64, p.cols)
	for nd, b := range p.bodies {
		w := max(b.wide, widest(b.head), b.foot.width())
		for _, line := range b.side {
			w = max(w, b.wide+textGap+2+line.width())
		}
		p.colW[nd.col] = max(p.colW[nd.col], w)
	}
	for _, r := range p.regions {
		p.colW[r.first.col] = max(p.colW[r.first.col], r.name(p.words).width())
	}
	for c := -1; c < p.cols; c++ {
		g := p.gapAfter(c)
		g.left, g.right = gapEdge, gapEdge+trackPitch*float64(g.tracks)
		if g.studsLeft {
			g.left += trackPitch
		}
		if g.studs || g.tracks > 0 {
			g.right += trackPitch
		}
		if c < 0 {
			g.left = 0
		}
	}
	for e, l := range p.labels {
		g := p.gapAfter(e.u.col)
		g.labels = max(g.labels, max(widest(l.over), widest(l.under))+2)
	}
	p.widen()
	x := 0.0
	for c := -1; c < p.cols; c++ {
		if c >= 0 {
			p.colX[c] = x
			x += p.colW[c]
		}
		g := p.gapAfter(c)
		g.x = x
		if c < p.cols-1 {
			x = g.end()
		}
	}
	p.width = x
}

// widen makes room for the penetrations of each conductor.
func (p *plan) widen() {
	for _, e := range p.net.edges { // in order, since one makes room for the next
		l := p.labels[e]
		g := p.gapBefore(e.v.col)
		if len(l.holes) == 0 {
			continue
		}
		if l.near {
			g.labels = max(g.labels, line(l.holes, g.labels))
			continue
		}
		for !pack(l.holes, p.stretches(e), 0) {
			g.labels += trackPitch
		}
	}
	for _, l := range p.labels { // with the room that there is in the end
		if l.near {
			line(l.holes, p.gapAfter(l.col).labels)
		}
	}
}

// lineX is where a conductor begins at its left node and ends at its right one.
func (p *plan) lineX(e *edge) (from, to float64) {
	return p.rightOf(e.u), p.leftOf(e.v)
}

// leftOf is where conductors from the left meet a node: its symbol, or the bar
// before it.
func (p *plan) leftOf(nd *node) float64 {
	if _, _, stud := nd.studs(nd.in, func(e *edge) int { return e.land }); stud {
		return p.colX[nd.col] - gapEdge
	}
	return p.symbolX(nd)
}

// rightOf is the same on the other side.
func (p *plan) rightOf(nd *node) float64 {
	if _, _, stud := nd.studs(nd.out, func(e *edge) int { return e.row }); stud {
		return p.colX[nd.col] + p.colW[nd.col] + gapEdge
	}
	return p.symbolX(nd) + p.bodies[nd].wide
}

// symbolX is the left end of a symbol.
func (p *plan) symbolX(nd *node) float64 {
	b := p.bodies[nd]
	if nd.isSided() {
		return p.colX[nd.col]
	}
	return p.colX[nd.col] + (p.colW[nd.col]-b.wide)/2
}

// trackX is where the vertical piece of an edge runs.
func (p *plan) trackX(e *edge) float64 {
	return p.colX[e.v.col] - gapEdge - trackPitch*float64(e.track+1)
}

// leadX is where the return of a source runs down from the back of its symbol.
func (p *plan) leadX(nd *node) float64 {
	return p.colX[nd.col] - gapEdge - trackPitch*float64(nd.lead)
}

// leadRow is the lowest row that it runs down to; that of the symbol if nothing
// leaves at the back.
func (nd *node) leadRow() int {
	row := nd.row
	for _, e := range nd.out {
		if e.behind {
			row = max(row, e.row)
		}
	}
	return row
}

// path is the line of a conductor from its left end to its right.
func (p *plan) path(e *edge) []Point {
	y, land := p.lineY[e.row], p.lineY[e.land]
	from, to := p.lineX(e)
	if e.behind {
		from = p.leadX(e.u)
	}
	points := []Point{{from, y}}
	if e.row != e.land {
		x := p.trackX(e)
		points = append(points, Point{x, y}, Point{x, land})
	}
	return append(points, Point{to, land})
}
