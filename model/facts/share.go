package facts

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// Share is how a conductor shares the current of those that lie in parallel with
// it, terminal to terminal.
type Share struct {
	ParallelWith string `json:"parallel_with"` // the others; empty if there are none
	// ShareOffPct is how far its share of the current is from an equal one, by the
	// conductors' resistances at 20 °C.
	ShareOffPct *float64 `json:"share_off_pct,omitempty"`
}

// shares sets what conductors in parallel share. Bonding conductors count not.
func (b *Builder) shares() {
	var all []*wire
	for i := range b.wires {
		w := &b.wires[i]
		if w.Role.V == "bonding" {
			w.facts.because("it carries no current", "share_off_pct")
			continue
		}
		all = append(all, w)
	}
	slices.SortStableFunc(all, compareEnds)
	for len(all) > 0 {
		n := 1
		for n < len(all) && compareEnds(all[0], all[n]) == 0 {
			n++
		}
		divide(all[:n])
		all = all[n:]
	}
}

// compareEnds orders conductors by the nodes that they join.
func compareEnds(a, b *wire) int {
	one, other := pairOf(a.fromNode, a.toNode), pairOf(b.fromNode, b.toNode)
	return slices.Compare(one[:], other[:])
}

// divide sets what conductors between the same two nodes share.
func divide(group []*wire) {
	if len(group) == 1 {
		group[0].facts.because("no other conductor lies in parallel with it", "share_off_pct")
		return
	}
	var gaps []figure.Gap
	var names []string
	sum := 0.0
	for _, w := range group {
		names = append(names, w.ID)
		if r := &w.result.R20; r.Known && r.Value > 0 {
			sum += 1 / r.Value
		} else {
			gaps = append(gaps, orUnsolved(r.Gaps)...)
		}
	}
	for _, w := range group {
		f := w.facts
		f.ParallelWith = joinOthers(names, w.ID)
		if len(gaps) > 0 {
			f.open("share_off_pct", gaps...)
			continue
		}
		equal := 1 / float64(len(group))
		own := 1 / w.result.R20.Value / sum
		f.ShareOffPct = f.number(quantity.Round(100 * math.Abs(own-equal) / equal))
	}
}
