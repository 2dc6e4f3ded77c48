package reports

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// junitStream renders suites where their records are judged. The totals of the run
// stand ahead of them, so that the suites wait in a spool.
type junitStream struct {
	w     io.Writer
	o     Options
	run   verdict.Run
	spool spool
	ends  []junitEnd
	total junitRun
}

// junitEnd is where a suite in the spool takes the notes of the run, and where it
// ends.
type junitEnd struct{ notes, suite int64 }

// openJUnit renders a run for consoles that show test results: a suite a record, a
// case a rule and subject. What fails the check is a failure, what is undecided or
// waived is skipped with the reason, a breach below the gate passes and says so.
// What does not apply is listed with Options.All only.
func openJUnit(w io.Writer, head verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	head.Records, head.Notes = nil, nil
	return &junitStream{w: w, o: o, run: head, total: junitRun{Name: "driploop"}}
}

func (s *junitStream) Render(rec *verdict.Record, _ *Source) (Chunk, error) {
	suite := recordSuite(rec, &s.run, s.o)
	suite.count()
	text, err := suite.text()
	return Chunk{Text: text, Counts: rec.Counts, suite: suite.without()}, err
}

func (s *junitStream) Add(c Chunk) error {
	s.total.add(c.suite)
	notes := int64(bytes.Index(c.Text, []byte(propertiesEnd)))
	s.ends = append(s.ends, junitEnd{s.spool.size + notes, s.spool.size + int64(len(c.Text))})
	return s.spool.write(c.Text)
}

// propertiesEnd is what follows the last property of a suite; text in a suite has
// its brackets escaped.
const propertiesEnd = "\n    </properties>"

func (s *junitStream) Close(rest *verdict.Run) error {
	defer s.spool.close()
	s.run.Faults, s.run.Notes = rest.Faults, rest.Notes
	faulty := faultSuites(&s.run, s.o)
	for _, suite := range faulty {
		suite.count()
		s.total.add(suite)
	}
	top, err := xml.Marshal(s.total)
	if err != nil {
		return err
	}
	opening := strings.TrimSuffix(string(top), "</testsuites>")
	if _, err := io.WriteString(s.w, xml.Header+opening); err != nil {
		return err
	}
	if err := s.suites(rest.Notes); err != nil {
		return err
	}
	for _, suite := range faulty {
		text, err := suite.text()
		if err != nil {
			return err
		}
		if _, err := s.w.Write(text); err != nil {
			return err
		}
	}
	closing := "</testsuites>\n"
	if len(s.ends)+len(faulty) > 0 {
		closing = "\n" + closing
	}
	_, err = io.WriteString(s.w, closing)
	return err
}

// suites writes those of the spool, each with the notes of the run.
func (s *junitStream) suites(notes []string) error {
	properties := &junitSuite{}
	for _, note := range notes {
		properties.property("note", note)
	}
	var added bytes.Buffer
	for _, p := range properties.Properties {
		text, err := xml.Marshal(p)
		if err != nil {
			return err
		}
		added.WriteString("\n      ")
		added.Write(text)
	}
	for _, end := range s.ends {
		if err := s.spool.copyTo(s.w, end.notes); err != nil {
			return err
		}
		if _, err := s.w.Write(added.Bytes()); err != nil {
			return err
		}
		if err := s.spool.copyTo(s.w, end.suite); err != nil {
			return err
		}
	}
	return nil
}

// without is the suite without its cases, which are rendered.
func (s *junitSuite) without() *junitSuite {
	counts := *s
	counts.Cases, counts.Properties = nil, nil
	return &counts
}

func (r *junitRun) add(s *junitSuite) {
	r.Tests, r.Failures, r.Errors, r.Skipped = r.Tests+s.Tests, r.Failures+s.Failures, r.Errors+s.Errors, r.Skipped+s.Skipped
}
