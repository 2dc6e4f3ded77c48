// Package rules judges the facts of an installation record by rules written in
// Rego, each of which rests on cited sources. The Rego says what is breached,
// to what a rule applies and which facts it asks for; this package makes of it
// one of five outcomes for every rule and every subject, so that nothing passes
// in silence.
package rules

import (
	"fmt"
	"io/fs"
	"slices"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/rego"

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
	query  rego.PreparedEvalQuery
	digest string
}

// New loads and compiles the rules that the program ships with.
func New() (*Engine, error) { return newEngine(shipped) }

// newEngine loads and compiles the rules of a folder. The error joins every
// *Problem of every file.
func newEngine(files fs.FS) (*Engine, error) {
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
	compiler := compile(files, modules(all, others), &faults)
	if err := faults.err(); err != nil {
		return nil, err
	}
	slices.SortFunc(all, func(a, b *rule) int { return compareIDs(a.meta.ID, b.meta.ID) })
	for _, r := range all {
		e.byID[r.meta.ID] = r
	}
	e.rules = all
	if e.query, err = prepare(compiler, all); err != nil {
		return nil, fmt.Errorf("prepare rules: %w", err)
	}
	e.digest, err = digest(files)
	return e, err
}

// modules returns the parsed files by name.
func modules(all []*rule, others map[string]*ast.Module) map[string]*ast.Module {
	parsed := map[string]*ast.Module{}
	for name, module := range others {
		parsed[name] = module
	}
	for _, r := range all {
		parsed[r.file] = r.mod
	}
	return parsed
}

// Judge judges a record by its facts and returns the verdict of every rule on
// every subject. Waivers hold up to and on their last day, counted by today. An
// error is a fault of a rule, not of the record.
func (e *Engine) Judge(r *record.Record, doc *facts.Document, today time.Time) (verdict.Record, error) {
	facts := e.open(doc)
	results, err := e.evaluate(e.input(facts))
	if err != nil {
		return verdict.Record{}, err
	}
	w := writer{
		engine: e, record: r, facts: facts, waivers: validWaivers(r, today),
		binds: readBinds(results[bindsKey]), practice: doc.Practice,
	}
	for _, rule := range e.rules {
		result, _ := results[rule.meta.ID].(map[string]any)
		if err := w.rule(rule, result); err != nil {
			return verdict.Record{}, err
		}
	}
	verdict.Sort(w.verdicts)
	return verdict.Record{
		Path: r.Name, SHA256: r.SHA256, Job: r.Job.Number.V, Title: r.Job.Title.V, Vessel: r.Vessel.Name.V,
		Practice: doc.Practice, Counts: verdict.Count(w.verdicts), Verdicts: w.verdicts,
	}, nil
}
