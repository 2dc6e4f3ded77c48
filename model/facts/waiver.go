package facts

import (
	"maps"
	"slices"
	"strings"
	"time"

	"driploop/model/figure"
	"driploop/model/record"
)

// Waiver is the facts of one waiver as written.
type Waiver struct {
	Subject
	Rule   *string `json:"rule,omitempty"`
	At     *string `json:"at,omitempty"`
	Reason *string `json:"reason,omitempty"`
	By     *string `json:"by,omitempty"`
	Until  *string `json:"until,omitempty"`
	// Lacks lists what it is written without: reason, author, date.
	Lacks []string `json:"lacks"`
	Dated bool     `json:"dated"` // it says until when it holds
	// Waives: a breach of its rule was found at its place. Only judging the record
	// tells.
	Waives *bool `json:"waives,omitempty"`
}

func (b *Builder) waiver(w *record.Waiver) *Waiver {
	f := b.made.waivers.take()
	f.Subject, f.Lacks, f.Dated = b.subject(w.Path), []string{}, w.Until.Is()
	s := &f.Subject
	put(s, "rule", &f.Rule, &w.Rule, "rule")
	put(s, "at", &f.At, &w.Subject, "at")
	put(s, "reason", &f.Reason, &w.Reason, "reason")
	put(s, "by", &f.By, &w.By, "by")
	putDate(s, "until", &f.Until, &w.Until, "until")
	for _, part := range []struct {
		name  string
		there bool
	}{{"reason", said(w.Reason)}, {"author", said(w.By)}, {"date", f.Dated}} {
		if !part.there {
			f.Lacks = append(f.Lacks, part.name)
		}
	}
	s.because("the record has not been judged", "waives")
	return f
}

// said tells whether an entry holds more than blanks.
func said(v record.Text) bool { return strings.TrimSpace(v.V) != "" && v.Is() }

// On returns the document as it stands on a day: a copy whose job knows that
// day.
func (d *Document) On(day time.Time) *Document {
	if d.Job == nil {
		return d
	}
	copied, job := *d, *d.Job
	today := day.Format(time.DateOnly)
	job.Today = &today
	job.Open = job.Open.without("today")
	copied.Job = &job
	return &copied
}

// Judged returns the document with what judging the record told of its waivers:
// by id, whether each waives a breach, or what keeps that from being known.
func (d *Document) Judged(waives map[string]figure.Truth) *Document {
	copied := *d
	copied.Waivers = map[string]*Waiver{}
	for _, id := range slices.Sorted(maps.Keys(d.Waivers)) {
		waiver := *d.Waivers[id]
		waiver.Open = waiver.Open.without("waives")
		told := waives[id]
		putSolved(&waiver.Subject, "waives", &waiver.Waives, &told)
		copied.Waivers[id] = &waiver
	}
	return &copied
}
