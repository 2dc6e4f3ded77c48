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

	inForce []mask        // by number of the rule
	cites   [][]cites     // by number of the rule
	open    [][]candidate // what OPA has to say, by number of the rule
	later   []candidate   // what comes after all else

	failures []string          // of a yard's rules
	verdicts []verdict.Verdict // in order
	sites    []*site           // of the subjects at hand
	says     opinion           // of the rule at hand
}

// cites are the citations of some practice sets of a rule.
type cites struct {
	sets mask
	all  []verdict.Cited
}

// write puts the outcome of one pair in words.
func (w *writer) write(c *candidate, j *judged) {
	r := c.rule
	v := &w.verdicts[c.verdict]
	v.Rule, v.Outcome, v.Severity, v.Subject, v.At = &r.meta, j.outcome, r.meta.Severity, c.base.Path, c.at
	v.Sources, v.ID = w.cited(r, j), cmp.Or(c.base.Key, c.id)
	switch j.outcome {
	case verdict.Breach:
		v.Severity, v.Figures, v.Limit = j.shown.severity, r.brief(j.shown.figures), r.brief(j.shown.limit)
		v.Says, v.Remedy, v.Related = r.meta.Says, r.meta.Remedy, w.related(c)
		if v.Waiver = w.waivers.of(r.meta.ID, v.Subject); v.Waiver != nil {
			v.Outcome = verdict.Waived
		}
	case verdict.Undecided:
		v.Missing = j.missing
	case verdict.NotApplicable:
		v.Says = r.elsewhere
		if j.sets == 0 {
			v.Says = r.outside
		}
	}
}

// cited returns the citations that an outcome rests on. Verdicts of the same
// sets share them.
func (w *writer) cited(r *rule, j *judged) []verdict.Cited {
	if j.clauses != nil {
		return w.citations(r, j)
	}
	for _, c := range w.cites[r.number] {
		if c.sets == j.sets {
			return c.all
		}
	}
	c := cites{j.sets, w.citations(r, j)}
	w.cites[r.number] = append(w.cites[r.number], c)
	return c.all
}

func (w *writer) citations(r *rule, j *judged) []verdict.Cited {
	var all []verdict.Cited
	for _, c := range r.cited {
		set := r.bit(c.Set)
		if set&j.sets == 0 || j.clauses[set] != "" && j.clauses[set] != c.Clause {
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
