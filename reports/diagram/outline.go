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

// outlines are the polygons around the union of rectangles. What a polygon
// encloses without being part of it is not told apart.
func outlines(areas []Rect) [][]Point {
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
	var all [][]Point
	for _, start := range starts {
		var ring []Point
		for at := start; len(next[at]) > 0; {
			to := next[at][0]
			next[at] = next[at][1:]
			ring = append(ring, at)
			at = to
		}
		if ring = corners(ring); clockwise(ring) {
			all = append(all, ring)
		}
	}
	return all
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
	areas := p.areas(r)
	out := areas[0]
	for _, a := range areas {
		right, bottom := max(out.right(), a.right()), max(out.bottom(), a.bottom())
		out.X, out.Y = min(out.X, a.X), min(out.Y, a.Y)
		out.W, out.H = right-out.X, bottom-out.Y
	}
	return out.W * out.H
}
