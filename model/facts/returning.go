package facts

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Returning is what the devices of its circuits let flow back through a grounded
// return, which no device of its own protects.
type Returning struct {
	// Returns: the current of some load returns through it.
	Returns *bool `json:"returns,omitempty"`
	// ReturnsA is the sum of what the circuits that return through it can carry
	// for long: each its own device, several together no more than the device
	// ahead of them all; one that hangs on devices side by side alone, what guards
	// its feed. On the negative terminal of a source it is no more than what guards
	// the positive one. Feeds of cranking motors are left aside.
	ReturnsA         *float64 `json:"returns_a,omitempty"`
	ReturnsTable5Pct *float64 `json:"returns_table5_pct,omitempty"`
	// FeedsTable5Pct is the greatest guard_table5_pct of the conductors that feed
	// those circuits.
	FeedsTable5Pct *float64 `json:"feeds_table5_pct,omitempty"`
}

// returning sets what can return through a conductor; what it carries and what
// Table 5 allows is set before.
func (b *Builder) returning(f *Conductor, w *wire) {
	s := &f.Subject
	back := settled(slices.ContainsFunc(w.loads, func(load *served) bool { return slices.Contains(load.result.Back, w.ID) }))
	if lost := b.wayless(); !back.value && len(lost) > 0 {
		back = s.doubt(lost...)
	}
	putTruth(s, "returns", &f.Returns, back)
	switch {
	case f.Ungrounded == nil:
		s.follow("returns_a", "ungrounded")
	case f.Role != "negative" || *f.Ungrounded:
		s.because("it is no grounded return", "returns_a")
	default:
		if amps, gaps := b.returned(w); len(gaps) > 0 {
			s.open("returns_a", gaps...)
		} else {
			f.ReturnsA = s.number(amps)
		}
	}
	percent(s, "returns_table5_pct", &f.ReturnsTable5Pct, operand{"returns_a", f.ReturnsA}, operand{"table5_a", f.Table5A})
}

// feeds sets the greatest share at which the feeds of a return's circuits are
// protected. The facts of all conductors are set before.
func (b *Builder) feeds(w *wire) {
	f := w.facts
	s := &f.Subject
	if f.ReturnsA == nil {
		s.follow("feeds_table5_pct", "returns_a")
		return
	}
	most := 0.0
	for _, load := range w.loads {
		for _, id := range load.result.Out {
			feed := b.doc.Conductors[id]
			if feed == nil || feed.Duty == "cranking" {
				continue
			}
			if feed.GuardTable5Pct == nil {
				s.followOf("feeds_table5_pct", &feed.Subject, "guard_table5_pct")
				return
			}
			most = max(most, *feed.GuardTable5Pct)
		}
	}
	f.FeedsTable5Pct = s.number(most)
}

// returned sums what loads can send back through one conductor.
func (b *Builder) returned(w *wire) (float64, []figure.Gap) {
	var chains [][]string
	var gaps []figure.Gap
	abreast := 0.0 // what loads without a device of their own can send
	none := true
	for _, load := range w.loads {
		result := load.result
		if cranks(b.record, result.Out) {
			continue
		}
		none = false
		if len(result.Devices) == 0 {
			gaps = append(gaps, figure.Because("no device limits what returns from "+load.ID))
		}
		for _, id := range result.Devices {
			if device := b.record.Component(id); !device.Rating.Is() {
				gaps = append(gaps, figure.Missing(device.Path+".rating"))
			}
		}
		if len(result.InSeries) > 0 {
			chains = append(chains, result.InSeries)
			continue
		}
		amps, missing := allowed(b.part(load.ID))
		abreast += amps
		gaps = append(gaps, missing...)
	}
	if none {
		gaps = append(gaps, figure.Because("no load returns through it in the record"))
	}
	if len(gaps) > 0 {
		return 0, gaps
	}
	sum := abreast + passed(b.record, chains)
	if from, known := b.delivered(w); known {
		sum = min(sum, from)
	}
	return quantity.Round(sum), nil
}

// allowed sums what guards the ungrounded conductors that land on a component.
func allowed(on *part) (sum float64, gaps []figure.Gap) {
	for _, w := range on.wires {
		if w.result.Ungrounded.Known && !w.result.Ungrounded.Value {
			continue
		}
		if !w.result.Guard.Known {
			gaps = append(gaps, orUnsolved(w.result.Guard.Gaps)...)
		}
		sum += w.result.Guard.Value
	}
	return sum, gaps
}

// delivered returns what a source lets out through its devices, if a conductor
// lands on its negative terminal.
func (b *Builder) delivered(w *wire) (float64, bool) {
	for _, end := range [...]struct {
		on   *part
		name string
	}{{w.from, w.From.Name}, {w.to, w.To.Name}} {
		if end.on != nil && end.name == "neg" && b.solved.Batteries[end.on.ID] != nil {
			sum, gaps := allowed(end.on)
			return sum, len(gaps) == 0 && sum > 0
		}
	}
	return 0, false
}

// passed returns what chains of devices let pass together: of chains that begin
// with the same device no more than its rating.
func passed(r *record.Record, chains [][]string) float64 {
	if len(chains) == 1 {
		least := math.Inf(1)
		for _, id := range chains[0] {
			least = min(least, r.Component(id).Rating.V.Base)
		}
		return least
	}
	var firsts []string
	behind := map[string][][]string{}
	for _, chain := range chains {
		if len(chain) == 0 {
			return math.Inf(1)
		}
		if behind[chain[0]] == nil {
			firsts = append(firsts, chain[0])
		}
		behind[chain[0]] = append(behind[chain[0]], chain[1:])
	}
	var sum float64
	for _, first := range firsts {
		sum += min(r.Component(first).Rating.V.Base, passed(r, behind[first]))
	}
	return sum
}

// cranks tells whether the record claims the whole way to a load as the feed of a
// cranking motor. A horn behind the battery's cranking cable is no such load.
func cranks(r *record.Record, way []string) bool {
	return len(way) > 0 && !slices.ContainsFunc(way, func(id string) bool {
		c := r.Conductor(id)
		return c == nil || !c.Duty.Is() || c.Duty.V != "cranking"
	})
}
