package circuit

import (
	"fmt"
	"math"
	"slices"

	"driploop/model/figure"
)

// setSelective tells, for every device between the batteries and this one, whether
// a fault behind this one leaves it closed: at the greatest fault current at its
// load terminal, at the least at the load behind, and at the gates of either
// device in between.
func (a *analysis) setSelective(r *DeviceResult, i int, at *behind) {
	fam := a.solver.family(a.solver.base, full)
	if at != nil {
		fam = at.fam
	}
	high := a.greatestFault(a.net.branches[i].b, fam, leastOhms)
	low := high
	if at != nil {
		low = a.farthest(at)
	}
	gaps := append(append([]figure.Gap(nil), low.gaps...), high.gaps...)
	devices := a.devices(high)
	for _, up := range devices {
		id := a.net.branches[up.branch].id
		if up.branch == i || id == a.net.branches[i].id {
			continue
		}
		if r.Selective == nil {
			r.Selective = map[string]figure.Truth{}
		}
		below, above := a.releaseOf(i), a.releaseOf(up.branch)
		missing := uniqueGaps(append(append(append([]figure.Gap(nil), gaps...), below.gaps...), above.gaps...))
		if len(missing) > 0 {
			r.Selective[id] = figure.OpenTruth(missing...)
			continue
		}
		r.Selective[id] = selective(below, above, share(devices, i), math.Abs(up.amps), low.amps, max(low.amps, high.amps))
	}
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

// farthest returns the least fault at the terminals of the load behind a branch.
func (a *analysis) farthest(at *behind) *prospect {
	whole := *at
	for _, t := range a.solver.solveAlone(at.load) {
		if t.lone.family != at.fam {
			continue
		}
		out := t.flow.out.branches
		if len(out) == 0 {
			break
		}
		if last := a.behind[out[len(out)-1]]; last != nil {
			whole = *last
		}
	}
	return a.leastFault(&whole)
}

// selective tells whether only the device below opens at every current of a fault
// between two. It is certain only where it is so at each.
func selective(below, above *release, shareBelow, shareAbove, low, high float64) figure.Truth {
	currents := []float64{low, high}
	for _, v := range below.gateAmps(low*shareBelow, high*shareBelow) {
		currents = append(currents, v/shareBelow)
	}
	for _, v := range above.gateAmps(low*shareAbove, high*shareAbove) {
		currents = append(currents, v/shareAbove)
	}
	slices.Sort(currents)
	result := figure.True()
	for _, amps := range currents {
		leastBelow, mostBelow, _ := below.opens(amps * shareBelow)
		leastAbove, mostAbove, _ := above.opens(amps * shareAbove)
		switch {
		case mostBelow < leastAbove:
		case leastBelow >= mostAbove:
			return figure.False()
		case result.Known:
			result = figure.OpenTruth(figure.Because(fmt.Sprintf("the gates of both devices leave it open which opens first at %s", ampere(amps))))
		}
	}
	return result
}
