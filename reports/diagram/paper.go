package diagram

import "math"

// paper is a sheet and how large a diagram gets on it.
type paper struct {
	name       string
	wide, high float64 // mm within the margins
	size       int     // smaller sheets first
	scale      float64 // mm by unit
	fits       bool    // the text can be read
}

// Measures of printing: the margin of a sheet, what is small enough to be read
// in print (5.5 point), and what looks blown up (9 point).
const (
	pageMargin = 10 // mm
	point      = 25.4 / 72
	leastScale = 5.5 * point / idSize
	mostScale  = 9 * point / idSize
)

// sheets are those tried, smallest first.
func sheets() []paper {
	const m = 2 * pageMargin
	return []paper{
		{name: "A4 landscape", wide: 297 - m, high: 210 - m},
		{name: "A4 portrait", wide: 210 - m, high: 297 - m},
		{name: "A3 landscape", size: 1, wide: 420 - m, high: 297 - m},
		{name: "A3 portrait", size: 1, wide: 297 - m, high: 420 - m},
	}
}

// paperFor chooses the smallest sheet on which the text can be read, the way
// round that makes it larger, or else that on which it is largest.
func paperFor(wide, high float64) paper {
	var best paper
	for _, p := range sheets() {
		p.scale = min(p.wide/wide, p.high/high, mostScale)
		p.fits = p.scale >= leastScale
		if !best.fits && (p.fits || p.scale > best.scale) || p.size == best.size && p.scale > best.scale {
			best = p
		}
	}
	return best
}

// onCircle is a point on a circle at an angle in degrees, clockwise from right.
func onCircle(c Point, radius, degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{c.X + radius*cos, c.Y + radius*sin}
}

// turn is the angle from one direction clockwise to another.
func turn(from, to float64) float64 {
	return math.Mod(to-from+720, 360)
}
