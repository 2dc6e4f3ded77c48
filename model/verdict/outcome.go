// Package verdict holds what judging a record yields: outcomes, severities,
// cited sources, the description of a rule, and the ordered result. It imports
// nothing of the project but quantities, so that rules and reports can share it
// without knowing each other.
package verdict

import "fmt"

// Outcome is what a rule says of one subject.
type Outcome string

// The outcomes. Undecided is never folded into met: it names what is missing.
const (
	Met           Outcome = "met"
	Breach        Outcome = "breach"
	Undecided     Outcome = "undecided"
	NotApplicable Outcome = "not-applicable"
	Waived        Outcome = "waived"
)

// Outcomes lists all outcomes in the order that counts are shown.
func Outcomes() []Outcome { return []Outcome{Met, Breach, Undecided, NotApplicable, Waived} }

// Severity is how bad a breach can turn out, in the signal words of ANSI Z535:
// danger, warning and caution for injury, notice for property only.
type Severity uint8

// The severities, mildest first.
const (
	Notice Severity = iota
	Caution
	Warning
	Danger
)

var severityNames = [...]string{"notice", "caution", "warning", "danger"}

// String returns the signal word in lower case.
func (s Severity) String() string { return severityNames[s] }

// ParseSeverity reads a signal word.
func ParseSeverity(word string) (Severity, error) {
	for i, name := range severityNames {
		if name == word {
			return Severity(i), nil
		}
	}
	return 0, fmt.Errorf("%q is no severity; use danger, warning, caution or notice", word)
}

// MarshalText writes the signal word.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the signal word.
func (s *Severity) UnmarshalText(text []byte) error {
	parsed, err := ParseSeverity(string(text))
	*s = parsed
	return err
}
