package reports

import (
	"fmt"
	"strings"

	"driploop/model/verdict"
)

// cured lists what stood in the revision that the record is compared with, and
// stands no longer.
func (t *recordText) cured() {
	if len(t.rec.Cured) == 0 {
		return
	}
	t.heading("CURED", verdictCount(len(t.rec.Cured)))
	for _, c := range t.rec.Cured {
		was := string(c.Outcome)
		if c.Outcome == verdict.Breach {
			was = c.Severity.String()
		}
		t.hang(0, 2, in(strong, c.Rule.ID+":"), txt(" "+c.Subject+", was "+was))
	}
}

// known counts what a baseline keeps from the list.
func (t *recordText) known() {
	var parts []string
	if breaches := listSeverities(t.rec.Known); breaches != "" {
		parts = append(parts, breaches)
	}
	if t.rec.KnownOpen > 0 {
		parts = append(parts, fmt.Sprintf("%d undecided", t.rec.KnownOpen))
	}
	if len(parts) > 0 {
		t.entry(in(strong, "baseline"), txt(strings.Join(parts, ", ")+" stood before and are not listed"))
	}
}
