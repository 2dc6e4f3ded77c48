package circuit

import "math"

// wayBack is the way back of one load's current, seen from the source. A fault
// beside the way out finds it at the same share of its length, since the two run
// side by side; at the joint nearest to that, if it lies farther out, where the
// conductors of one way are longer than those of the other.
type wayBack struct {
	parts []piece
	total float64 // mm
}

// piece is a branch of the way back: what lies between it and the source, by length,
// its own length in mm, and its resistance in Ω, each by its share of the current.
type piece struct{ begin, length, ohms float64 }

// follow sets the parts, in the memory of the way out, which has been followed
// before.
func (w *wayBack) follow(n *network, t *trial, out *outWay, ohms []float64) {
	w.parts, w.total = w.parts[:0], 0
	length := out.length
	for _, e := range t.way.edges {
		length[e.from], length[e.to] = 0, 0
	}
	for k := len(t.way.back.branches) - 1; k >= 0; k-- {
		i := t.way.back.branches[k]
		e, share := t.way.edges[out.edge[i]], out.share[i]
		p := piece{begin: length[e.to], ohms: ohms[i] * share * share}
		if b := &n.branches[i]; b.kind == wire {
			if v, ok := sane(&b.cond.Length); ok {
				p.length = v * share
			}
		}
		length[e.from] = max(length[e.from], p.begin+p.length)
		w.total = max(w.total, p.begin+p.length)
		w.parts = append(w.parts, p)
	}
}

// ohms returns what the way back adds to a fault at some share of the way out.
func (w *wayBack) ohms(share float64) float64 {
	at := share * w.total
	joint := 0.0
	for _, p := range w.parts {
		if end := p.begin + p.length; math.Abs(end-at) <= math.Abs(joint-at) {
			joint = end
		}
	}
	at = max(at, joint)
	sum := 0.0
	for _, p := range w.parts {
		switch {
		case p.length > 0:
			sum += p.ohms * min(1, max(0, at-p.begin)/p.length)
		case p.begin <= at:
			sum += p.ohms
		}
	}
	return sum
}
