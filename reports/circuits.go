package reports

import (
	"io"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Circuits is the schedule of circuits of a record as Schedule tells it, for
// reports that lay it out themselves.
type Circuits struct {
	Loads    []Circuit
	Sheets   []Sheet
	Problems []circuit.Problem // what left a part of the network unsolved
	Figures  []NamedFigure     // all that were shown, with their working, part by part
	Open     Questions         // what figures wait for
}

// Circuit is one load with its way out and back.
type Circuit struct {
	ID    string
	About string
	Facts []Labelled
	Ways  Sheet
}

// Labelled is a text with its label.
type Labelled struct{ Label, Text string }

// Sheet is a table under its title.
type Sheet struct {
	Title, About string
	Columns      []Column
	Rows         [][]string
}

// Column is the head of a column; one of numbers stands to the right.
type Column struct {
	Head  string
	Right bool
}

// NamedFigure is a figure of a part of the installation.
type NamedFigure struct {
	Subject string // path in the record
	Name    string
	Text    string // as it is shown
	Figure  figure.Figure
}

// CircuitsOf makes the schedule of a record.
func CircuitsOf(r *record.Record, a *circuit.Analysis, o Options) *Circuits {
	s := newSchedule(io.Discard, r, a, o)
	out := &Circuits{Problems: a.Problems}
	for _, c := range r.Components {
		if l := a.Loads[c.ID]; l != nil {
			out.Loads = append(out.Loads, Circuit{ID: c.ID, About: aboutLoad(c), Facts: s.loadFacts(c, l), Ways: titled{rows: s.ways(l)}.export()})
		}
	}
	for _, h := range s.sheets() {
		out.Sheets = append(out.Sheets, h.export())
	}
	for _, n := range s.shown {
		out.Figures = append(out.Figures, NamedFigure{n.subject, n.name, s.print(n.fig), n.fig})
	}
	out.Open = questions(s.openFigures(), s.src)
	return out
}

func (h titled) export() Sheet {
	out := Sheet{Title: h.title, About: h.about, Rows: h.rows.rows}
	for i, head := range h.rows.heads {
		out.Columns = append(out.Columns, Column{head, h.rows.right[i]})
	}
	return out
}

// Exact prints a number of a working with the digits that it takes to check it.
func Exact(value float64, unit string) string { return exact(value, unit) }

// Questions are what has to be answered before all can be said, the most urgent
// first.
type Questions struct {
	Entries []Question // entries of the record to fill in
	Reasons []Question // what no entry would cure
}

// Question is one thing that is waited for.
type Question struct {
	Fields   []Field          // entries of the record; none for a reason
	Whys     []string         // what is wrong where the entry alone does not tell
	For      []string         // the rules or figures that wait
	Severity verdict.Severity // the worst of what waits
}

// Field is an entry that is missing.
type Field struct {
	Path  string
	Where string // in the file, in words
}

// OpenQuestions sorts what undecided verdicts wait for.
func OpenQuestions(open []*verdict.Verdict, src *Source) Questions {
	return questions(waitsOf(open), src)
}

func questions(waits []wait, src *Source) Questions {
	tasks, reasons := todo(waits)
	var out Questions
	for _, t := range tasks {
		q := Question{Whys: t.whys, For: t.names(), Severity: t.worst}
		for i := range t.entries[0].fields {
			for _, e := range t.entries {
				if i < len(e.fields) {
					q.Fields = append(q.Fields, Field{e.fields[i], src.lineOf(e.fields[i])})
				}
			}
		}
		out.Entries = append(out.Entries, q)
	}
	for _, t := range reasons {
		out.Reasons = append(out.Reasons, Question{Whys: t.whys, For: t.namesAndSubjects(), Severity: t.worst})
	}
	return out
}
