package html

import (
	"cmp"
	"html/template"
	"io"
	"slices"
	"time"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/survey"
)

// Entry is what the index tells of one report.
type Entry struct {
	Link   string // name of its file; empty if there is none
	Path   string // of the record
	Vessel string
	Name   string // of the job
	Mark   string // worst severity, "open" or "clear"

	Faults, Waived, Open int // verdicts
	Answers              int // entries that somebody has to fill in
}

// Index is a list of reports.
type Index struct {
	Entries []Entry
	Faults  []verdict.Fault // of records that could not be used
	Rules   string          // digest
	Version string
	At      time.Time
}

type indexPage struct {
	Rows    []Entry
	Faults  []reports.Labelled
	Caution string
	Origin  []reports.Labelled
}

// Style is the style sheet, which stands in the page.
func (indexPage) Style() (template.CSS, error) { return styleSheet() }

// WriteIndex writes the page that lists reports, the worst first.
func WriteIndex(w io.Writer, x Index) error {
	p := indexPage{Caution: reports.Caution, Origin: []reports.Labelled{
		{Label: "Digest of the rules", Text: x.Rules}, {Label: "Made by", Text: "driploop " + x.Version},
	}}
	if !x.At.IsZero() {
		p.Origin = append(p.Origin, reports.Labelled{Label: "Made at", Text: x.At.Format(time.RFC3339)})
	}
	p.Rows = slices.Clone(x.Entries)
	slices.SortStableFunc(p.Rows, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(rank(b.Mark), rank(a.Mark)), cmp.Compare(b.Faults, a.Faults), cmp.Compare(b.Open, a.Open))
	})
	for _, f := range x.Faults {
		place := f.Path
		if f.At.Line > 0 {
			place = reports.Place(f.Path, f.At)
		}
		p.Faults = append(p.Faults, reports.Labelled{Label: reports.Plain(place), Text: reports.Plain(f.Says)})
	}
	return write(w, "index.tmpl", p)
}

// EntryOf is the entry of a report in the file of that name.
func EntryOf(link string, rec *verdict.Record, s *survey.Survey) Entry {
	return Entry{
		Link: link, Path: reports.Plain(rec.Path), Vessel: reports.Plain(rec.Vessel), Name: s.Name, Mark: s.Verdict.Mark,
		Faults: rec.Counts[verdict.Breach], Waived: rec.Counts[verdict.Waived], Open: rec.Counts[verdict.Undecided],
		Answers: s.Questions.Number,
	}
}

// rank orders marks, the mildest first.
func rank(mark string) int {
	return slices.Index([]string{"clear", "open", "notice", "caution", "warning", "danger"}, mark)
}
