package facts

import (
	"driploop/model/record"
)

// Casing is what a component is marked with, how cables enter it and whether its
// case is bonded.
type Casing struct {
	Label *string `json:"label,omitempty"` // as marked on it or beside it; none if nothing is
	Entry *string `json:"entry,omitempty"` // where cables enter it: below, side, top
	// CaseBonded: recorded as bonded or grounded, or a bonding conductor lands on its
	// case.
	CaseBonded *bool `json:"case_bonded,omitempty"`
}

func (b *Builder) casing(s *Subject, f *Casing, c *record.Component) {
	put(s, "label", &f.Label, &c.Label, "label")
	put(s, "entry", &f.Entry, &c.EntrySide, "entry")
	landed := settled(b.terminal(c.ID, record.CaseTerminal) != nil)
	putTruth(s, "case_bonded", &f.CaseBonded, s.anyOf(s.truthOf(&c.Bonded, s.own("bonded")), landed))
}
