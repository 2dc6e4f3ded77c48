package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
)

// writer turns the outcomes of one record into verdicts.
type writer struct {
	engine   *Engine
	record   *record.Record
	facts    document
	waivers  waivers
	binds    map[string]bool
	practice []string

	verdicts []verdict.Verdict
}

// rules adds the verdicts of the rules that are chosen.
func (w *writer) rules(results map[string]any, chosen func(*rule) bool) error {
	for _, r := range w.engine.rules {
		if !chosen(r) {
			continue
		}
		result, _ := results[r.meta.ID].(map[string]any)
		if err := w.rule(r, result); err != nil {
			return err
		}
	}
	return nil
}

// rule adds the verdicts of one rule on all its subjects.
func (w *writer) rule(r *rule, result map[string]any) error {
	f, err := r.decode(result)
	if err != nil {
		return err
	}
	subjects := w.facts.subjects[r.of.name]
	if err := f.known(r, subjects); err != nil {
		return err
	}
	inForce := mask(0)
	for _, set := range w.practice {
		inForce |= r.bit(set)
	}
	for i := range subjects {
		s := &subjects[i]
		w.add(r, s, r.judge(s, inForce, &f, w.facts.singles))
	}
	return nil
}

// known checks that the rule speaks only of subjects that there are.
func (f *found) known(r *rule, subjects []subject) error {
	ids := make(map[string]bool, len(subjects))
	for i := range subjects {
		ids[subjects[i].id] = true
	}
	for id := range f.breach {
		if !ids[id] {
			return fmt.Errorf("rule %s: breach names %q, which is none of %s", r.meta.ID, id, r.of.name)
		}
	}
	for id := range f.applies {
		if !ids[id] {
			return fmt.Errorf("rule %s: applies names %q, which is none of %s", r.meta.ID, id, r.of.name)
		}
	}
	return nil
}

// add puts one outcome in words.
func (w *writer) add(r *rule, s *subject, j judged) {
	v := verdict.Verdict{
		Rule: &r.meta, Outcome: j.outcome, Severity: r.meta.Severity, Subject: s.base.Path, At: w.place(s.base.Path),
		Sources: w.cited(r, j), Fingerprint: fingerprint(r.meta.ID, w.record.Job.Number.V, s.id),
	}
	switch j.outcome {
	case verdict.Breach:
		v.Severity, v.Figures, v.Limit = j.shown.severity, j.shown.figures, j.shown.limit
		v.Says, v.Remedy = r.meta.Says, r.meta.Remedy
		if v.Waiver = w.waivers.of(r.meta.ID, v.Subject); v.Waiver != nil {
			v.Outcome = verdict.Waived
		}
	case verdict.Undecided:
		for _, g := range j.missing {
			v.Missing = append(v.Missing, verdict.Gap{Field: g.Field, Why: g.Why})
		}
	case verdict.NotApplicable:
		v.Says = "applies to " + r.meta.Applies
		if j.sets == 0 {
			v.Says = "no practice set in force brings this rule; it stands in " + strings.Join(r.sets, ", ")
		}
	}
	w.verdicts = append(w.verdicts, v)
}

// place returns where a path stands in the file, or its nearest part that does.
func (w *writer) place(path string) verdict.Range {
	for path != "" {
		if at, ok := w.record.Places[path]; ok {
			return at
		}
		path = cutLast(path)
	}
	start := verdict.Position{Line: 1, Column: 1}
	return verdict.Range{Start: start, End: start}
}

// cited returns the citations that an outcome rests on.
func (w *writer) cited(r *rule, j judged) []verdict.Cited {
	var all []verdict.Cited
	for _, c := range r.meta.Sources {
		set := r.bit(c.Set)
		if set&j.sets == 0 || j.clauses[set] != "" && j.clauses[set] != c.Clause {
			continue
		}
		s := w.engine.reg.sources[c.Source]
		cited := verdict.Cited{Citation: c, Title: s.Title, Edition: s.Edition, Force: s.Force}
		if s.Force == verdict.Law {
			if binds, known := w.binds[c.Source]; known {
				cited.Binds = &binds
			}
		}
		all = append(all, cited)
	}
	return all
}

// fingerprint identifies a verdict across revisions of a record: it stays the
// same when the file is renamed or its entries change places.
func fingerprint(rule, job, subject string) string {
	sum := sha256.Sum256([]byte(rule + "\x00" + job + "\x00" + subject))
	return hex.EncodeToString(sum[:8])
}

// readBinds reads which sources bind the vessel; what is not decided is absent.
func readBinds(result any) map[string]bool {
	binds := map[string]bool{}
	decided, _ := result.(map[string]any)
	for id, value := range decided {
		if yes, ok := value.(bool); ok {
			binds[id] = yes
		}
	}
	return binds
}
