package diagram

import "slices"

// areas are the rectangles that make up a region.
func (p *plan) areas(r *region) []Rect {
	at := func(top, bottom int, x, right float64) Rect {
		return Rect{x, p.rowTop[top], right - x, p.rowBottom[bottom] - p.rowTop[top]}
	}
	left := func(s *slab) float64 { return p.colX[s.col] - bandPad }
	right := func(s *slab) float64 { return p.colX[s.col] + p.colW[s.col] + bandPad }
	var all []Rect
	for _, s := range r.slabs {
		all = append(all, at(s.top, s.bottom, left(s), right(s)))
	}
	for _, b := range r.bridges {
		all = append(all, at(b.top, b.bottom, right(b.left), left(b.right)))
	}
	return append(all, fillers(all)...)
}

// fillers close the room between rows where a region has both.
func fillers(areas []Rect) []Rect {
	var all []Rect
	for _, a := range areas {
		for _, b := range areas {
			x, right := max(a.X, b.X), min(a.right(), b.right())
			if x < right && b.Y > a.bottom() && b.Y < a.bottom()+rowPad+0.1 {
				all = append(all, Rect{x, a.bottom(), right - x, b.Y - a.bottom()})
			}
		}
	}
	return all
}

// outlines are the polygons around the union of rectangles, and those around
// what it encloses without holding it.
func outlines(areas []Rect) (outer, holes [][]Point) {
	var xs, ys []float64
	for _, a := range areas {
		xs = append(xs, a.X, a.right())
		ys = append(ys, a.Y, a.bottom())
	}
	xs, ys = sorted(xs), sorted(ys)
	inside := func(i, j int) bool {
		if i < 0 || j < 0 || i >= len(xs)-1 || j >= len(ys)-1 {
			return false
		}
		x, y := (xs[i]+xs[i+1])/2, (ys[j]+ys[j+1])/2
		return slices.ContainsFunc(areas, func(a Rect) bool { return x > a.X && x < a.right() && y > a.Y && y < a.bottom() })
	}
	// The sides of the filled cells that no filled cell adjoins, each turning
	// clockwise around the fill.
	next := map[Point][]Point{}
	side := func(a, b Point) { next[a] = append(next[a], b) }
	var starts []Point
	for j := range len(ys) - 1 {
		for i := range len(xs) - 1 {
			if !inside(i, j) {
				continue
			}
			a, b, c, d := Point{xs[i], ys[j]}, Point{xs[i+1], ys[j]}, Point{xs[i+1], ys[j+1]}, Point{xs[i], ys[j+1]}
			if !inside(i, j-1) {
				side(a, b)
				starts = append(starts, a)
			}
			if !inside(i+1, j) {
				side(b, c)
			}
			if !inside(i, j+1) {
				side(c, d)
			}
			if !inside(i-1, j) {
				side(d, a)
			}
		}
	}
	for _, start := range starts {
		var ring []Point
		for at := start; len(next[at]) > 0; {
			to := next[at][0]
			next[at] = next[at][1:]
			ring = append(ring, at)
			at = to
		}
		switch ring = corners(ring); {
		case len(ring) == 0:
		case clockwise(ring):
			outer = append(outer, ring)
		default:
			holes = append(holes, ring)
		}
	}
	return outer, holes
}

// sorted puts values in order, each once.
func sorted(values []float64) []float64 {
	slices.Sort(values)
	return slices.Compact(values)
}

// corners leaves out the points of a ring where it does not turn.
func corners(ring []Point) []Point {
	var out []Point
	for i, at := range ring {
		before, after := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
		if (before.X == at.X) != (at.X == after.X) {
			out = append(out, at)
		}
	}
	return out
}

// clockwise tells whether a ring runs around what is inside of it; that of a
// hole runs the other way.
func clockwise(ring []Point) bool {
	doubled := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		doubled += a.X*b.Y - b.X*a.Y
	}
	return doubled > 0
}

// size is the extent of a region, to paint the larger ones first.
func (p *plan) size(r *region) float64 {
	var corners []Point
	for _, a := range p.areas(r) {
		corners = append(corners, Point{a.X, a.Y}, Point{a.right(), a.bottom()})
	}
	around := extentOf(corners)
	return around.W * around.H
}

// extentOf is the rectangle around points.
func extentOf(points []Point) Rect {
	first := points[0]
	left, top, right, bottom := first.X, first.Y, first.X, first.Y
	for _, at := range points {
		left, top, right, bottom = min(left, at.X), min(top, at.Y), max(right, at.X), max(bottom, at.Y)
	}
	return Rect{left, top, right - left, bottom - top}
}

// holds tells whether the symbol of any node stands within a ring.
func (p *plan) holds(ring []Point) bool {
	around := extentOf(ring)
	return slices.ContainsFunc(p.net.nodes, func(nd *node) bool {
		x, y := p.symbolX(nd), p.lineY[nd.row]
		return x > around.X && x < around.right() && y > around.Y && y < around.bottom()
	})
}
