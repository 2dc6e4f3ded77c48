package reports

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// Text renders a run for a person at a terminal: of each record first what to
// fix, the worst first, then what could not be decided and which entries would
// let it be, what was waived, and a count that adds up.
func Text(w io.Writer, run *verdict.Run, o Options) error {
	return feed(openText(w, *run, o), run, o)
}

// textStream writes a run for a person, record by record.
type textStream struct {
	*page
	o       Options
	records int
	total   verdict.Counts
}

func openText(w io.Writer, _ verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	return &textStream{page: newPage(w, o), o: o, total: verdict.Counts{}}
}

func (s *textStream) Render(rec *verdict.Record, src *Source) (Chunk, error) {
	var text bytes.Buffer
	t := &recordText{page: newPage(&text, s.o), rec: rec, o: s.o, src: src}
	t.write()
	err := t.close()
	return Chunk{Text: text.Bytes(), Counts: rec.Counts}, err
}

func (s *textStream) Add(c Chunk) error {
	if s.records > 0 {
		s.blank()
		s.hang(0, 0, in(faint, strings.Repeat("═", s.width)))
		s.blank()
	}
	s.records++
	for outcome, n := range c.Counts {
		s.total[outcome] += n
	}
	_, _ = s.out.Write(c.Text) // the writer keeps its first error
	return s.close()
}

func (s *textStream) Close(rest *verdict.Run) error {
	if len(rest.Faults) > 0 {
		writeFaults(s.page, rest.Faults, s.o, s.records > 0)
	}
	if s.records+len(rest.Faults) > 1 && s.records > 0 {
		s.writeTotal(rest.Faults)
	}
	writeNotes(s.page, rest.Notes)
	if s.records > 0 {
		s.blank()
		s.hang(0, 0, txt(Caution))
	}
	return s.close()
}

// writeNotes writes what a reader has to know of the run as a whole.
func writeNotes(p *page, notes []string) {
	if len(notes) > 0 {
		p.blank()
	}
	for _, note := range notes {
		p.entry(in(strong, "note"), txt(note))
	}
}

// recordText writes the part of one record.
type recordText struct {
	*page
	rec *verdict.Record
	src *Source
	o   Options
}

func (t *recordText) write() {
	t.head()
	breaches := t.outcome(verdict.Breach)
	open := t.outcome(verdict.Undecided)
	waived := t.outcome(verdict.Waived)
	if len(breaches) > 0 {
		t.breaches(breaches)
	} else {
		t.blank()
		t.noBreach(len(open) > 0, len(waived) > 0)
	}
	if len(open) > 0 {
		t.undecided(open)
	}
	if len(waived) > 0 {
		t.waived(waived)
	}
	if t.o.All {
		t.met(t.outcome(verdict.Met))
		t.notApplicable(t.outcome(verdict.NotApplicable))
		t.byRule()
	}
	t.cured()
	t.blank()
	t.known()
	t.entry(in(strong, "verdicts"), txt(countText(t.rec.Counts)))
}

// noBreach says what it means that no breach is listed.
func (t *recordText) noBreach(open, waived bool) {
	if t.rec.Since != "" {
		t.hang(0, 0, in(strong, "No breach that is new or worse."))
		return
	}
	if len(t.rec.Known) > 0 {
		t.hang(0, 0, in(strong, "No breach but those of the baseline."))
		return
	}
	by := " by the rules of " + sets(t.rec.Practice) + "."
	switch {
	case t.rec.Counts[verdict.Met] == 0 && !open && !waived:
		t.hang(0, 0, in(strong, "Nothing was judged:"), txt(" no rule of "+sets(t.rec.Practice)+" applies to what the record holds."))
	case t.rec.Counts[verdict.Met] == 0 && open:
		t.hang(0, 0, in(strong, "No breach found, but nothing could be shown to be in order either"), txt(by))
	case open:
		t.hang(0, 0, in(strong, "No breach found, as far as it could be decided"), txt(by))
	case waived:
		t.hang(0, 0, in(strong, "No breach found but those that are waived"), txt(by))
	default:
		t.hang(0, 0, in(strong, "No breach found, and nothing left undecided"), txt(by))
	}
}

func (t *recordText) head() {
	t.entry(in(faint, "record"), in(strong, t.rec.Path))
	job := t.rec.Title
	if t.rec.Job != "" {
		job = strings.TrimSuffix(t.rec.Job+", "+job, ", ")
	}
	if job != "" {
		t.entry(in(faint, "job"), txt(job))
	}
	if t.rec.Vessel != "" {
		t.entry(in(faint, "vessel"), txt(t.rec.Vessel))
	}
	t.entry(in(faint, "judged"), txt("by "+sets(t.rec.Practice)))
	if t.rec.Since != "" {
		t.entry(in(faint, "since"), txt(t.rec.Since))
	}
}

// outcome returns the verdicts of one outcome, in the order of the record.
func (t *recordText) outcome(o verdict.Outcome) []*verdict.Verdict {
	var some []*verdict.Verdict
	for i := range t.rec.Verdicts {
		if v := &t.rec.Verdicts[i]; v.Outcome == o {
			some = append(some, v)
		}
	}
	return some
}

// say fills a template of the verdict in the reader's units.
func (t *recordText) say(v *verdict.Verdict, template string) string {
	return v.Text(flow(template), t.show(v))
}

// show prints the figures of a verdict so that number and unit stay on one line.
func (t *recordText) show(v *verdict.Verdict) func(verdict.Figure) string {
	show := v.Show(t.o.Units)
	return func(f verdict.Figure) string {
		if f.Text != "" {
			return show(f)
		}
		return glued(show(f))
	}
}

// glued keeps the number and unit of a quantity on one line.
func glued(text string) string {
	number, bracket, two := strings.Cut(text, " (")
	number = strings.ReplaceAll(number, " ", string(glue))
	if !two {
		return number
	}
	return number + " (" + strings.ReplaceAll(bracket, " ", string(glue))
}

// where is the place of a verdict: file, line and column.
func (t *recordText) where(v *verdict.Verdict) string {
	return fmt.Sprintf("%s:%d:%d", t.rec.Path, v.At.Start.Line, v.At.Start.Column)
}

// sets lists the practice sets in words.
func sets(names []string) string {
	if len(names) == 0 {
		return "no practice set"
	}
	return enumerate(names)
}

// enumerate lists words as a sentence does.
func enumerate(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// plural gives a count with its noun; the plural adds an s.
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
