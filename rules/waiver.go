package rules

import (
	"strings"
	"time"

	"driploop/model/facts"
	"driploop/model/figure"
	"driploop/model/record"
	"driploop/model/verdict"
)

// waivers are the valid waivers of a record.
type waivers []*record.Waiver

// validWaivers returns the waivers that let a breach stand today: rule, place,
// reason, author and a date that has not passed.
func validWaivers(r *record.Record, today time.Time) waivers {
	var valid waivers
	day := today.Format(time.DateOnly)
	for _, w := range r.Waivers {
		until, dated := w.Until.Get()
		if w.Rule.Is() && w.Subject.Is() && w.Reason.Is() && w.By.Is() && dated && until.Format(time.DateOnly) >= day &&
			strings.TrimSpace(w.Reason.V) != "" && strings.TrimSpace(w.By.V) != "" {
			valid = append(valid, w)
		}
	}
	return valid
}

// of returns the waiver of a rule at a subject or at what the subject is a part
// of, or nil.
func (all waivers) of(rule, subject string) *verdict.Waiver {
	for _, w := range all {
		if w.Rule.V == rule && within(subject, w.Subject.V) {
			return &verdict.Waiver{By: w.By.V, Reason: w.Reason.V, Until: w.Until.V.Format(time.DateOnly), Path: w.Path, At: w.At}
		}
	}
	return nil
}

// within tells whether a path is another or lies below it.
func within(path, above string) bool {
	rest, ok := strings.CutPrefix(path, above)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// onWaivers is the collection of the waivers themselves.
const onWaivers = "waivers"

// waived tells, by id, whether each waiver of the document waives a breach, or
// would if it were valid.
func (w *writer) waived(doc *facts.Document) map[string]figure.Truth {
	all, listed := make(map[string]figure.Truth, len(doc.Waivers)), w.inOrder()
	for id, waiver := range doc.Waivers {
		if waiver.Rule == nil || waiver.At == nil {
			all[id] = figure.OpenTruth(figure.Missing(waiver.Path))
			continue
		}
		all[id] = breachedIn(listed, *waiver.Rule, *waiver.At)
	}
	return all
}

// breachedIn tells whether a rule is breached at a place or at a part of it.
func breachedIn(listed []*listing, rule, at string) figure.Truth {
	found := figure.False()
	for _, s := range listed {
		if s.rule.meta.ID != rule || !within(s.base.Path, at) {
			continue
		}
		switch s.outcome {
		case verdict.Breach:
			return figure.True()
		case verdict.Undecided:
			found = figure.OpenTruth(figure.Because(rule + " is undecided at " + s.base.Path))
		}
	}
	return found
}
