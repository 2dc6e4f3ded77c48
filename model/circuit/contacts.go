package circuit

import (
	"driploop/model/figure"
	"driploop/model/record"
)

// ContactResult is what the circuit makes of one contact: a link of a switch,
// relay, controller or connector, or the one path of such a component without
// links.
type ContactResult struct {
	Path    string        // place of the link in the record, or of the component
	Link    *record.Link  // nil without links
	Through figure.Figure // A, greatest over all cases but starting and stall
	// Surge is the same over starting and stall; open while such a current of a
	// load that draws through the contact is not recorded.
	Surge figure.Figure
	Loads []string // whose own current passes it
}

// setContacts fills in what flows through each contact.
func (a *analysis) setContacts() {
	through := a.loadsThrough()
	for i := range a.net.branches {
		b := &a.net.branches[i]
		if b.kind != contact {
			continue
		}
		r := &ContactResult{Path: b.path, Link: linkOf(b), Loads: through[i]}
		r.Through, _ = a.peaks.running[i].figure("greatest current through the contact, starting and stall aside")
		r.Surge, _ = a.peaks.surge[i].figure("greatest current through the contact while starting or stalled")
		if gaps := a.unstated[i]; len(gaps) > 0 {
			r.Surge = figure.Open(moreGaps(gaps, r.Surge.Gaps)...)
		}
		to := a.result.Components[b.id]
		to.Contacts = append(to.Contacts, r)
	}
}

// linkOf returns the link that a branch stands for, nil if it is its component's
// one path.
func linkOf(b *branch) *record.Link {
	for _, l := range b.comp.Links {
		if l != nil && l.Path == b.path {
			return l
		}
	}
	return nil
}
