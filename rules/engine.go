// Package rules judges the facts of an installation record by rules written in
// Rego, each of which rests on cited sources. The Rego says what is breached,
// to what a rule applies and which facts it asks for; this package makes of it
// one of five outcomes for every rule and every subject, so that nothing passes
// in silence.
package rules

import (
	"io/fs"
	"slices"
	"sync"
	"time"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Engine holds the compiled rules. It is safe for concurrent use.
type Engine struct {
	files  fs.FS
	kinds  map[string]*collection
	reg    register
	rules  []*rule // by id
	byID   map[string]*rule
	digest string
	// queries compiles the rules when they are first asked for.
	queries func() ([]query, error)
}

// New loads the rules that the program ships with. They are read and checked at
// once, and compiled when they first judge: to look a rule up needs no compiler.
func New() (*Engine, error) { return open(shipped) }

// newEngine loads and compiles the rules of a folder.
func newEngine(files fs.FS) (*Engine, error) {
	e, err := open(files)
	if err != nil {
		return nil, err
	}
	_, err = e.queries()
	return e, err
}

// open loads and checks the rules of a folder. The error joins every *Problem of
// every file.
func open(files fs.FS) (*Engine, error) {
	var faults problems
	e := &Engine{files: files, kinds: collections(), byID: map[string]*rule{}}
	e.reg = readRegister(files, &faults)
	named, err := policies(files)
	if err != nil {
		return nil, err
	}
	all, others := load(files, named, &faults)
	check := validator{reg: e.reg, kinds: e.kinds, faults: &faults}
	for _, r := range all {
		check.rule(r)
	}
	check.across(all)
	if err := faults.err(); err != nil {
		return nil, err
	}
	slices.SortFunc(all, func(a, b *rule) int { return compareIDs(a.meta.ID, b.meta.ID) })
	for _, r := range all {
		e.byID[r.meta.ID] = r
	}
	e.rules = all
	e.queries = sync.OnceValues(func() ([]query, error) { return build(files, all, others) })
	e.digest, err = digest(files)
	return e, err
}

// Judge judges a record by its facts and returns the verdict of every rule on
// every subject. Waivers hold up to and on their last day, counted by today. An
// error is a fault of a rule, not of the record.
func (e *Engine) Judge(r *record.Record, doc *facts.Document, today time.Time) (verdict.Record, error) {
	doc = doc.On(today)
	facts := e.list(doc)
	results, err := e.evaluate(e.input(facts))
	if err != nil {
		return verdict.Record{}, err
	}
	w := writer{
		engine: e, record: r, facts: facts, waivers: validWaivers(r, today),
		binds: readBinds(results[bindsKey]), practice: doc.Practice,
	}
	if err := w.rules(results, func(r *rule) bool { return r.of.name != onWaivers }); err != nil {
		return verdict.Record{}, err
	}
	if len(doc.Waivers) > 0 {
		// Rules on waivers see what became of the others.
		w.facts = e.list(doc.Judged(w.waived(doc)))
		results, err = e.evaluate(e.input(w.facts.only(onWaivers)))
		if err != nil {
			return verdict.Record{}, err
		}
		if err := w.rules(results, func(r *rule) bool { return r.of.name == onWaivers }); err != nil {
			return verdict.Record{}, err
		}
	}
	verdict.Sort(w.verdicts)
	return verdict.Record{
		Path: r.Name, SHA256: r.SHA256, Job: r.Job.Number.V, Title: r.Job.Title.V, Vessel: r.Vessel.Name.V,
		Practice: doc.Practice, Counts: verdict.Count(w.verdicts), Verdicts: w.verdicts,
	}, nil
}
