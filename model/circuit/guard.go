package circuit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// trace is the rating that a device without one counts as at the low end: small,
// so that what it holds back still shows where it lies.
const trace = 1e-9

// tolerance is the limits in one state of the switches, with every device that has
// no rating taken as next to nothing and as endless.
type tolerance struct{ low, high *limits }

// tolerances returns the limits in every state.
func (a *analysis) tolerances() []tolerance {
	if a.limits == nil {
		for _, at := range a.solver.all {
			a.limits = append(a.limits, a.tolerance(a.net.closed(at.st)))
		}
	}
	return a.limits
}

func (a *analysis) tolerance(closed []int) tolerance {
	n := a.net
	rated := true
	closed = slices.DeleteFunc(closed, func(i int) bool {
		b := &n.branches[i]
		rated = rated && (b.kind != device || !math.IsInf(rating(b), 1))
		return b.kind == source
	})
	var sources []int
	for _, f := range a.feedings {
		sources = append(sources, f.pole.node)
	}
	f := newForest(n, closed, -1)
	high := newLimits(n, f, sources, math.Inf(1))
	if rated {
		return tolerance{high, high}
	}
	return tolerance{newLimits(n, f, sources, trace), high}
}

// everyContact returns the limits with every command given at once, which joins
// more than can be: for ways that no single command opens.
func (a *analysis) everyContact() tolerance {
	if a.joined == (tolerance{}) {
		var closed []int
		for i := range a.net.branches {
			switch a.net.branches[i].kind {
			case wire, device, contact:
				closed = append(closed, i)
			}
		}
		a.joined = a.tolerance(closed)
	}
	return a.joined
}

// bar is what could limit a conductor: a current at both ends of what the record
// leaves open, and the devices behind either.
type bar struct {
	low, high float64
	ahead     []int // the devices behind both, of a conductor ahead of them
	by        tolerance
	i, near   int // conductor, and its end towards the sources
}

func (b *bar) lowBy() []int {
	if b.ahead != nil {
		return b.ahead
	}
	return b.by.low.cut(b.i, b.near)
}

func (b *bar) highBy() []int {
	if b.ahead != nil {
		return b.ahead
	}
	return b.by.high.cut(b.i, b.near)
}

// setGuard fills in the rating that limits what one conductor can carry for long,
// and the devices behind it.
//
// Behind a device each end counts by itself: towards it current comes from the
// other end alone, as much as the devices on that side let through together,
// wherever what takes it lies. A conductor between two sources so carries the sum
// of the devices at one of its ends, but never that of both.
func (a *analysis) setGuard(r *ConductorResult, i int) {
	r.GuardBy = nil
	bars, gaps := a.barsAhead(r, i)
	switch {
	case len(r.Feeds) == 0:
		r.Guard = figure.Open(figure.Because("no source reaches it in the record"))
		return
	case len(gaps) > 0:
		r.Guard = figure.Open(gaps...)
		return
	}
	b := &a.net.branches[i]
	for _, t := range a.tolerancesOf(b, r.Feeds) {
		for _, near := range [2]int{b.a, b.b} {
			low := t.low.towards(i, near)
			if math.IsInf(low, 1) {
				continue // ahead of any device from there
			}
			bars = append(bars, bar{low: low, high: t.high.towards(i, near), by: t, i: i, near: near})
		}
	}
	a.bars = bars[:0]
	a.guardBy(r, b, bars)
}

// concur tells whether both ends of a limit are one.
func concur(low, high float64) bool { return low == high || !math.IsInf(high, 1) && alike(low, high) }

// barsAhead returns the sum of the devices that each source feeds through a
// conductor ahead of them, or why nothing limits it.
func (a *analysis) barsAhead(r *ConductorResult, i int) (bars []bar, gaps []figure.Gap) {
	bars = a.bars[:0]
	for k := range r.Feeds {
		feed := &r.Feeds[k]
		switch {
		case !feed.Ahead:
		case feed.Bare || len(feed.NextDevices) == 0:
			gaps = append(gaps, figure.Because("no device limits what "+feed.Source+" can drive through conductor "+a.net.branches[i].id))
		default:
			var next bar
			for _, id := range feed.NextDevices {
				d := a.deviceBranch(a.net.part(id))
				next.ahead = append(next.ahead, d)
				v := rating(&a.net.branches[d])
				next.high += v
				if !math.IsInf(v, 1) {
					next.low += v
				}
			}
			bars = append(bars, next)
		}
	}
	return bars, uniqueGaps(gaps)
}

