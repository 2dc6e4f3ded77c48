// Package rules judges the facts of an installation record by rules written in
// Rego, each of which rests on cited sources. The Rego says what is breached,
// to what a rule applies and which facts it asks for; this package makes of it
// one of five outcomes for every rule and every subject, so that nothing passes
// in silence.
package rules

import (
	"io/fs"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Engine holds the rules. It is safe for concurrent use.
type Engine struct {
	files  fs.FS
	kinds  map[string]*collection
	reg    register
	rules  []*rule // by id
	byID   map[string]*rule
	law    *law
	digest string
	plain  bool
	// translate reads all rules in Go, when the first record is judged.
	translate func()
}

// Option changes how an engine works.
type Option func(*Engine)

// Plain has OPA evaluate every rule on every subject, as stock OPA does. The
// verdicts are the same and take many times longer; it is a check on the
// engine's own reading of the rules.
func Plain() Option { return func(e *Engine) { e.plain = true } }

// New loads the rules that the program ships with. They are read and checked at
// once; a rule is compiled for OPA when it first finds something.
func New(options ...Option) (*Engine, error) {
	e, _, err := open(shipped)
	if err != nil {
		return nil, err
	}
	for _, option := range options {
		option(e)
	}
	return e, nil
}

// newEngine loads the rules of a folder and compiles them strictly.
func newEngine(files fs.FS) (*Engine, error) {
	e, modules, err := open(files)
	if err != nil {
		return nil, err
	}
	return e, verify(files, modules)
}

// open loads and checks the rules of a folder, and returns all of its policies.
// The error joins every *Problem of every file.
func open(files fs.FS) (*Engine, map[string]*ast.Module, error) {
	var faults problems
	e := &Engine{files: files, kinds: collections(), byID: map[string]*rule{}}
	e.reg = readRegister(files, &faults)
	named, err := policies(files)
	if err != nil {
		return nil, nil, err
	}
	all, modules := load(files, named, &faults)
	check := validator{reg: e.reg, kinds: e.kinds, faults: &faults}
	for _, r := range all {
		check.rule(r)
	}
	check.across(all)
	if modules[bindingFile] == nil {
		faults.add(bindingFile, 0, "the policy that decides which laws bind is missing")
	}
	if err := faults.err(); err != nil {
		return nil, nil, err
	}
	e.law = newLaw(modules[bindingFile], e.kinds)
	slices.SortFunc(all, func(a, b *rule) int { return compareIDs(a.meta.ID, b.meta.ID) })
	for i, r := range all {
		e.prepare(r, i)
		modules[r.file] = r.mod
	}
	e.translate = sync.OnceFunc(func() {
		parallel(e.rules, func(r *rule) { r.translated() })
	})
	e.digest, err = digest(files)
	return e, modules, err
}

// prepare makes a checked rule ready to judge.
func (e *Engine) prepare(r *rule, number int) {
	r.number = number
	r.elsewhere = "applies to " + r.meta.Applies
	r.outside = "no practice set in force brings this rule; it stands in " + strings.Join(r.sets, ", ")
	r.query = queryOf(r.file, r.mod, r.parts())
	r.mentions = r.mentioned(e.kinds)
	r.translated = sync.OnceValue(func() *translated { return translate(r, e.kinds) })
	for _, c := range r.meta.Sources {
		s := e.reg.sources[c.Source]
		r.cited = append(r.cited, verdict.Cited{Citation: c, Title: s.Title, Edition: s.Edition, Force: s.Force})
	}
	e.rules = append(e.rules, r)
	r.of.rules = append(r.of.rules, r)
	e.byID[r.meta.ID] = r
}

// Judge judges a record by its facts and returns the verdict of every rule on
// every subject. Waivers hold up to and on their last day, counted by today. An
// error is a fault of a rule, not of the record.
func (e *Engine) Judge(r *record.Record, doc *facts.Document, today time.Time) (verdict.Record, error) {
	e.translate()
	doc = doc.On(today)
	w, err := e.newWriter(r, doc, today)
	if err != nil {
		return verdict.Record{}, err
	}
	if err := w.judge(doc); err != nil {
		return verdict.Record{}, err
	}
	return verdict.Record{
		Path: r.Name, SHA256: r.SHA256, Job: r.Job.Number.V, Title: r.Job.Title.V, Vessel: r.Vessel.Name.V,
		Kind: r.Job.Kind.V, Practice: doc.Practice, Counts: verdict.Count(w.verdicts), Verdicts: w.verdicts,
	}, nil
}
