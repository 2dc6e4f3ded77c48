package facts

import (
	"time"

	"driploop/model/figure"
	"driploop/model/record"
)

// open notes that a fact is not known, and why.
func (s *Subject) open(fact string, gaps ...figure.Gap) {
	s.Open.add(lack{fact: fact, gaps: gaps})
}

// missing notes that a fact is not known because an entry below the subject is
// not written.
func (s *Subject) missing(fact, entry string) { s.lacks(fact, s.Path, entry) }

// lacks notes that a fact is not known because something lacks an entry, given
// by the path of the one and the name of the other.
func (s *Subject) lacks(fact, of, entry string) {
	s.Open.add(lack{fact: fact, of: of, entry: entry})
}

// field returns the path of an entry below the subject's own.
func (s *Subject) field(name string) string { return s.Path + "." + name }

// put sets a fact to a value of the record, where it stands there, or opens it
// naming the entry.
func put[T any](s *Subject, fact string, to **T, v *record.Value[T], field string) {
	if !v.Is() {
		s.missing(fact, field)
		return
	}
	*to = &v.V
}

// putMeasure sets a fact from a quantity, in the base unit of its dimension.
func putMeasure(s *Subject, fact string, to **float64, v *record.Measure, field string) {
	putMeasureOf(s, fact, to, v, s.Path, field)
}

// putMeasureOf does so from an entry elsewhere in the record.
func putMeasureOf(s *Subject, fact string, to **float64, v *record.Measure, of, entry string) {
	if !v.Is() {
		s.lacks(fact, of, entry)
		return
	}
	*to = &v.V.Base
}

// putDate sets a fact from a date, as year-month-day, so that text order is
// time order.
func putDate(s *Subject, fact string, to **string, v record.Date, field string) {
	if given, ok := v.Get(); ok {
		day := given.Format(time.DateOnly)
		*to = &day
		return
	}
	s.missing(fact, field)
}

// putFigure sets a fact from a computed figure, or opens it with its gaps.
func putFigure(s *Subject, fact string, to **float64, f figure.Figure) {
	if f.Known {
		*to = ptr(f.Value)
		return
	}
	s.open(fact, orUnsolved(f.Gaps)...)
}

// putTruth sets a fact from a decided truth, or opens it with its gaps.
func putTruth(s *Subject, fact string, to **bool, t figure.Truth) {
	if t.Known {
		*to = ptr(t.Value)
		return
	}
	s.open(fact, orUnsolved(t.Gaps)...)
}

// orUnsolved keeps a fact from being open without a reason.
func orUnsolved(gaps []figure.Gap) []figure.Gap {
	if len(gaps) == 0 {
		return []figure.Gap{figure.Because("the circuit could not be solved here")}
	}
	return gaps
}

// derive sets a fact that a function makes of others, or opens it with the
// gaps of all that are missing.
func derive[T any](s *Subject, fact string, to **T, from []string, value func() T) {
	known := true
	for _, f := range from {
		if s.Open.Has(f) {
			s.open(fact, s.Open.Of(f)...)
			known = false
		}
	}
	if known {
		made := value()
		*to = &made
	}
}

func ptr[T any](v T) *T { return &v }
