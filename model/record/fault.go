package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// Fault is one thing that keeps a record from being used.
type Fault struct {
	Name string // file name as given
	At   verdict.Range
	Says string // what is wrong, and what would be right
}

// String returns the fault as name:line:column: what is wrong.
func (f Fault) String() string {
	return fmt.Sprintf("%s:%d:%d: %s", f.Name, f.At.Start.Line, f.At.Start.Column, f.Says)
}

// Faults is all faults of one file in the order of their places. A record with
// any fault must not be judged.
type Faults []Fault

// Error returns one fault a line.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i := range f {
		lines[i] = f[i].String()
	}
	return strings.Join(lines, "\n")
}

// maxFaults bounds the list: a file with more was not meant to be a record.
const maxFaults = 1000

// sorted returns the faults in the order of their places, each once: a fault in
// an anchored part is found again at each alias.
func (f Faults) sorted() Faults {
	slices.SortStableFunc(f, func(a, b Fault) int {
		return cmp.Or(compare(a.At.Start, b.At.Start), cmp.Compare(a.Says, b.Says))
	})
	return slices.CompactFunc(f, func(a, b Fault) bool { return a == b })
}

func compare(a, b verdict.Position) int {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
}
