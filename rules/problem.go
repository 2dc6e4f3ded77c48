package rules

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// Problem is a fault in a file of rules.
type Problem struct {
	File string
	Line int // 0 if it concerns the whole file
	// Column is that of the first character, counted from 1; 0 if not known.
	Column int
	Says   string
}

// Error returns the problem as one line.
func (p *Problem) Error() string {
	if p.Line == 0 {
		return p.File + ": " + p.Says
	}
	return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, max(p.Column, 1), p.Says)
}

// problems collects the faults of all files, so that an author sees them at
// once.
type problems []*Problem

func (p *problems) add(file string, line int, format string, args ...any) {
	*p = append(*p, &Problem{File: file, Line: line, Says: fmt.Sprintf(format, args...)})
}

// addAt adds a fault at a place in a policy.
func (p *problems) addAt(file string, at *ast.Location, format string, args ...any) {
	p.add(file, at.Row, format, args...)
	(*p)[len(*p)-1].Column = at.Col
}

// err returns the problems in order of file and line as one error, or nil.
func (p problems) err() error {
	p = slices.Clone(p)
	slices.SortStableFunc(p, func(a, b *Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	all := make([]error, len(p))
	for i, problem := range p {
		all[i] = problem
	}
	return errors.Join(all...)
}
