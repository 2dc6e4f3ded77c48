package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Opening is which side of a circuit a fuse, breaker or switch opens.
type Opening struct {
	// Opener: a fuse, breaker or switch. OnGrounded: it stands in a grounded
	// conductor. Opens is what the record says that it opens: ungrounded, grounded
	// or both.
	Opener     bool    `json:"opener"`
	OnGrounded *bool   `json:"on_grounded,omitempty"`
	Opens      *string `json:"opens,omitempty"`
}

func opening(s *Subject, f *Opening, a *circuit.Analysis, c *record.Component) {
	f.Opener = slices.Contains([]string{"fuse", "breaker", "switch"}, c.Kind.V)
	if !f.Opener {
		gap := figure.Because("it is no fuse, breaker or switch")
		s.open("on_grounded", gap)
		s.open("opens", gap)
		return
	}
	put(s, "opens", &f.Opens, &c.Opens, "opens")
	var grounded []figure.Truth
	names, _ := record.TerminalsOf(c)
	for _, name := range names {
		if t := a.Terminals[c.ID+"."+name]; t != nil && name != record.CaseTerminal {
			grounded = append(grounded, negated(t.Ungrounded))
		}
	}
	if len(grounded) == 0 {
		s.open("on_grounded", figure.Because("nothing is joined by it in the record"))
		return
	}
	putTruth(s, "on_grounded", &f.OnGrounded, anyOf(grounded...))
}
