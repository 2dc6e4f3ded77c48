package facts

import (
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Tapping is of a conductor that leads to a fuse or breaker and to nothing else:
// that device limits it from the far end, where the one ahead is larger.
type Tapping struct {
	Tap bool `json:"tap"`
	// The rating of that device against what the conductor carries.
	TapTable5Pct    *float64 `json:"tap_table5_pct,omitempty"`
	TapAllowablePct *float64 `json:"tap_allowable_pct,omitempty"`
}

// tap sets whether a conductor is a tap; what guards it and what it carries is
// set before. A device that is rated below that guard does not stand ahead, and
// where no other conductor lands on its terminal all that flows passes it.
func tap(s *Subject, f *Conductor, r *record.Record, c *record.Conductor) {
	var rating *float64
	for _, at := range []record.Terminal{c.From, c.To} {
		on := r.Component(at.Component)
		if on == nil || !record.KindOf(on.Kind.V).Protective || !on.Rating.Is() || !alone(r, at) || f.GuardA == nil {
			continue
		}
		if v := on.Rating.V.Base; v < *f.GuardA && (rating == nil || v < *rating) {
			rating = &v
		}
	}
	f.Tap = rating != nil
	for _, share := range []struct {
		name, of string
		into     **float64
		carries  *float64
	}{
		{"tap_table5_pct", "table5_a", &f.TapTable5Pct, f.Table5A},
		{"tap_allowable_pct", "allowable_a", &f.TapAllowablePct, f.AllowableA},
	} {
		switch {
		case rating == nil:
			s.open(share.name, figure.Because("no device at its end limits it"))
		case share.carries == nil:
			s.open(share.name, s.Open.Of(share.of)...)
		default:
			*share.into = ptr(quantity.Round(100 * *rating / *share.carries))
		}
	}
}

// alone tells whether only one conductor lands on a terminal.
func alone(r *record.Record, at record.Terminal) bool {
	n := 0
	for _, c := range r.Conductors {
		for _, t := range []record.Terminal{c.From, c.To} {
			if t.Component == at.Component && t.Name == at.Name {
				n++
			}
		}
	}
	return n == 1
}
