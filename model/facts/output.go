package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Output is the conductors on the output of a charging source.
type Output struct {
	// OutputOf is the kind of charging source whose ungrounded terminal the
	// conductor lands on: alternator, charger, solar or generator; else empty.
	OutputOf string `json:"output_of"`
	// OutputLimits: that source cannot give more than its rated current.
	OutputLimits *bool `json:"output_limits,omitempty"`
	// OutputBare: a way from that source reaches a battery, load or end without a
	// device. OutputMM is the greatest length from it to the first device.
	OutputBare *bool    `json:"output_bare,omitempty"`
	OutputMM   *float64 `json:"output_mm,omitempty"`
}

// outputs sets which conductors are outputs of charging sources.
func (b *Builder) outputs() {
	for i := range b.wires {
		w := &b.wires[i]
		f := w.facts
		source, feed := b.outputFeed(w)
		if source == nil {
			f.because("it is the output of no charging source", "output_limits", "output_bare", "output_mm")
			continue
		}
		f.OutputOf = source.Kind.V
		putSolved(&f.Subject, "output_limits", &f.OutputLimits, &feed.SelfLimiting)
		f.OutputBare = f.flag(feed.Bare)
		putComputed(&f.Subject, "output_mm", &f.OutputMM, b.longestRun(feed.Source, w.ID))
	}
}

// outputFeed returns the charging source on which a conductor begins, and how
// that source feeds it.
func (b *Builder) outputFeed(w *wire) (*part, *circuit.Feed) {
	for i := range w.result.Feeds {
		feed := &w.result.Feeds[i]
		if feed.Source != w.fromID && feed.Source != w.toID {
			continue
		}
		source := b.part(owner(feed.Source))
		if source != nil && record.KindOf(source.Kind.V).Source && source.Kind.V != "battery" {
			return source, feed
		}
	}
	return nil, nil
}

// longestRun returns the greatest length from a source to a first device over
// the ways that begin with a conductor.
func (b *Builder) longestRun(source, first string) figure.Figure {
	best := figure.Open(figure.Because("no fuse or breaker ends a way from " + source))
	for i := range b.wires {
		feeds := b.wires[i].result.Feeds
		for k := range feeds {
			feed := &feeds[k]
			if feed.Source != source || feed.EndsAtDevice == "" || len(feed.Via) == 0 || feed.Via[0] != first {
				continue
			}
			if !feed.Length.Known {
				return feed.Length
			}
			if !best.Known || feed.Length.Value > best.Value {
				best = feed.Length
			}
		}
	}
	return best
}
