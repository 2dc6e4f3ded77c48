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
func outputs(r *record.Record, a *circuit.Analysis, conductors map[string]*Conductor) {
	for _, c := range r.Conductors {
		f := conductors[c.ID]
		source, feed := outputFeed(r, a, c)
		if source == nil {
			gap := figure.Because("it is the output of no charging source")
			for _, fact := range []string{"output_limits", "output_bare", "output_mm"} {
				f.open(fact, gap)
			}
			continue
		}
		f.OutputOf = source.Kind.V
		putTruth(&f.Subject, "output_limits", &f.OutputLimits, feed.SelfLimiting)
		f.OutputBare = ptr(feed.Bare)
		putFigure(&f.Subject, "output_mm", &f.OutputMM, longestRun(r, a, feed.Source, c.ID))
	}
}

// outputFeed returns the charging source on which a conductor begins, and how
// that source feeds it.
func outputFeed(r *record.Record, a *circuit.Analysis, c *record.Conductor) (*record.Component, *circuit.Feed) {
	result := a.Conductors[c.ID]
	if result == nil {
		return nil, nil
	}
	for i := range result.Feeds {
		feed := &result.Feeds[i]
		if feed.Source != c.From.String() && feed.Source != c.To.String() {
			continue
		}
		source := r.Component(owner(feed.Source))
		if source != nil && record.KindOf(source.Kind.V).Source && source.Kind.V != "battery" {
			return source, feed
		}
	}
	return nil, nil
}

// longestRun returns the greatest length from a source to a first device over
// the ways that begin with a conductor.
func longestRun(r *record.Record, a *circuit.Analysis, source, first string) figure.Figure {
	best := figure.Open(figure.Because("no fuse or breaker ends a way from " + source))
	for _, c := range r.Conductors {
		result := a.Conductors[c.ID]
		if result == nil {
			continue
		}
		for _, feed := range result.Feeds {
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
