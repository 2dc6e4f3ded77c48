package rules

import (
	"cmp"
	"slices"
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
)

// writer judges one record and turns the outcomes into verdicts.
type writer struct {
	engine  *Engine
	record  *record.Record
	facts   document
	waivers waivers
	binds   map[string]bool
	plain   bool
	every   bool // what is met or not applicable is listed, too

	inForce []mask        // by slot of the rule
	cites   [][]cites     // by number of the rule
	open    [][]candidate // what OPA has to say, by number of the rule

	failures []string                  // of a yard's rules
	passed   struct{ met, beside int } // what is not listed, the rule not applying to the latter
	listed   []listing                 // what is
	site     *site
	sieve    sieve
	says     opinion // of the rule at hand
}

// listing is an outcome that is listed.
type listing struct {
	candidate
	outcome verdict.Outcome
	sets    mask
	more    *judged // nil of what is met or not applicable
}

// cites are the citations of some practice sets of a rule.
type cites struct {
	sets mask
	all  []verdict.Cited
}

// settle takes note of the outcome of one pair.
func (w *writer) settle(c candidate, j judged) {
	switch {
	case !w.every && j.outcome == verdict.Met:
		w.passed.met++
	case !w.every && j.outcome == verdict.NotApplicable:
		w.passed.beside++
	default:
		w.list(c, j.outcome, j.sets, &j)
	}
}

func (w *writer) list(c candidate, outcome verdict.Outcome, sets mask, more *judged) {
	w.place(c.subject)
	w.listed = append(w.listed, listing{c, outcome, sets, more})
}

// write puts the outcomes in words.
func (w *writer) write() []verdict.Verdict {
	w.order()
	all := make([]verdict.Verdict, len(w.listed))
	for i := range w.listed {
		w.verdict(&w.listed[i], &all[i])
	}
	return all
}

func (w *writer) verdict(s *listing, v *verdict.Verdict) {
	r, j := s.rule, s.more
	v.Rule, v.Outcome, v.Severity, v.Subject, v.At = &r.meta, s.outcome, r.meta.Severity, s.base.Path, *s.at
	v.Sources, v.ID = w.cited(r, s), cmp.Or(s.base.Key, s.id)
	switch s.outcome {
	case verdict.Breach:
		v.Severity, v.Figures, v.Limit = j.shown.severity, r.brief(j.shown.figures), r.brief(j.shown.limit)
		v.Says, v.Remedy, v.Related = r.meta.Says, r.meta.Remedy, w.related(s.subject)
		if v.Waiver = w.waivers.of(r.meta.ID, v.Subject); v.Waiver != nil {
			v.Outcome = verdict.Waived
		}
	case verdict.Undecided:
		v.Missing = j.missing
	case verdict.NotApplicable:
		v.Says = r.elsewhere
		if s.sets == 0 {
			v.Says = r.outside
		}
	}
}

// counts counts what is listed and what is not.
func (w *writer) counts(listed []verdict.Verdict) verdict.Counts {
	all := verdict.Count(listed)
	all[verdict.Met] += w.passed.met
	all[verdict.NotApplicable] += w.passed.beside
	return all
}

// place finds where a subject stands in the file, or its nearest part that does.
func (w *writer) place(s *subject) {
	if s.at != nil {
		return
	}
	start := verdict.Position{Line: 1, Column: 1}
	at := verdict.Range{Start: start, End: start}
	for path := s.base.Path; path != ""; path = cutLast(path) {
		if stands, ok := w.record.Places.Find(path); ok {
			at = stands
			break
		}
	}
	s.at = &at
}

// order puts what is listed in order: by place, then by rule, then by path.
func (w *writer) order() {
	slices.SortFunc(w.listed, func(a, b listing) int {
		if c := cmp.Compare(a.at.Start.Line, b.at.Start.Line); c != 0 {
			return c
		}
		if c := cmp.Compare(a.at.Start.Column, b.at.Start.Column); c != 0 {
			return c
		}
		if c := cmp.Compare(a.rule.number, b.rule.number); c != 0 {
			return c
		}
		return cmp.Or(strings.Compare(a.base.Path, b.base.Path), strings.Compare(a.id, b.id))
	})
}

// cited returns the citations that an outcome rests on. Verdicts of the same
// sets share them.
func (w *writer) cited(r *rule, s *listing) []verdict.Cited {
	if s.outcome == verdict.Breach {
		return w.citations(r, s.sets, s.more.clauses)
	}
	for _, c := range w.cites[r.number] {
		if c.sets == s.sets {
			return c.all
		}
	}
	c := cites{s.sets, w.citations(r, s.sets, nil)}
	w.cites[r.number] = append(w.cites[r.number], c)
	return c.all
}

func (w *writer) citations(r *rule, sets mask, only map[mask]string) []verdict.Cited {
	var all []verdict.Cited
	for _, c := range r.cited {
		set := r.bit(c.Set)
		if set&sets == 0 || only[set] != "" && only[set] != c.Clause {
			continue
		}
		if c.Force == verdict.Law {
			if binds, known := w.binds[c.Source]; known {
				c.Binds = &binds
			}
		}
		all = append(all, c)
	}
	return all
}
