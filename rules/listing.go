package rules

import (
	"cmp"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// listing is an outcome that is listed.
type listing struct {
	candidate
	outcome verdict.Outcome
	sets    mask
	next    int // the subject's next listing: its number and 1, or 0
	missing []verdict.Gap
	breach  *judged // set of a breach
}

// chain links the listings of a subject, in the order in which they were added.
type chain struct{ first, last int } // the number of a listing and 1, or 0

// settle takes note of the outcome of one pair.
func (w *writer) settle(c candidate, j *judged) {
	switch {
	case !w.every && j.outcome == verdict.Met:
		w.passed.met++
	case !w.every && j.outcome == verdict.NotApplicable:
		w.passed.beside++
	default:
		one := listing{candidate: c, outcome: j.outcome, sets: j.sets, missing: j.missing}
		if j.outcome == verdict.Breach {
			kept := *j
			one.breach = &kept
		}
		w.list(&one)
	}
}

// list adds to what is listed.
func (w *writer) list(one *listing) {
	w.listed = append(w.listed, *one)
	of, n := one.note(), len(w.listed)
	if of.listed.first == 0 {
		of.listed.first, of.at = n, w.place(one.base.Path)
		w.shown = append(w.shown, one.subject)
	} else {
		w.listed[of.listed.last-1].next = n
	}
	of.listed.last = n
}

// place returns where a path stands in the file, or its nearest part that does.
func (w *writer) place(path string) verdict.Range {
	for path != "" {
		if at, ok := w.record.Places.Find(path); ok {
			return at
		}
		path = cutLast(path)
	}
	start := verdict.Position{Line: 1, Column: 1}
	return verdict.Range{Start: start, End: start}
}

// inOrder returns what is listed in the order of the verdicts: by place, then by
// rule, then by path. There are many more listings than subjects, and most subjects
// have a place of their own.
func (w *writer) inOrder() []*listing {
	slices.SortFunc(w.shown, comparePlaces)
	all := make([]*listing, 0, len(w.listed))
	for rest := w.shown; len(rest) > 0; {
		from, n := len(all), 1
		for n < len(rest) && comparePlaces(rest[n], rest[0]) == 0 {
			n++
		}
		for _, s := range rest[:n] {
			for i := s.listed.first; i > 0; i = w.listed[i-1].next {
				all = append(all, &w.listed[i-1])
			}
		}
		if here := all[from:]; !slices.IsSortedFunc(here, compareListings) {
			slices.SortFunc(here, compareListings)
		}
		rest = rest[n:]
	}
	return all
}

func comparePlaces(a, b *subject) int {
	return cmp.Or(cmp.Compare(a.at.Start.Line, b.at.Start.Line), cmp.Compare(a.at.Start.Column, b.at.Start.Column))
}

// compareListings orders what is listed at one place.
func compareListings(a, b *listing) int {
	if c := cmp.Compare(a.rule.number, b.rule.number); c != 0 {
		return c
	}
	return cmp.Or(strings.Compare(a.base.Path, b.base.Path), strings.Compare(a.id, b.id))
}
