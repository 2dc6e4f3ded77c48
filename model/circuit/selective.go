package circuit

import (
	"math"
	"slices"

	"driploop/model/figure"
)

// setSelective tells, for every device between the batteries and this one, whether
// a fault behind this one leaves it closed: at the greatest fault current at its
// load terminal, at the least at a load behind, and at the gates of either device
// in between. In every state of the switches it has to be so.
func (a *analysis) setSelective(r *DeviceResult, i int) {
	for _, fam := range a.states(i) {
		high := a.greatestFault(a.net.branches[i].b, fam, leastOhms)
		low := a.farthest(i, fam)
		if low == nil {
			low = high
		}
		for _, up := range a.devices(high) {
			if id := a.net.branches[up.branch].id; up.branch != i && id != a.net.branches[i].id {
				r.leaves(id, a.selectiveAt(i, up, low, high))
			}
		}
	}
}

// leaves notes whether, in one more state, a fault behind the device leaves one
// ahead of it closed.
func (r *DeviceResult) leaves(ahead string, closed figure.Truth) {
	if r.Selective == nil {
		r.Selective = map[string]figure.Truth{}
	}
	if before, known := r.Selective[ahead]; known {
		closed = both(before, closed)
	}
	r.Selective[ahead] = closed
}

// selectiveAt tells whether a fault between two currents behind a device leaves
// one above it closed.
func (a *analysis) selectiveAt(i int, up hop, low, high *prospect) figure.Truth {
	below, above := a.releaseOf(i), a.releaseOf(up.branch)
	var missing []figure.Gap
	for _, gaps := range [][]figure.Gap{low.gaps, high.gaps, below.gaps, above.gaps} {
		missing = append(missing, gaps...)
	}
	if len(missing) > 0 {
		return figure.OpenTruth(uniqueGaps(missing)...)
	}
	return selective(below, above, share(a.devices(high), i), math.Abs(up.amps), low.amps, max(low.amps, high.amps))
}

// share returns the part of the fault current that a device carries.
func share(devices []hop, i int) float64 {
	for _, h := range devices {
		if h.branch == i {
			return math.Abs(h.amps)
		}
	}
	return 1
}

// farthest returns the least fault at the terminals of a load behind a branch in a
// state, nil if there is none.
func (a *analysis) farthest(i int, fam *family) *prospect {
	var worst *prospect
	for _, at := range a.remote[i] {
		if at.fam != fam {
			continue
		}
		p := a.leastFault(at)
		if worst == nil || len(p.gaps) > 0 || len(worst.gaps) == 0 && p.amps < worst.amps {
			worst = p
		}
	}
	return worst
}

// selective tells whether only the device below opens at every current of a fault
// between two. It is certain only where it is so at each.
func selective(below, above *release, shareBelow, shareAbove, low, high float64) figure.Truth {
	var room [16]float64
	currents := append(room[:0], low, high)
	currents = below.gateAmps(currents, shareBelow, low, high)
	currents = above.gateAmps(currents, shareAbove, low, high)
	slices.Sort(currents)
	result := figure.True()
	for _, amps := range currents {
		leastBelow, mostBelow := below.times(amps * shareBelow)
		leastAbove, mostAbove := above.times(amps * shareAbove)
		switch {
		case mostBelow < leastAbove:
		case leastBelow >= mostAbove:
			return figure.False()
		case result.Known:
			result = figure.OpenTruth(figure.Because("the gates of both devices leave it open which opens first at " + ampere(amps)))
		}
	}
	return result
}
