package facts

import (
	"math"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
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
func shares(r *record.Record, a *circuit.Analysis, conductors map[string]*Conductor) {
	between := map[[2]string][]*record.Conductor{}
	for _, c := range r.Conductors {
		ends := [2]string{nodeOf(r, c.From), nodeOf(r, c.To)}
		if ends[0] > ends[1] {
			ends[0], ends[1] = ends[1], ends[0]
		}
		if c.Role.V != "bonding" {
			between[ends] = append(between[ends], c)
		} else {
			conductors[c.ID].open("share_off_pct", figure.Because("it carries no current"))
		}
	}
	for _, group := range between {
		share(a, conductors, group)
	}
}

func share(a *circuit.Analysis, conductors map[string]*Conductor, group []*record.Conductor) {
	if len(group) == 1 {
		conductors[group[0].ID].open("share_off_pct", figure.Because("no other conductor lies in parallel with it"))
		return
	}
	var gaps []figure.Gap
	sum := 0.0
	for _, c := range group {
		if r := a.Conductors[c.ID].R20; r.Known && r.Value > 0 {
			sum += 1 / r.Value
		} else {
			gaps = append(gaps, orUnsolved(r.Gaps)...)
		}
	}
	for _, c := range group {
		f := conductors[c.ID]
		var others []string
		for _, other := range group {
			if other != c {
				others = append(others, other.ID)
			}
		}
		f.ParallelWith = join(others)
		if len(gaps) > 0 {
			f.open("share_off_pct", gaps...)
			continue
		}
		equal := 1 / float64(len(group))
		own := 1 / a.Conductors[c.ID].R20.Value / sum
		f.ShareOffPct = ptr(quantity.Round(100 * math.Abs(own-equal) / equal))
	}
}
