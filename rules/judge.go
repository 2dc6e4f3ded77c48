package rules

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// candidate is a pair of a rule and a subject that is not judged in passing: OPA
// has to tell, or the verdicts on all others have to be known.
type candidate struct {
	rule *rule
	*seat
	verdict int // where its verdict goes
}

// seat is a subject at its place in the file.
type seat struct {
	*subject
	of *collection
	at verdict.Range
}

func (e *Engine) newWriter(r *record.Record, doc *facts.Document, today time.Time) (*writer, error) {
	w := &writer{
		engine: e, record: r, waivers: validWaivers(r, today),
		inForce: make([]mask, len(e.rules)), cites: make([][]cites, len(e.rules)), open: make([][]candidate, len(e.rules)),
	}
	w.look(doc)
	for i, rule := range e.rules {
		for _, set := range doc.Practice {
			w.inForce[i] |= rule.bit(set)
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
		w.binds, understood = law.read(w.sites[0])
	}
	if !understood {
		w.binds, err = law.consult(e.input(w.facts))
	}
	return w, err
}

// load reads the rules that have something to judge: all if OPA is to judge all.
func (w *writer) load() error {
	some := make([]*rule, 0, len(w.engine.rules))
	for i, r := range w.engine.rules {
		if w.plain || w.inForce[i] != 0 && len(w.facts.subjects[r.of.number]) > 0 {
			some = append(some, r)
		}
	}
	return w.engine.load(some)
}

// look turns to a document.
func (w *writer) look(doc *facts.Document) {
	w.facts = w.engine.list(doc)
	w.plain = w.engine.plain || !w.engine.whole(w.facts)
	w.sites = []*site{w.engine.newSite(w.facts)}
}

// judge judges every subject by every rule of its collection. Rules on waivers
// come last, since they see what became of the others.
func (w *writer) judge(doc *facts.Document) error {
	total := 0
	for _, rule := range w.engine.rules {
		total += len(w.facts.subjects[rule.of.number])
	}
	w.verdicts = make([]verdict.Verdict, 0, total)
	for seats := w.seats(); len(seats) > 0; {
		n := 1
		for n < len(seats) && seats[n].at.Start == seats[0].at.Start {
			n++
		}
		w.group(seats[:n])
		seats = seats[n:]
	}
	if err := w.consultAll(); err != nil || len(w.later) == 0 {
		return err
	}
	w.look(doc.Judged(w.waived(doc)))
	subjects := map[string]*subject{}
	for i := range w.facts.subjects[w.later[0].of.number] {
		s := &w.facts.subjects[w.later[0].of.number][i]
		subjects[s.id] = s
	}
	for _, c := range w.later {
		c.seat = &seat{subjects[c.id], c.of, c.at}
		w.sites[0].move(c.subject, c.of)
		w.one(&c, w.sites[0])
	}
	return w.consultAll()
}

// seats returns the subjects in the order of their verdicts: by place, then by
// path.
func (w *writer) seats() []*seat {
	total := 0
	for _, subjects := range w.facts.subjects {
		total += len(subjects)
	}
	all, order := make([]seat, 0, total), make([]*seat, 0, total)
	for _, of := range w.engine.kinds {
		subjects := w.facts.subjects[of.number]
		for i := range subjects {
			all = append(all, seat{&subjects[i], of, w.place(subjects[i].base.Path)})
			order = append(order, &all[len(all)-1])
		}
	}
	slices.SortFunc(order, compareSeats)
	return order
}

func compareSeats(a, b *seat) int {
	if c := cmp.Compare(a.at.Start.Line, b.at.Start.Line); c != 0 {
		return c
	}
	if c := cmp.Compare(a.at.Start.Column, b.at.Start.Column); c != 0 {
		return c
	}
	return cmp.Or(strings.Compare(a.base.Path, b.base.Path), cmp.Compare(a.of.number, b.of.number), strings.Compare(a.id, b.id))
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

// group judges the subjects of one place: rule by rule, as verdicts are ordered.
func (w *writer) group(seats []*seat) {
	for len(w.sites) < len(seats) {
		w.sites = append(w.sites, w.sites[0].another())
	}
	for i, s := range seats {
		w.sites[i].move(s.subject, s.of)
	}
	if len(seats) == 1 {
		for _, rule := range seats[0].of.rules {
			w.next(rule, seats[0], w.sites[0])
		}
		return
	}
	for _, rule := range w.engine.rules {
		for i, s := range seats {
			if s.of == rule.of {
				w.next(rule, s, w.sites[i])
			}
		}
	}
}

// next makes room for a verdict and judges, now or later.
func (w *writer) next(r *rule, s *seat, at *site) {
	w.verdicts = w.verdicts[:len(w.verdicts)+1]
	c := candidate{r, s, len(w.verdicts) - 1}
	if s.of.name == onWaivers {
		w.later = append(w.later, c)
		return
	}
	w.one(&c, at)
}

// one judges a subject by a rule, or leaves it to OPA.
func (w *writer) one(c *candidate, at *site) {
	number := c.rule.number
	if !w.plain && w.inForce[number] == 0 {
		w.write(c, &judged{outcome: verdict.NotApplicable})
		return
	}
	if w.plain || !c.rule.translated().opine(c.rule, at, w.inForce[number], &w.says) {
		w.open[number] = append(w.open[number], *c)
		return
	}
	j := c.rule.judge(at, w.inForce[number], &w.says)
	w.write(c, &j)
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
	at := w.sites[0]
	for _, c := range candidates {
		at.move(c.subject, c.of)
		says := f.opinion(r, c.id)
		j := r.judge(at, w.inForce[r.number], &says)
		w.write(&c, &j)
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
		w.write(&c, &judged{outcome: verdict.Undecided, sets: w.inForce[r.number], missing: []verdict.Gap{why}})
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
