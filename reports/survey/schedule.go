package survey

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
)

// Schedule is the computed schedule of circuits.
type Schedule struct {
	Loads    []reports.Circuit
	Sheets   []reports.Sheet
	Problems []Problem
	Parts    []*Part // how the figures were got
	Open     Questions
}

// Problem left a part of the network unsolved.
type Problem struct{ Place, Subject, Says string }

// Part holds the figures of one part of the installation.
type Part struct {
	ID      string // anchor
	Subject string
	Figures []Figure
}

// Figure is a computed figure with its working.
type Figure struct {
	Name   string
	Value  string
	Steps  []Step
	Lacks  []string // what keeps it open
	Source string   // subject that it belongs to
}

// Step is one line of working.
type Step struct {
	Formula string
	Source  string
	Inputs  []Term
	Gives   string
}

// part returns the figures of a subject, nil if there are none.
func (s *Schedule) part(subject string) *Part {
	for _, p := range s.Parts {
		if p.Subject == subject {
			return p
		}
	}
	return nil
}

func (b *builder) scheduled() Schedule {
	c := b.circuits
	s := Schedule{Loads: c.Loads, Sheets: c.Sheets, Open: b.questions(c.Open)}
	for i := range s.Loads {
		l := &s.Loads[i]
		l.ID, l.About = reports.Plain(l.ID), reports.Plain(l.About)
		for k := range l.Facts {
			l.Facts[k].Text = reports.Plain(l.Facts[k].Text)
		}
		plainRows(l.Ways.Rows)
	}
	for _, sheet := range s.Sheets {
		plainRows(sheet.Rows)
	}
	for _, p := range c.Problems {
		s.Problems = append(s.Problems, Problem{b.place(p.At), reports.Plain(p.Path), reports.Plain(p.Says)})
	}
	at := map[string]*Part{}
	for _, n := range c.Figures {
		part := at[n.Subject]
		if part == nil {
			part = &Part{ID: b.anchor("working-" + n.Subject), Subject: n.Subject}
			at[n.Subject] = part
			s.Parts = append(s.Parts, part)
		}
		part.Figures = append(part.Figures, worked(n))
	}
	return s
}

func plainRows(rows [][]string) {
	for _, row := range rows {
		for i := range row {
			row[i] = reports.Plain(row[i])
		}
	}
}

func worked(n reports.NamedFigure) Figure {
	f := Figure{Name: n.Name, Value: reports.Plain(n.Text), Source: n.Subject}
	for _, gap := range n.Figure.Gaps {
		f.Lacks = append(f.Lacks, reports.Plain(verdict.Gap(gap).String()))
	}
	for _, step := range n.Figure.Working() {
		out := Step{Formula: reports.Plain(step.Formula), Source: reports.Plain(step.Source), Gives: reports.Exact(step.Result, step.Unit)}
		for _, in := range step.Inputs {
			out.Inputs = append(out.Inputs, Term{reports.Plain(in.Symbol), reports.Exact(in.Value, in.Unit), reports.Plain(in.From)})
		}
		f.Steps = append(f.Steps, out)
	}
	return f
}

// behind returns the computed figures that a finding speaks of: those of its
// subject and of what it has to do with that have the value of one of its figures,
// or that make up a percentage of it.
func (b *builder) behind(v *verdict.Verdict) []Figure {
	parts := []string{entryOf(v.Subject)}
	for _, r := range v.Related {
		parts = append(parts, entryOf(r.Subject))
	}
	var out []Figure
	taken := map[int]bool{}
	for _, f := range append(slices.Clone(v.Figures), v.Limit...) {
		for _, i := range b.matching(f, parts) {
			if !taken[i] {
				taken[i] = true
				out = append(out, worked(b.circuits.Figures[i]))
			}
		}
	}
	return out
}

// matching finds the computed figures of parts that have the value of f.
func (b *builder) matching(f verdict.Figure, parts []string) []int {
	if f.Text != "" || f.Quantity.Base == 0 {
		return nil
	}
	var found []int
	for i, n := range b.circuits.Figures {
		if !slices.Contains(parts, n.Subject) || len(n.Figure.Working()) == 0 {
			continue
		}
		if sameUnit(n.Figure, f.Quantity) && near(quantity.New(n.Figure.Value, n.Figure.Unit).Base, f.Quantity.Base) || b.makes(n, f.Quantity) {
			found = append(found, i)
		}
	}
	return found
}

// makes tells whether a figure is the part or the whole that a percentage is of.
func (b *builder) makes(n reports.NamedFigure, q quantity.Quantity) bool {
	if q.Unit != "%" || !n.Figure.Known {
		return false
	}
	return slices.ContainsFunc(b.circuits.Figures, func(o reports.NamedFigure) bool {
		if o.Subject != n.Subject || o.Name == n.Name || o.Figure.Unit != n.Figure.Unit || !o.Figure.Known {
			return false
		}
		x, y := n.Figure.Value, o.Figure.Value
		return near(100*x/y, q.Base) || near(100*y/x, q.Base)
	})
}

func sameUnit(f figure.Figure, q quantity.Quantity) bool {
	mine, known := quantity.DimensionOf(f.Unit)
	theirs, other := quantity.DimensionOf(q.Unit)
	return f.Known && known && other && mine == theirs
}

// tolerance is what facts may lose by rounding, relative.
const tolerance = 5e-4

func near(a, b float64) bool {
	return !math.IsInf(a, 0) && !math.IsNaN(a) && math.Abs(a-b) <= tolerance*math.Max(math.Abs(a), math.Abs(b))
}

// Term is one value that a step of working used.
type Term struct{ Symbol, Value, From string }
