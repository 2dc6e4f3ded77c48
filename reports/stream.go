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
	part  *markdownPart   // of a summary
	rec   *verdict.Record // of SARIF, which numbers what records share
	src   *Source
}

// Open begins to render a run in the format of that name. The head says which
// program and which rules judge.
func Open(w io.Writer, format string, head verdict.Run, o Options) (Stream, error) {
	for _, f := range Formats() {
		if f.Name == format {
			return f.Open(w, head, o), nil
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
