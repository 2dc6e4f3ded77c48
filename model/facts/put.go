package facts

import (
	"time"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// place is an entry of the record: the path of what has it and its name there.
type place struct{ of, entry string }

// own returns an entry of the subject itself.
func (s *Subject) own(entry string) place { return place{s.Path, entry} }

// field returns the path of an entry below the subject's own.
func (s *Subject) field(name string) string { return s.Path + "." + name }

// open notes that a fact is not known, and why.
func (s *Subject) open(fact string, gaps ...figure.Gap) {
	s.Open.add(fact, s.Open.store().gaps(gaps))
}

// because notes that facts are not known for a reason that no entry can cure.
func (s *Subject) because(why string, facts ...string) {
	reasons := s.Open.store().reason(reason{why: why})
	for _, fact := range facts {
		s.Open.add(fact, reasons)
	}
}

// missing notes that a fact is not known because an entry below the subject is
// not written.
func (s *Subject) missing(fact, entry string) { s.lacks(fact, s.Path, entry) }

// lacks notes that a fact is not known because something lacks an entry, given
// by the path of the one and the name of the other.
func (s *Subject) lacks(fact, of, entry string) {
	s.Open.add(fact, s.Open.store().reason(reason{of: of, entry: entry}))
}

// follow notes that a fact is not known because another one is not.
func (s *Subject) follow(fact, other string) { s.followOf(fact, s, other) }

// followOf notes that a fact is not known because one of another subject is not.
func (s *Subject) followOf(fact string, of *Subject, other string) {
	s.Open.add(fact, of.why(other))
}

// number keeps the number of a fact, word its text, count its whole number, flag
// its yes or no.
func (s *Subject) number(v float64) *float64 { return s.Open.store().numbers.keep(v) }
func (s *Subject) word(v string) *string     { return s.Open.store().words.keep(v) }
func (s *Subject) count(v int) *int          { return s.Open.store().counts.keep(v) }
func (s *Subject) flag(v bool) *bool         { return s.Open.store().flag(v) }

func (st *store) flag(v bool) *bool {
	if !v {
		return &st.flags[0]
	}
	st.flags[1] = true
	return &st.flags[1]
}

// put sets a fact to a value of the record, where it stands there, or opens it
// naming the entry.
func put[T any](s *Subject, fact string, to **T, v *record.Value[T], entry string) {
	putOf(s, fact, to, v, s.Path, entry)
}

// putOf does so from an entry elsewhere in the record.
func putOf[T any](s *Subject, fact string, to **T, v *record.Value[T], of, entry string) {
	if v.State != record.Given {
		s.lacks(fact, of, entry)
		return
	}
	*to = &v.V
}

// putMeasure sets a fact from a quantity, in the base unit of its dimension.
func putMeasure(s *Subject, fact string, to **float64, v *record.Measure, entry string) {
	putMeasureOf(s, fact, to, v, s.Path, entry)
}

// putMeasureOf does so from an entry elsewhere in the record.
func putMeasureOf(s *Subject, fact string, to **float64, v *record.Measure, of, entry string) {
	if v.State != record.Given {
		s.lacks(fact, of, entry)
		return
	}
	*to = &v.V.Base
}

// putSpan sets two facts from a least and a greatest value.
func putSpan(s *Subject, least, most string, toLeast, toMost **float64, v *record.Span, entry string) {
	if v.State != record.Given {
		s.missing(least, entry)
		s.missing(most, entry)
		return
	}
	*toLeast, *toMost = &v.V[0].Base, &v.V[1].Base
}

// putDate sets a fact from a date, as year-month-day, so that text order is
// time order.
func putDate(s *Subject, fact string, to **string, v *record.Date, entry string) {
	putDateOf(s, fact, to, v, s.Path, entry)
}

// putDateOf does so from an entry elsewhere in the record.
func putDateOf(s *Subject, fact string, to **string, v *record.Date, of, entry string) {
	if v.State != record.Given {
		s.lacks(fact, of, entry)
		return
	}
	*to = s.Open.store().date(v.V)
}

// date writes a date. Much of a job is done on one day.
func (st *store) date(on time.Time) *string {
	if st.day == nil || on != st.dated {
		st.dated, st.day = on, st.words.keep(on.Format(time.DateOnly))
	}
	return st.day
}

// putFigure sets a fact from a computed figure, or opens it with its gaps.
func putFigure(s *Subject, fact string, to **float64, f *figure.Figure) {
	if f.Known {
		*to = &f.Value
		return
	}
	s.unsolved(fact, f.Gaps)
}

// putComputed does so from one that is computed for the fact alone.
func putComputed(s *Subject, fact string, to **float64, f figure.Figure) {
	if f.Known {
		*to = s.number(f.Value)
		return
	}
	s.unsolved(fact, f.Gaps)
}

// unsolved opens a fact with the gaps of what the circuit left open, and never
// without a reason.
func (s *Subject) unsolved(fact string, gaps []figure.Gap) {
	if len(gaps) == 0 {
		s.because(notSolved, fact)
		return
	}
	s.Open.add(fact, s.Open.store().gaps(gaps))
}

const notSolved = "the circuit could not be solved here"

// orUnsolved keeps a fact from being open without a reason.
func orUnsolved(gaps []figure.Gap) []figure.Gap {
	if len(gaps) == 0 {
		return []figure.Gap{figure.Because(notSolved)}
	}
	return gaps
}

// operand is a fact of the subject that another is made of.
type operand struct {
	fact  string
	value *float64
}

// derivable tells whether all facts that one is made of are known; if not, it
// opens it with the gaps of those that are not.
func (s *Subject) derivable(fact string, from ...operand) bool {
	known := true
	for _, one := range from {
		if one.value == nil {
			s.follow(fact, one.fact)
			known = false
		}
	}
	return known
}

// percent sets a fact to one as a share of another.
func percent(s *Subject, fact string, to **float64, of, whole operand) {
	if s.derivable(fact, of, whole) {
		*to = s.number(partOf(*of.value, *whole.value))
	}
}

// partOf returns a value as a share of another in percent.
func partOf(of, whole float64) float64 { return quantity.Round(100 * of / whole) }
