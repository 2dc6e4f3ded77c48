// Package figure holds computed values: the number or what kept it from being
// computed, and the working that led to it. Everything that the model computes
// for rules and reports is a Figure.
package figure

import "driploop/model/quantity"

// Gap is one thing that kept a figure from being computed: a place in the
// record that is empty or "unknown", or a reason that no entry can cure.
type Gap struct {
	// Field is the path of the record entry to fill in, such as
	// "conductors.P1.size"; empty when no entry would help.
	Field string `json:"field,omitempty"`
	// Why says what is wrong where Field alone does not, such as "Table 5 lists
	// no 7 AWG".
	Why string `json:"why,omitempty"`
}

// Input is one value that a step of working used.
type Input struct {
	Symbol string  // as in the formula
	Value  float64 // in Unit
	Unit   string  // a symbol of package quantity, or ""
	From   string  // path in the record, or the source of a constant
}

// Step is one line of working.
type Step struct {
	Formula string // name and expression, such as "drop: ΔU = 2·r·L·I"
	Source  string // document and clause that the formula or table row comes from
	Inputs  []Input
	Result  float64
	Unit    string
}

// Figure is a computed value with its working, or the gaps that left it open.
// Exactly one holds: Known, or at least one Gap.
type Figure struct {
	Value   float64
	Unit    string // a base unit of package quantity, or "" for a bare number
	Known   bool
	Gaps    []Gap
	working func() []Step // nil: none
}

// Of returns a known figure with its working.
func Of(value float64, unit string, working ...Step) Figure {
	if len(working) == 0 {
		return Worked(value, unit, nil)
	}
	return Worked(value, unit, func() []Step { return working })
}

// Worked returns a known figure whose working is put together each time that
// somebody asks for it, which most people never do. What it is made of must not
// change any more.
func Worked(value float64, unit string, working func() []Step) Figure {
	return Figure{Value: quantity.Round(value), Unit: unit, Known: true, working: working}
}

// Working returns how the figure came about, one step after the other.
func (f Figure) Working() []Step {
	if f.working == nil {
		return nil
	}
	return f.working()
}

// Shown returns the figure with other working.
func (f Figure) Shown(working func() []Step) Figure {
	f.working = working
	return f
}

// Open returns a figure that could not be computed.
func Open(gaps ...Gap) Figure { return Figure{Gaps: gaps} }

// Missing returns the gap for an empty entry of the record.
func Missing(field string) Gap { return Gap{Field: field} }

// Because returns the gap that no entry of the record can cure.
func Because(why string) Gap { return Gap{Why: why} }

// Truth is a yes or no that may be open.
type Truth struct {
	Value bool
	Known bool
	Gaps  []Gap
}

// True returns a truth that holds.
func True() Truth { return Truth{Value: true, Known: true} }

// False returns a truth that does not hold.
func False() Truth { return Truth{Known: true} }

// OpenTruth returns a truth that could not be decided.
func OpenTruth(gaps ...Gap) Truth { return Truth{Gaps: gaps} }
