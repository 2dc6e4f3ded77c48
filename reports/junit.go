package reports

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
	"time"

	"driploop/model/verdict"
)

// The elements of the JUnit report that test consoles read. There is no standard;
// these are the ones that consumers agree on.
type junitRun struct {
	XMLName  xml.Name `xml:"testsuites"`
	Name     string   `xml:"name,attr"`
	Tests    int      `xml:"tests,attr"`
	Failures int      `xml:"failures,attr"`
	Errors   int      `xml:"errors,attr"`
	Skipped  int      `xml:"skipped,attr"`
}

type junitSuite struct {
	XMLName    xml.Name        `xml:"testsuite"`
	Name       string          `xml:"name,attr"`
	Tests      int             `xml:"tests,attr"`
	Failures   int             `xml:"failures,attr"`
	Errors     int             `xml:"errors,attr"`
	Skipped    int             `xml:"skipped,attr"`
	Timestamp  string          `xml:"timestamp,attr,omitempty"`
	Properties []junitProperty `xml:"properties>property"`
	Cases      []junitCase     `xml:"testcase"`
}

type junitProperty struct {
	XMLName xml.Name `xml:"property"`
	Name    string   `xml:"name,attr"`
	Value   string   `xml:"value,attr"`
}

type junitCase struct {
	Name    string     `xml:"name,attr"`
	Class   string     `xml:"classname,attr"`
	File    string     `xml:"file,attr"`
	Line    int        `xml:"line,attr,omitempty"`
	Failure *junitSays `xml:"failure"`
	Error   *junitSays `xml:"error"`
	Skipped *junitSays `xml:"skipped"`
	Out     string     `xml:"system-out,omitempty"`
}

type junitSays struct {
	Type    string `xml:"type,attr,omitempty"`
	Message string `xml:"message,attr"`
	Body    string `xml:",chardata"`
}

func recordSuite(rec *verdict.Record, run *verdict.Run, o Options) *junitSuite {
	s := newSuite(rec.Path, run, o)
	s.property("job", rec.Job)
	s.property("title", rec.Title)
	s.property("vessel", rec.Vessel)
	s.property("practice", strings.Join(rec.Practice, ", "))
	s.property("sha256", rec.SHA256)
	type name struct{ class, subject string }
	named, path := map[name]int{}, Plain(rec.Path)
	s.Cases = make([]junitCase, 0, len(rec.Verdicts))
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		if v.Outcome == verdict.NotApplicable && !o.All {
			continue
		}
		c := verdictCase(v, o)
		c.File = path
		// Two sources can feed one conductor: two verdicts at one place.
		key := name{c.Class, c.Name}
		if named[key]++; named[key] > 1 {
			c.Name += " (" + Plain(cmp.Or(v.ID, strconv.Itoa(named[key]))) + ")"
		}
		s.Cases = append(s.Cases, c)
	}
	return s
}

func newSuite(path string, run *verdict.Run, o Options) *junitSuite {
	s := &junitSuite{Name: Plain(path)}
	if !o.At.IsZero() {
		s.Timestamp = o.At.UTC().Format(time.RFC3339)
	}
	s.property("driploop", run.Version)
	s.property("rules", run.Rules)
	s.property("caution", Caution)
	for _, note := range run.Notes {
		s.property("note", note)
	}
	return s
}

func (s *junitSuite) property(name, value string) {
	if value != "" {
		s.Properties = append(s.Properties, junitProperty{Name: name, Value: Plain(value)})
	}
}

func (s *junitSuite) count() {
	s.Tests += len(s.Cases)
	for i := range s.Cases {
		switch c := &s.Cases[i]; {
		case c.Failure != nil:
			s.Failures++
		case c.Error != nil:
			s.Errors++
		case c.Skipped != nil:
			s.Skipped++
		}
	}
}

func verdictCase(v *verdict.Verdict, o Options) junitCase {
	c := junitCase{Name: Plain(v.Subject), Class: strings.ReplaceAll(v.Rule.ID, "/", "."), Line: v.At.Start.Line}
	if v.Outcome == verdict.Met {
		return c
	}
	show := v.Show(o.Units)
	said := Plain(capital(says(v, show)))
	switch {
	case o.fails(v):
		c.Failure = &junitSays{Type: v.Severity.String(), Message: said, Body: findingText(v, show)}
		if v.Outcome == verdict.Undecided {
			c.Failure.Type = string(v.Outcome)
		}
	case v.Outcome == verdict.Breach:
		c.Out = "Below the gate: " + said + "\n" + findingText(v, show)
	case v.Outcome == verdict.Waived:
		c.Skipped = &junitSays{Message: Plain(waivedText(v)) + ". " + strings.ToUpper(v.Severity.String()) + ": " + said}
		c.Out = findingText(v, show)
	case v.Outcome == verdict.NotApplicable:
		c.Skipped = &junitSays{Message: "does not apply: " + said}
	default:
		c.Skipped = &junitSays{Message: said}
	}
	return c
}

// fails tells whether a verdict fails the check.
func (o *Options) fails(v *verdict.Verdict) bool {
	if o.Fails == nil {
		return v.Outcome == verdict.Breach
	}
	return o.Fails(v)
}

func waivedText(v *verdict.Verdict) string {
	if v.Waiver == nil {
		return "waived"
	}
	return fmt.Sprintf("waived by %s until %s: %s", v.Waiver.By, v.Waiver.Until, v.Waiver.Reason)
}

// findingText is what a person has to know of a verdict, line by line: why it
// matters, what would put it right, and where that is written.
func findingText(v *verdict.Verdict, show func(verdict.Figure) string) string {
	var lines []string
	add := func(label, text string) {
		if text != "" {
			lines = append(lines, label+": "+Plain(text))
		}
	}
	add("severity", v.Severity.String())
	add("rule", v.Rule.ID+", "+flow(v.Rule.Title))
	add("why", flow(v.Rule.Why))
	add("remedy", v.Text(flow(v.Remedy), show))
	for _, c := range v.Sources {
		text := document(c)
		if c.Clause != "" {
			text += " " + clause(c)
		}
		add("source", text)
	}
	return strings.Join(lines, "\n")
}

// faultSuites are the files that could not be judged, each with its faults as
// errors.
func faultSuites(run *verdict.Run, o Options) (all []*junitSuite) {
	at := map[string]*junitSuite{}
	for _, f := range run.Faults {
		s := at[f.Path]
		if s == nil {
			s = newSuite(f.Path, run, o)
			at[f.Path] = s
			all = append(all, s)
		}
		place := fmt.Sprintf("fault %d", len(s.Cases)+1)
		if f.At.Line > 0 {
			place += fmt.Sprintf(", line %d, column %d", f.At.Line, f.At.Column)
		}
		s.Cases = append(s.Cases, junitCase{
			Name: place, Class: "record.unusable", File: Plain(f.Path), Line: f.At.Line,
			Error: &junitSays{Type: "unusable", Message: Plain(f.Says)},
		})
	}
	return all
}
