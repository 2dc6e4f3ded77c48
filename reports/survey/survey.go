// Package survey gathers what a survey report of one record contains, once for
// all the formats that print it. Every text of it is safe to show: control
// characters of the record are escapes, and quantities are in the reader's units.
package survey

import (
	"time"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/diagram"
)

// Input is what a report is made of.
type Input struct {
	Record   *record.Record
	Analysis *circuit.Analysis
	Judged   *verdict.Record
	Source   *reports.Source
	Practice Practice
	Version  string    // of the program
	At       time.Time // printed as the time of the report; zero: none is printed
	Units    quantity.System
	Notes    []string // what a reader has to know of the run, such as settings that lowered a severity
}

// Practice is what records are judged by.
type Practice struct {
	Digest    string // of the rules
	Rules     []*verdict.Rule
	Documents []*verdict.Source
	Sets      []Set
}

// Set is a practice set in words.
type Set struct{ ID, Title, About string }

// Survey is one report.
type Survey struct {
	Title   string // of the document
	Name    string // of the job, or of its file
	Verdict Headline
	Counts  []Count
	Facts   []reports.Labelled // of job and vessel

	Findings []*Group // breaches, the worst first
	Waived   []*Group

	Questions Questions
	Diagram   *diagram.Diagram
	Schedule  Schedule
	Coverage  Coverage
	Cautions  []string
	Notes     []string
	Origin    []reports.Labelled // digests, version, time
}

// Headline is the verdict in one line.
type Headline struct {
	Says string
	// Mark is the worst severity found, "open" where something could not be
	// decided, else "clear".
	Mark string
}

// Count is the number of verdicts of one outcome.
type Count struct {
	Outcome verdict.Outcome
	Word    string
	Number  int
	Means   string
}

// Group holds the findings of one rule and severity, which share what is said
// of the rule.
type Group struct {
	ID       string // anchor
	Rule     string
	Severity verdict.Severity
	Means    string // what the severity means
	Title    string
	Why      string
	Sources  []Source // empty where the findings differ; then each has its own
	Remedy   string   // likewise
	Findings []*Finding
}

// Finding is one breach.
type Finding struct {
	ID       string // anchor
	Subject  string
	Place    string // file, line and column
	Excerpt  *Excerpt
	Says     string
	Bars     []Bar
	Sources  []Source
	Remedy   string
	Remarks  []reports.Labelled // waiver, change of severity, change since a revision
	Related  []Related
	Working  []Figure
	Part     string // of the schedule's working that holds the rest; empty if none
	Drawn    string // anchor in the diagram; empty if not drawn
	Severity verdict.Severity
}

// Excerpt is a line of the record, cut at the value that a finding points at.
type Excerpt struct{ Before, Value, After string }

// Bar sets a figure against its limit.
type Bar struct {
	Name    string
	Value   string
	Limit   string
	AtMost  bool    // the limit is the greatest allowed, else the least
	Times   string  // how far the figure is beyond the limit; empty if that says nothing
	Fill    float64 // 0 to 1, the figure on a scale that holds both
	Mark    float64 // 0 to 1, the limit on the same scale
	Measure bool    // both are numbers, so that a bar can be drawn
}

// Source is a document with the clauses of it that a finding rests on.
type Source struct {
	Document string
	Clauses  []string
}

// Related is another entry that a finding has to do with.
type Related struct {
	Role, Subject string
	Line          int // 0 if it stands nowhere
	Drawn         string
}