// tolerancesOf returns the limits that a conductor is judged by: those of every
// state, and of all commands at once if a source reaches it in none of them.
func (a *analysis) tolerancesOf(b *branch, feeds []Feed) []tolerance {
	list := a.tolerances()
	k := 0
	for _, f := range a.feedings {
		if fed, _ := f.reaches(b); !fed {
			continue
		}
		feed := &feeds[k]
		k++
		joins := func(t tolerance) bool { is := t.high.forest.island; return is[f.pole.node] == is[b.a] }
		if !feed.Ahead && !slices.ContainsFunc(list, joins) {
			return append(slices.Clone(list), a.everyContact())
		}
	}
	return list
}

// guardBy sets the greatest of what could limit a conductor, if what the record
// lacks makes no difference to it. Of several alike the one with the fewest
// devices, then the first by name, is shown.
func (a *analysis) guardBy(r *ConductorResult, b *branch, bars []bar) {
	var low, high float64
	for k := range bars {
		low, high = max(low, bars[k].low), max(high, bars[k].high)
	}
	if !concur(low, high) || high == 0 {
		r.Guard = figure.Open(a.unratedGaps(b, bars, low)...)
		return
	}
	var by []int
	for k := range bars {
		if !concur(bars[k].high, high) {
			continue
		}
		devices := bars[k].highBy()
		if by == nil || len(devices) < len(by) || len(devices) == len(by) && strings.Join(a.net.names(devices), " ") < strings.Join(a.net.names(by), " ") {
			by = devices
		}
	}
	r.GuardBy = a.net.names(by)
	sum := 0.0
	for _, i := range by {
		sum += rating(&a.net.branches[i])
	}
	r.Guard = figure.Worked(sum, "A", func() []figure.Step { return a.net.guardSteps(by) })
}

func (n *network) guardSteps(by []int) []figure.Step {
	sum := 0.0
	var inputs []figure.Input
	for _, i := range by {
		d := &n.branches[i]
		sum += rating(d)
		inputs = append(inputs, figure.Input{Symbol: "I(" + d.id + ")", Value: rating(d), Unit: "A", From: d.comp.Path + ".rating"})
	}
	how := "of devices in series the least, side by side the sum"
	if len(by) == 1 {
		how = "the rating of the device that limits it"
	}
	return []figure.Step{{
		Formula: "guard, the most that devices let pass for long towards one end: " + how,
		Source:  "Kirchhoff's current law; max-flow min-cut theorem", Inputs: inputs, Result: quantity.Round(sum), Unit: "A",
	}}
}

// unratedGaps names the devices without a rating that leave a limit open.
func (a *analysis) unratedGaps(b *branch, bars []bar, low float64) []figure.Gap {
	var gaps []figure.Gap
	for k := range bars {
		x := &bars[k]
		if concur(x.low, x.high) || x.high <= low {
			continue
		}
		for _, i := range x.lowBy() {
			if d := &a.net.branches[i]; math.IsInf(rating(d), 1) {
				gaps = append(gaps, figure.Missing(d.comp.Path+".rating"))
			}
		}
	}
	if len(gaps) == 0 {
		gaps = append(gaps, figure.Because(fmt.Sprintf("the ratings between its sources and conductor %s leave its limit open", b.id)))
	}
	return uniqueGaps(gaps)
}

// names returns the ids of branches, each once.
func (n *network) names(branches []int) []string {
	var ids []string
	for _, i := range branches {
		if !slices.Contains(ids, n.branches[i].id) {
			ids = append(ids, n.branches[i].id)
		}
	}
	return ids
}
