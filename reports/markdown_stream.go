package reports

import (
	"io"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// markdownStream keeps of each record what a summary may tell of it. A summary that
// is to fit a comment tells of all records, or of the first few and counts the
// others: once it is sure that not all fit, no more is kept than that.
type markdownStream struct {
	*kept
	least int // bytes of the shortest summary that tells of all records until now
	next  int // the first record that is not counted yet
}

// Of the choices of detail, the shortest that tells of all records, and how many
// records the next one tells of.
const (
	markdownAll   = 3
	markdownFirst = 20
)

func openMarkdown(w io.Writer, head verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	return &markdownStream{kept: newKept(w, Format{Write: Markdown}, head, o), next: markdownFirst}
}

func (s *markdownStream) Render(rec *verdict.Record, src *Source) (Chunk, error) {
	if s.o.All {
		return s.kept.Render(rec, src)
	}
	told := *rec
	told.Verdicts = nil
	for _, v := range rec.Verdicts {
		if v.Outcome != verdict.Met && v.Outcome != verdict.NotApplicable {
			told.Verdicts = append(told.Verdicts, v)
		}
	}
	one := &markdown{run: &verdict.Run{Records: []verdict.Record{told}}, o: s.o, detail: details()[markdownAll]}
	one.table()
	r := &markdownRecord{markdown: one, rec: &told, src: src}
	r.write()
	c, err := s.kept.Render(&told, src)
	c.least = one.Len() - markdownHead
	return c, err
}

// markdownHead is what a table takes beside its rows, in bytes.
const markdownHead = len("| record | job | danger | warning | caution | notice | undecided | waived | met |\n|---|---|--:|--:|--:|--:|--:|--:|--:|\n\n")

func (s *markdownStream) Add(c Chunk) error {
	if err := s.kept.Add(c); err != nil || s.o.All {
		return err
	}
	if s.least += c.least; s.least <= markdownRoom {
		return nil
	}
	for ; s.next < len(s.run.Records); s.next++ {
		s.count(&s.run.Records[s.next])
	}
	return nil
}

// count keeps of a record what the table and the first line count.
func (s *markdownStream) count(rec *verdict.Record) {
	delete(s.o.Sources, rec.Path)
	var breaches []verdict.Verdict
	for _, v := range rec.Verdicts {
		if v.Outcome == verdict.Breach {
			breaches = append(breaches, verdict.Verdict{Rule: v.Rule, Outcome: v.Outcome, Severity: v.Severity})
		}
	}
	// What was read of a record is part of its text, which goes with all of it.
	*rec = verdict.Record{
		Path: rec.Path, Job: strings.Clone(rec.Job), Counts: rec.Counts, Verdicts: breaches,
		Known: rec.Known, KnownOpen: rec.KnownOpen,
	}
}
