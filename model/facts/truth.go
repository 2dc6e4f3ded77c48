package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/record"
)

// truth is a yes or no that may be open, for reasons that lie with the
// document's.
type truth struct {
	value, known bool
	because      reasons
}

// settled is a truth that nothing leaves open.
func settled(v bool) truth { return truth{value: v, known: true} }

// doubt is a truth that is open.
func (s *Subject) doubt(gaps ...figure.Gap) truth { return truth{because: s.Open.store().gaps(gaps)} }

// unknown is a truth that an entry of the record would tell.
func (s *Subject) unknown(at place) truth {
	return truth{because: s.Open.store().reason(reason{of: at.of, entry: at.entry})}
}

// solved is a truth as the circuit has it.
func (s *Subject) solved(t *figure.Truth) truth {
	if t.Known {
		return settled(t.Value)
	}
	return s.doubt(t.Gaps...)
}

// truthOf returns a flag of the record as a truth; left out, it names its entry.
func (s *Subject) truthOf(v *record.Flag, at place) truth {
	if v.State == record.Given {
		return settled(v.V)
	}
	return s.unknown(at)
}

// among tells whether an entry of the record is one of the words.
func (s *Subject) among(v *record.Text, at place, words ...string) truth {
	if v.State == record.Given {
		return settled(slices.Contains(words, v.V))
	}
	return s.unknown(at)
}

// pointed turns a fact already set, or open, into a truth.
func (s *Subject) pointed(fact string, v *bool) truth {
	if v != nil {
		return settled(*v)
	}
	return truth{because: s.why(fact)}
}

// why returns the reasons for which a fact is open.
func (s *Subject) why(fact string) reasons {
	st := s.Open.store()
	var all reasons
	for one := range s.Open.each {
		switch {
		case one.fact != fact:
		case all.count == 0:
			all = one.because
		default:
			all = st.joined(all, one.because)
		}
	}
	return all
}

// joined returns reasons as one stretch.
func (st *store) joined(a, b reasons) reasons {
	if a.first+a.count != int32(len(st.reasons)) {
		first := int32(len(st.reasons))
		st.again(a)
		a.first = first
	}
	st.again(b)
	a.count += b.count
	return a
}

// negated turns a truth round.
func negated(t truth) truth {
	t.value = t.known && !t.value
	return t
}

// allOf is true if all are, false as soon as one surely is, and else open with
// the gaps of all that are open.
func (s *Subject) allOf(truths ...truth) truth { return s.unless(false, truths) }

// anyOf is true as soon as one surely is, false if none is, and else open.
func (s *Subject) anyOf(truths ...truth) truth { return s.unless(true, truths) }

// unless is a value as soon as one truth surely is, and the other one if none is.
func (s *Subject) unless(value bool, truths []truth) truth {
	open := 0
	for _, t := range truths {
		if t.known && t.value == value {
			return settled(value)
		}
		if !t.known {
			open++
		}
	}
	if open == 0 {
		return settled(!value)
	}
	st := s.Open.store()
	var all reasons
	for _, t := range truths {
		switch {
		case t.known:
			continue
		case t.because.count == 0:
			t.because = st.reason(reason{why: notSolved})
		}
		if all.count == 0 {
			all = t.because
		} else {
			all = st.joined(all, t.because)
		}
	}
	return truth{because: all}
}

// putTruth sets a fact from a decided truth, or opens it with its gaps.
func putTruth(s *Subject, fact string, to **bool, t truth) {
	if t.known {
		*to = s.flag(t.value)
		return
	}
	if t.because.count == 0 {
		s.because(notSolved, fact)
		return
	}
	s.Open.add(fact, t.because)
}

// putSolved sets a fact from a truth as the circuit has it.
func putSolved(s *Subject, fact string, to **bool, t *figure.Truth) {
	if t.Known {
		*to = s.flag(t.Value)
		return
	}
	s.unsolved(fact, t.Gaps)
}
