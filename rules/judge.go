package rules

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// candidate is a pair of a rule and a subject that OPA has to judge.
type candidate struct {
	rule *rule
	*subject
}

func (e *Engine) newWriter(r *record.Record, doc *facts.Document, today time.Time) (*writer, error) {
	w := &writer{
		engine: e, record: r, waivers: validWaivers(r, today),
		inForce: make([]mask, len(e.rules)), cites: make([][]cites, len(e.rules)), open: make([][]candidate, len(e.rules)),
	}
	w.look(doc)
	for _, set := range doc.Practice {
		for _, part := range e.bySet[set] {
			w.inForce[part.rule.slot] |= part.bit
		}
	}
	if err := w.load(); err != nil {
		return nil, err
	}
	law, err := e.law()
	if err != nil {
		return nil, err
	}
	var understood bool
	if !w.plain {
		w.binds, understood = law.read(w.site)
	}
	if !understood {
		w.binds, err = law.consult(e.input(w.facts))
	}
	return w, err
}

// load reads the rules that have something to judge: all if OPA is to judge all.
func (w *writer) load() error {
	some := make([]*rule, 0, len(w.engine.rules))
	for _, r := range w.engine.rules {
		if w.plain || w.inForce[r.slot] != 0 && len(w.facts.subjects[r.of.number]) > 0 {
			some = append(some, r)
		}
	}
	return w.engine.load(some)
}

// look turns to a document.
func (w *writer) look(doc *facts.Document) {
	w.facts = w.engine.list(doc)
	w.plain = w.engine.plain || !w.engine.whole(w.facts)
	w.site = w.engine.newSite(w.facts)
}

// judge judges every subject by every rule of its collection. Rules on waivers
// come last, since they see what became of the others.
func (w *writer) judge(doc *facts.Document) error {
	if w.every {
		total := 0
		for _, kind := range w.engine.kinds {
			total += len(w.facts.subjects[kind.number]) * len(kind.rules)
		}
		w.listed = make([]listing, 0, total)
	}
	last := w.engine.kinds[onWaivers]
	for _, kind := range w.engine.kinds {
		if kind != last {
			w.judgeAll(kind)
		}
	}
	if err := w.consultAll(); err != nil || len(w.facts.subjects[last.number]) == 0 {
		return err
	}
	w.look(doc.Judged(w.waived(doc)))
	w.judgeAll(last)
	return w.consultAll()
}

// judgeAll judges the subjects of one kind.
func (w *writer) judgeAll(kind *collection) {
	subjects := w.facts.subjects[kind.number]
	if w.plain {
		for _, r := range kind.rules {
			for i := range subjects {
				w.open[r.number] = append(w.open[r.number], candidate{r, &subjects[i]})
			}
		}
		return
	}
	w.sieve.site = w.site
	for part := range slices.Chunk(subjects, batch) {
		w.sieve.turn(kind, part)
		for i := range kind.rules {
			w.sift(kind, i)
		}
	}
}

// sift judges the batch at hand by one rule of its kind.
func (w *writer) sift(kind *collection, i int) {
	s, r, inForce := &w.sieve, kind.rules[i], w.inForce[kind.first+i]
	var out sifted
	if inForce != 0 {
		p := kind.programs[i].Load()
		if p == nil { // another record calls for the rule just now
			p = &r.translated().program
		}
		s.sift(p, inForce, &out)
	}
	w.pass(r, inForce, &out)
	for i := range out.closer.each() {
		w.one(candidate{r, &s.subjects[i]})
	}
}

// pass takes note of the subjects that passed.
func (w *writer) pass(r *rule, inForce mask, out *sifted) {
	passed := w.sieve.all &^ out.closer
	if !w.every {
		met := (passed & out.applies).count()
		w.passed.met += met
		w.passed.beside += passed.count() - met
		return
	}
	for i := range passed.each() {
		outcome, sets := verdict.NotApplicable, inForce
		if out.applies&(1<<i) != 0 {
			outcome, sets = verdict.Met, out.bySet.sets(i, inForce)
		}
		w.list(&listing{candidate: candidate{r, &w.sieve.subjects[i]}, outcome: outcome, sets: sets})
	}
}

// one judges a subject by a rule, or leaves it to OPA.
func (w *writer) one(c candidate) {
	r, inForce := c.rule, w.inForce[c.rule.slot]
	w.site.own = c.subject
	if !r.translated().opine(r, w.site, inForce, &w.says) {
		w.open[r.number] = append(w.open[r.number], c)
		return
	}
	j := r.judge(w.site, inForce, &w.says)
	w.settle(c, &j)
}

// consultAll has OPA tell what is open.
func (w *writer) consultAll() error {
	w.compile()
	var whole ast.Value
	if w.plain {
		whole = w.engine.input(w.facts)
	}
	for number, candidates := range w.open {
		if len(candidates) == 0 {
			continue
		}
		w.open[number] = nil
		if err := w.consult(w.engine.rules[number], candidates, whole); err != nil {
			return err
		}
	}
	return nil
}

// consult has OPA judge candidates by a rule. Unless it is given the whole
// document it gets no other subjects: a rule speaks of one subject at a time.
func (w *writer) consult(r *rule, candidates []candidate, input ast.Value) error {
	if input == nil {
		input = r.input(w.facts, candidates)
	}
	f, err := r.consult(input)
	var runaway *RunawayError
	if err != nil && r.yard != nil && !errors.As(err, &runaway) {
		w.give(r, candidates, err)
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s: %w", r.shown, err)
	}
	for _, c := range candidates {
		w.site.own = c.subject
		says := f.opinion(r, c.id)
		j := r.judge(w.site, w.inForce[r.slot], &says)
		w.settle(c, &j)
	}
	return nil
}

// give gives up on a yard's rule: what it should have judged is undecided, and
// the failure is told.
func (w *writer) give(r *rule, candidates []candidate, err error) {
	says := brief(err.Error())
	w.failures = append(w.failures, fmt.Sprintf("%s: the rule %s could not be evaluated: %s", r.shown, r.meta.ID, says))
	why := verdict.Gap{Why: "the rule could not be evaluated: " + says}
	for _, c := range candidates {
		w.settle(c, &judged{outcome: verdict.Undecided, sets: w.inForce[r.slot], missing: []verdict.Gap{why}})
	}
}

// compile compiles those rules side by side that OPA is asked of for the first
// time.
func (w *writer) compile() {
	var first []*rule
	for number, candidates := range w.open {
		if r := w.engine.rules[number]; len(candidates) > 0 && !r.query.ready.Load() {
			first = append(first, r)
		}
	}
	if len(first) > 1 {
		parallel(first, func(r *rule) { _, _ = r.query.prepared() }) // an error comes again
	}
}
