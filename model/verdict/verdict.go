package verdict

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"driploop/model/quantity"
)

// Position is a place in a record's file, both counted from 1.
type Position struct {
	Line   int `json:"line"`
	Column int `json:"column"`
}

// Range runs from its start up to, not including, its end.
type Range struct {
	Start Position
	End   Position
}

// Figure is one value in a finding: a quantity, or words where Text is set.
type Figure struct {
	Name     string
	Quantity quantity.Quantity
	Text     string
}

// Print returns the figure in the units of the system.
func (f Figure) Print(s quantity.System) string {
	if f.Text != "" {
		return f.Text
	}
	return f.Quantity.Format(s)
}

// Gap is an entry of the record that kept a rule from deciding, or the reason
// why none could help.
type Gap struct {
	Field string // path in the record; empty if no entry would help
	Why   string
}

// String returns the gap as one line.
func (g Gap) String() string {
	switch {
	case g.Field == "":
		return g.Why
	case g.Why == "":
		return g.Field
	}
	return g.Field + " (" + g.Why + ")"
}

// Cited is a citation as it applies to one record.
type Cited struct {
	Citation
	Title   string
	Edition string
	Force   Force
	Binds   *bool // for law: whether it binds this vessel; nil when the record cannot tell
}

// Waiver is who let a breach stand, why, and until when.
type Waiver struct {
	By     string
	Reason string
	Until  string
	Path   string // in the record
	At     Range
}

// Related is another part of the record that a breach has to do with.
type Related struct {
	Role    string // what it is to the subject, such as "first device"
	Subject string // path in the record
	At      Range
}

// Recast is what the yard's settings made of a severity. It is always shown.
type Recast struct {
	From  Severity
	Why   string
	Where string // in the settings, as file:line:column
}

// Change is how a verdict differs from that of an earlier revision.
type Change string

// The changes of a verdict.
const (
	New            Change = "new"
	Worse          Change = "worse"
	NewlyUndecided Change = "newly undecided"
)

// Cured is a verdict of an earlier revision that stood and stands no longer.
type Cured struct {
	Rule        *Rule
	Outcome     Outcome
	Severity    Severity
	Subject     string
	Fingerprint string
}

// Verdict is one rule on one subject.
type Verdict struct {
	Rule     *Rule
	Outcome  Outcome
	Severity Severity
	Subject  string // path in the record, such as "conductors.P1"
	At       Range
	Says     string // template; see Text
	Figures  []Figure
	Limit    []Figure
	Missing  []Gap
	Remedy   string // template, like Says
	Sources  []Cited
	Waiver   *Waiver
	Related  []Related // of a breach, waived or not
	Recast   *Recast   // set if the yard gave it another severity
	Change   Change    // since the revision that it is compared with; empty if with none

	// ID tells the subject from its like by its name, or by what it says. Unlike
	// Subject it is no place, and stays when entries move.
	ID string
}

// Fingerprint identifies the verdict, on a job of some number, across revisions
// of its record: it stays the same when the file is renamed or its entries change
// places.
func (v *Verdict) Fingerprint(job string) string {
	sum := sha256.Sum256([]byte(v.Rule.ID + "\x00" + job + "\x00" + v.ID))
	return hex.EncodeToString(sum[:8])
}

// Counts is the number of verdicts by outcome.
type Counts map[Outcome]int

// Total returns the number of verdicts of all outcomes.
func (c Counts) Total() int {
	total := 0
	for _, n := range c {
		total += n
	}
	return total
}

// Record is the result of judging one record.
type Record struct {
	Path     string
	SHA256   string
	Job      string
	Title    string
	Vessel   string
	Practice []string
	Kind     string // of job; empty if not known
	Counts   Counts
	Verdicts []Verdict // all outcomes, in order
	// ByRule counts the same by rule, where that is asked for.
	ByRule []RuleCount

	// Since names the revision that the record was compared with. Then Verdicts
	// holds only what changed, and Cured what stands no longer.
	Since string
	Cured []Cured

	// Known counts the breaches, by severity, and KnownOpen what is undecided, that
	// a baseline has and that Verdicts leaves out.
	Known     map[Severity]int
	KnownOpen int
}

// Fault is something that keeps a file from being judged.
type Fault struct {
	Path string
	At   Position
	End  Position // where it stops; zero if it has no extent
	Says string
}

// Run is the result of one run over any number of records.
type Run struct {
	Version string
	Rules   string // digest of the rules
	Part    string // of a larger run, as "2/8"; empty for the whole
	Records []Record
	Faults  []Fault
	// Notes say what a reader has to know of the run as a whole, such as what it
	// left out.
	Notes []string
	// Sources is the register that citations point into.
	Sources []*Source
}

// Count tallies the verdicts by outcome; every outcome is present.
func Count(verdicts []Verdict) Counts {
	counts := Counts{}
	for _, o := range Outcomes() {
		counts[o] = 0
	}
	// Verdicts of one outcome tend to follow each other: runs are counted.
	for from, i := 0, 0; i < len(verdicts); from = i {
		for i < len(verdicts) && verdicts[i].Outcome == verdicts[from].Outcome {
			i++
		}
		counts[verdicts[from].Outcome] += i - from
	}
	return counts
}

// Sort puts verdicts in the order of every report: line, column, rule, subject.
func Sort(verdicts []Verdict) {
	slices.SortFunc(verdicts, func(a, b Verdict) int {
		return cmp.Or(
			cmp.Compare(a.At.Start.Line, b.At.Start.Line),
			cmp.Compare(a.At.Start.Column, b.At.Start.Column),
			cmp.Compare(a.Rule.ID, b.Rule.ID),
			cmp.Compare(a.Subject, b.Subject),
		)
	})
}
