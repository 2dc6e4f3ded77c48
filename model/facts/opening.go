package facts

import "driploop/model/record"

// Opening is which side of a circuit a fuse, breaker or switch opens.
type Opening struct {
	// Opener: a fuse, breaker or switch. OnGrounded: it stands in a grounded
	// conductor. Opens is what the record says that it opens: ungrounded, grounded
	// or both.
	Opener     bool    `json:"opener"`
	OnGrounded *bool   `json:"on_grounded,omitempty"`
	Opens      *string `json:"opens,omitempty"`
}

func (b *Builder) opening(s *Subject, f *Opening, c *record.Component) {
	f.Opener = c.Kind.V == "fuse" || c.Kind.V == "breaker" || c.Kind.V == "switch"
	if !f.Opener {
		s.because("it is no fuse, breaker or switch", "on_grounded", "opens")
		return
	}
	put(s, "opens", &f.Opens, &c.Opens, "opens")
	var few [4]truth
	grounded := few[:0]
	names, _ := record.TerminalsOf(c)
	for _, name := range names {
		if t := b.terminal(c.ID, name); t != nil && name != record.CaseTerminal {
			grounded = append(grounded, negated(s.solved(&t.Ungrounded)))
		}
	}
	if len(grounded) == 0 {
		s.because("nothing is joined by it in the record", "on_grounded")
		return
	}
	putTruth(s, "on_grounded", &f.OnGrounded, s.anyOf(grounded...))
}
