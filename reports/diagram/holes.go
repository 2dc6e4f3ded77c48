package diagram

import (
	"cmp"
	"slices"

	"driploop/model/record"
)

// holesOf lists the penetrations that a conductor passes, in the order of its
// way from its end u to its end v.
func holesOf(r *record.Record, e *edge) []*record.Penetration {
	way := spacesOf(e.cond)
	type passed struct {
		hole *record.Penetration
		step int
	}
	var found []passed
	for _, p := range r.Penetrations {
		if slices.Contains(p.Passes.V, e.cond.ID) {
			found = append(found, passed{p, crossing(way, p)})
		}
	}
	slices.SortStableFunc(found, func(a, b passed) int { return cmp.Compare(a.step, b.step) })
	holes := make([]*record.Penetration, len(found))
	for i, f := range found {
		holes[i] = f.hole
	}
	if e.flipped {
		slices.Reverse(holes)
	}
	return holes
}

// crossing is the step of a way that goes through a penetration; the number of
// steps if none does.
func crossing(way []string, p *record.Penetration) int {
	for i := 1; i < len(way); i++ {
		a, b := way[i-1], way[i]
		if (a == p.From.V && b == p.To.V) || (a == p.To.V && b == p.From.V) {
			return i
		}
	}
	return len(way)
}
