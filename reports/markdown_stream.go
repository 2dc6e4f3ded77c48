package reports

import (
	"io"
	"sync/atomic"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// markdownStream writes a summary that is to fit a comment. Which detail fits is
// known when all records are: until then each is rendered in every detail that may
// still fit, and only texts are kept, no more of them than a comment holds.
type markdownStream struct {
	w       io.Writer
	o       Options
	run     verdict.Run
	counts  markdownCounts
	choices []*markdownChoice
}

// markdownChoice is a summary in one detail, while it may still fit.
type markdownChoice struct {
	detail
	last   bool // the one that is taken if no other fits
	all    bool // whatever its length
	rows   spool
	listed int // rows
	parts  spool
	told   int // records, of which some had nothing to tell

	closed atomic.Bool // takes no more parts
	failed bool        // does not fit
}

// openMarkdown renders a run as a summary for a merge request: a line on what was
// found, counts by record, what to fix first, what is open. Long parts are folded,
// and left out where all would not fit into one comment, which is said.
func openMarkdown(w io.Writer, head verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	s := &markdownStream{w: w, o: o, run: head, counts: markdownCounts{breaches: map[verdict.Severity]int{}}}
	choices := details()
	if o.All {
		choices = choices[:1]
	}
	for i, d := range choices {
		c := &markdownChoice{detail: d, last: i == len(choices)-1, all: o.All}
		c.closed.Store(d.records == 0)
		s.choices = append(s.choices, c)
	}
	return s
}

// markdownPart is what a summary tells of one record.
type markdownPart struct {
	row      []byte
	texts    [][]byte // by detail; nil where that takes no more
	open     int
	breaches map[verdict.Severity]int
}

func (s *markdownStream) Render(rec *verdict.Record, src *Source) (Chunk, error) {
	part := &markdownPart{texts: make([][]byte, len(s.choices)), open: rec.Counts[verdict.Undecided], breaches: countBreaches(rec)}
	part.row = markdownRow(rec, part.breaches)
	for i, c := range s.choices {
		if c.closed.Load() {
			continue
		}
		r := &markdownRecord{markdown: &markdown{o: s.o, detail: c.detail}, rec: rec, src: src}
		r.write()
		part.texts[i] = r.Bytes()
	}
	return Chunk{Counts: rec.Counts, part: part}, nil
}

func (s *markdownStream) Add(c Chunk) error {
	s.counts.records++
	s.counts.open += c.part.open
	for severity, n := range c.part.breaches {
		s.counts.breaches[severity] += n
	}
	for i, choice := range s.choices {
		if err := choice.add(c.part.row, c.part.texts[i]); err != nil {
			return err
		}
	}
	return nil
}

// add takes what may be told of a record, if there is room.
func (c *markdownChoice) add(row, text []byte) error {
	if c.failed {
		return nil
	}
	if c.listed < c.detail.rows && (!c.last || c.all || c.rows.size+int64(len(row)) <= markdownRows) {
		c.listed++
		if err := c.rows.write(row); err != nil {
			return err
		}
	}
	if c.told < c.records {
		c.told++
		if err := c.parts.write(text); err != nil {
			return err
		}
	}
	if !c.all && !c.last && c.rows.size+c.parts.size > markdownRoom {
		c.drop()
	}
	if c.told == c.records {
		c.closed.Store(true)
	}
	return nil
}

// markdownRows is how long the table of the shortest summary may be, in bytes.
const markdownRows = markdownRoom * 5 / 6

// drop forgets a summary that does not fit.
func (c *markdownChoice) drop() {
	c.closed.Store(true)
	c.failed = true
	c.close()
	c.rows, c.parts = spool{}, spool{}
}

func (c *markdownChoice) close() {
	c.rows.close()
	c.parts.close()
}

// Close writes the fullest summary that fits.
func (s *markdownStream) Close(rest *verdict.Run) error {
	defer func() {
		for _, c := range s.choices {
			c.close()
		}
	}()
	for i, c := range s.choices {
		if c.failed {
			continue
		}
		f := s.frame(c, rest, i > 0)
		size := int64(len(f.head)+len(f.between)+len(f.foot)) + c.rows.size + c.parts.size
		if size <= markdownRoom || c.last {
			return c.write(s.w, f)
		}
	}
	return nil
}

// markdownFrame is what stands before, between and after the rows of the table
// and the parts of the records.
type markdownFrame struct{ head, between, foot []byte }

func (s *markdownStream) frame(c *markdownChoice, rest *verdict.Run, shortened bool) markdownFrame {
	var head, between, foot markdown
	for _, m := range []*markdown{&head, &between, &foot} {
		m.o, m.detail = s.o, c.detail
	}
	head.line("## %s\n", s.counts.conclusion(rest.Faults))
	if s.counts.records > 0 {
		head.WriteString(markdownHead)
		if left := s.counts.records - c.listed; left > 0 {
			between.line("\n%s are not listed.", plural(left, "more record"))
		}
		between.line("")
	}
	if left := s.counts.records - c.told; left > 0 {
		foot.line("%s are not told of here.\n", plural(left, "more record"))
	}
	foot.faults(rest.Faults)
	foot.foot(&s.run, rest.Notes, shortened)
	return markdownFrame{head.Bytes(), between.Bytes(), foot.Bytes()}
}

func (c *markdownChoice) write(w io.Writer, f markdownFrame) error {
	for _, part := range []struct {
		text  []byte
		spool *spool
	}{{f.head, &c.rows}, {f.between, &c.parts}, {f.foot, nil}} {
		if _, err := w.Write(part.text); err != nil {
			return err
		}
		if part.spool == nil {
			continue
		}
		if err := part.spool.copyTo(w, part.spool.size); err != nil {
			return err
		}
	}
	return nil
}
