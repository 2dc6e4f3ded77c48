package diagram

import "driploop/model/record"

// The mark of a penetration.
const (
	holeHalf = 6.0
	holePad  = 5.0 // beside its id

	tierHeight = 10.5 // of a second line of ids
)

// holeMark is a penetration on the line of one conductor.
type holeMark struct {
	hole  *record.Penetration
	words text
	x     float64
	tier  int  // line on which its id stands
	main  bool // the first in the diagram: it bears the anchor
}

func (h *holeMark) width() float64 { return max(h.words.width(), 6) + holePad }

// line sets the marks that share one gap in a line if there is room, or else
// staggers them, and returns the width that they take. Until they are placed x
// counts from the left of that.
func line(holes []*holeMark, room float64) float64 {
	total := 0.0
	for _, h := range holes {
		h.tier = 0
		h.x = total + h.width()/2
		total += h.width()
	}
	if total <= room {
		return total
	}
	return stagger(holes)
}

// stagger sets marks that share one gap close together, every other id a line
// lower.
func stagger(holes []*holeMark) float64 {
	const beside = 2.5 // the line down to a lower id
	right := 0.0
	for i, h := range holes {
		half := h.words.width() / 2
		h.tier = i % 2
		h.x = max(half, 3)
		if i > 0 {
			before := holes[i-1]
			h.x = max(h.x, before.x+max(before.words.width()/2, half)+beside)
		}
		if i > 1 {
			before := holes[i-2]
			h.x = max(h.x, before.x+before.words.width()/2+half+holePad)
		}
		right = max(right, h.x+max(half, 3))
	}
	return right
}

// tiers is the number of lines on which ids stand.
func tiers(holes []*holeMark) int {
	n := 0
	for _, h := range holes {
		n = max(n, h.tier+1)
	}
	return n
}

// stretch is a piece of a run under which texts can stand.
type stretch struct{ x, w float64 }

// stretches lists the pieces of the run of an edge over several gaps: the
// labels' part of each but the first, where its own label stands, and each column
// between.
func (p *plan) stretches(e *edge) []stretch {
	var all []stretch
	for c := e.u.col; c < e.v.col; c++ {
		if c > e.u.col {
			g := p.gapAfter(c)
			all = append(all, stretch{p.colX[c], p.colW[c]}, stretch{g.x + g.left, g.labels})
		}
	}
	return all
}

// setHoles places the penetrations of each conductor along it, evenly where
// there is room.
func (p *plan) setHoles() {
	seen := map[*record.Penetration]bool{}
	for _, e := range p.net.edges {
		l := p.labels[e]
		holes := l.holes
		switch {
		case len(holes) == 0:
			continue
		case l.near:
			g := p.gapAfter(e.u.col)
			start := g.x + g.left + (g.labels-line(holes, g.labels))/2
			for _, h := range holes {
				h.x += start
			}
		default:
			spread(holes, p.stretches(e))
		}
		for _, h := range holes {
			h.main = !seen[h.hole]
			seen[h.hole] = true
		}
	}
}

// spread places marks in order: each no further left than its even share of
// the way, as long as those after it still find room.
func spread(holes []*holeMark, on []stretch) {
	total := 0.0
	for _, s := range on {
		total += s.w
	}
	for slack := 1.0; slack >= 0; slack -= 0.1 {
		if pack(holes, on, total*slack) || slack < 0.1 {
			return
		}
	}
}

// pack places marks from the left, each after its share of a length, and tells
// whether all fit.
func pack(holes []*holeMark, on []stretch, length float64) bool {
	i, used, passed := 0, 0.0, 0.0
	fits := true
	for k, h := range holes {
		least := length * float64(k) / float64(len(holes))
		if len(holes) == 1 {
			least = length/2 - h.width()/2
		}
		for {
			start := max(used, least-passed)
			if i >= len(on) {
				fits = false
				break
			}
			if start+h.width() <= on[i].w+0.01 {
				h.x = on[i].x + start + h.width()/2
				used = start + h.width()
				break
			}
			passed += on[i].w
			i, used = i+1, 0
		}
	}
	return fits
}
