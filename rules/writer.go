package rules

import (
	"cmp"

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
	shown    []*subject                // of which something is listed
	site     *site
	sieve    sieve
	says     opinion // of the rule at hand
}

// cites are the citations of some practice sets of a rule.
type cites struct {
	sets mask
	all  []verdict.Cited
}

// write puts the outcomes in words.
func (w *writer) write() []verdict.Verdict {
	all := make([]verdict.Verdict, len(w.listed))
	for i, one := range w.inOrder() {
		w.verdict(one, &all[i])
	}
	return all
}

func (w *writer) verdict(s *listing, v *verdict.Verdict) {
	r, j := s.rule, s.breach
	v.Rule, v.Outcome, v.Severity, v.Subject, v.At = &r.meta, s.outcome, r.meta.Severity, s.base.Path, s.at
	v.Sources, v.ID = w.cited(r, s), cmp.Or(s.base.Key, s.id)
	switch s.outcome {
	case verdict.Breach:
		v.Severity, v.Figures, v.Limit = j.shown.severity, r.brief(j.shown.figures), r.brief(j.shown.limit)
		v.Says, v.Remedy, v.Related = r.meta.Says, r.meta.Remedy, w.related(s.subject)
		if v.Waiver = w.waivers.of(r.meta.ID, v.Subject); v.Waiver != nil {
			v.Outcome = verdict.Waived
		}
	case verdict.Undecided:
		v.Missing = s.missing
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

// cited returns the citations that an outcome rests on. Verdicts of the same
// sets share them.
func (w *writer) cited(r *rule, s *listing) []verdict.Cited {
	if s.outcome == verdict.Breach {
		return w.citations(r, s.sets, s.breach.clauses)
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
