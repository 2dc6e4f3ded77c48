package reports

import (
	"bufio"
	"io"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// jsonStream writes a run for programs, record by record. The text is that of
// one tree written at once.
type jsonStream struct {
	w       *bufio.Writer
	o       Options
	head    verdict.Run
	records int
	err     error
}

// openJSON renders a run for programs. Without Options.All it leaves out verdicts
// that are met or not applicable; they stay in the counts.
func openJSON(w io.Writer, head verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	return &jsonStream{w: bufio.NewWriterSize(w, 64<<10), o: o, head: head}
}

func (s *jsonStream) Render(rec *verdict.Record, _ *Source) (Chunk, error) {
	text, err := jsonText(recordJSON(rec, s.o), indented("    "))
	return Chunk{Text: text, Counts: rec.Counts}, err
}

func (s *jsonStream) Add(c Chunk) error {
	s.next()
	s.bytes(c.Text)
	return s.err
}

// next writes what stands before a record.
func (s *jsonStream) next() {
	s.open()
	if s.records > 0 {
		s.raw(",")
	}
	s.raw("\n    ")
	s.records++
}

func (s *jsonStream) Close(rest *verdict.Run) error {
	s.open()
	if s.records > 0 {
		s.raw("\n  ")
	}
	s.raw("],\n")
	s.entry("errors", errorsJSON(rest.Faults))
	if len(rest.Notes) > 0 {
		s.raw(",\n")
		s.entry("notes", rest.Notes)
	}
	s.raw("\n}\n")
	if s.err == nil {
		s.err = s.w.Flush()
	}
	return s.err
}

// open writes what stands before the first record.
func (s *jsonStream) open() {
	if s.records > 0 {
		return
	}
	s.raw("{\n")
	s.entry("format", JSONFormat)
	s.raw(",\n")
	s.entry("tool", jsonTool{Version: s.head.Version, Rules: s.head.Rules})
	if s.head.Part != "" {
		s.raw(",\n")
		s.entry("part", s.head.Part)
	}
	s.raw(",\n  \"records\": [")
}

// entry writes one entry of the whole.
func (s *jsonStream) entry(name string, tree any) {
	s.raw("  \"" + name + "\": ")
	s.tree(tree, "  ")
}

func (s *jsonStream) tree(tree any, prefix string) {
	text, err := jsonText(tree, indented(prefix))
	if s.err == nil {
		s.err = err
	}
	s.bytes(text)
}

func (s *jsonStream) bytes(text []byte) {
	if s.err == nil {
		_, s.err = s.w.Write(text)
	}
}

func (s *jsonStream) raw(text string) {
	if s.err == nil {
		_, s.err = s.w.WriteString(text)
	}
}

// Joined writes a run whose records are there as JSON already.
type Joined struct{ s *jsonStream }

// JoinJSON begins to write such a run in the JSON format.
func JoinJSON(w io.Writer, head verdict.Run) *Joined {
	return &Joined{&jsonStream{w: bufio.NewWriterSize(w, 64<<10), head: head}}
}

// Add writes a record as the JSON format has it, byte by byte.
func (j *Joined) Add(record []byte) {
	j.s.next()
	j.s.bytes(record)
}

// Close writes what is told of the run as a whole.
func (j *Joined) Close(rest *verdict.Run) error { return j.s.Close(rest) }
