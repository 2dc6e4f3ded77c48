package reports

import (
	"fmt"
	"io"

	"driploop/model/verdict"
)

// Stream renders a run record by record, so that a run of any length takes no
// more memory than its longest record.
type Stream interface {
	// Render renders one record by itself; the source may be nil. Several
	// goroutines may render at once.
	Render(rec *verdict.Record, src *Source) (Chunk, error)
	// Add writes what was rendered, in the order of the report.
	Add(c Chunk) error
	// Close renders what is told of the run as a whole: its faults and notes. The
	// records of rest are not looked at.
	Close(rest *verdict.Run) error
}

// Chunk is one record as a format renders it.
type Chunk struct {
	Text   []byte
	Counts verdict.Counts // of all its verdicts

	suite *junitSuite     // its counts, of JUnit
	least int             // bytes that a summary takes for it at least
	rec   *verdict.Record // of a format that needs the whole run
	src   *Source
}

// Open begins to render a run in the format of that name. The head says which
// program and which rules judge. A format that has to know all records before it
// writes the first keeps them until the stream is closed.
func Open(w io.Writer, format string, head verdict.Run, o Options) (Stream, error) {
	for _, f := range Formats() {
		switch {
		case f.Name != format:
		case f.Open != nil:
			return f.Open(w, head, o), nil
		default:
			return newKept(w, f, head, o), nil
		}
	}
	return nil, fmt.Errorf("%q is no format; use %s", format, either(FormatNames()))
}

// Write renders the run in the format of that name.
func Write(w io.Writer, format string, run *verdict.Run, o Options) error {
	s, err := Open(w, format, *run, o)
	if err != nil {
		return err
	}
	return feed(s, run, o)
}

// feed renders a whole run by a stream.
func feed(s Stream, run *verdict.Run, o Options) error {
	for i := range run.Records {
		c, err := s.Render(&run.Records[i], o.Sources[run.Records[i].Path])
		if err == nil {
			err = s.Add(c)
		}
		if err != nil {
			return err
		}
	}
	return s.Close(run)
}

// kept is the stream of a format that needs the whole run.
type kept struct {
	w      io.Writer
	format Format
	run    verdict.Run
	o      Options
}

func newKept(w io.Writer, f Format, head verdict.Run, o Options) *kept {
	k := &kept{w: w, format: f, run: head, o: o}
	k.run.Records = nil
	if k.o.Sources == nil {
		k.o.Sources = map[string]*Source{}
	}
	return k
}

func (*kept) Render(rec *verdict.Record, src *Source) (Chunk, error) {
	return Chunk{Counts: rec.Counts, rec: rec, src: src}, nil
}

func (k *kept) Add(c Chunk) error {
	k.run.Records = append(k.run.Records, *c.rec)
	if c.src != nil {
		k.o.Sources[c.rec.Path] = c.src
	}
	return nil
}

func (k *kept) Close(rest *verdict.Run) error {
	k.run.Faults, k.run.Notes = rest.Faults, rest.Notes
	return k.format.Write(k.w, &k.run, k.o)
}
