package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/record"
)

// truthOf returns a flag of the record as a truth; left out, it names its entry.
func truthOf(v record.Flag, path string) figure.Truth {
	if given, ok := v.Get(); ok {
		return figure.Truth{Value: given, Known: true}
	}
	return figure.OpenTruth(figure.Missing(path))
}

// among tells whether an entry of the record is one of the words.
func among(v record.Text, path string, words ...string) figure.Truth {
	if given, ok := v.Get(); ok {
		return figure.Truth{Value: slices.Contains(words, given), Known: true}
	}
	return figure.OpenTruth(figure.Missing(path))
}

// pointed turns a fact already set, or open, into a truth.
func (s *Subject) pointed(fact string, v *bool) figure.Truth {
	if v != nil {
		return figure.Truth{Value: *v, Known: true}
	}
	return figure.OpenTruth(s.Open.Of(fact)...)
}

// negated turns a truth round.
func negated(t figure.Truth) figure.Truth {
	t.Value = t.Known && !t.Value
	return t
}

// allOf is true if all are, false as soon as one surely is, and else open with
// the gaps of all that are open.
func allOf(truths ...figure.Truth) figure.Truth {
	var gaps []figure.Gap
	for _, t := range truths {
		switch {
		case t.Known && !t.Value:
			return figure.False()
		case !t.Known:
			gaps = append(gaps, orUnsolved(t.Gaps)...)
		}
	}
	if len(gaps) > 0 {
		return figure.OpenTruth(gaps...)
	}
	return figure.True()
}

// anyOf is true as soon as one surely is, false if none is, and else open.
func anyOf(truths ...figure.Truth) figure.Truth {
	var gaps []figure.Gap
	for _, t := range truths {
		switch {
		case t.Known && t.Value:
			return figure.True()
		case !t.Known:
			gaps = append(gaps, orUnsolved(t.Gaps)...)
		}
	}
	if len(gaps) > 0 {
		return figure.OpenTruth(gaps...)
	}
	return figure.False()
}
