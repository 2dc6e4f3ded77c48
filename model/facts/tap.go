package facts

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
func (b *Builder) tap(s *Subject, f *Conductor, w *wire) {
	var rating *float64
	for _, end := range [...]struct {
		on *part
		id string
	}{{w.from, w.fromID}, {w.to, w.toID}} {
		if end.on == nil || !end.on.kind.Protective || !end.on.Rating.Is() || f.GuardA == nil {
			continue
		}
		if v := &end.on.Rating.V.Base; *v < *f.GuardA && (rating == nil || *v < *rating) && b.alone(end.id) {
			rating = v
		}
	}
	f.Tap = rating != nil
	if rating == nil {
		s.because("no device at its end limits it", "tap_table5_pct", "tap_allowable_pct")
		return
	}
	limit := operand{value: rating}
	percent(s, "tap_table5_pct", &f.TapTable5Pct, limit, operand{"table5_a", f.Table5A})
	percent(s, "tap_allowable_pct", &f.TapAllowablePct, limit, operand{"allowable_a", f.AllowableA})
}

// alone tells whether only one conductor lands on a terminal.
func (b *Builder) alone(terminal string) bool {
	on := b.solved.Terminals[terminal]
	return on != nil && len(on.Landed) == 1
}
