// Package rules judges the facts of an installation record by rules written in
// Rego, each of which rests on cited sources. The Rego says what is breached,
// to what a rule applies and which facts it asks for; this package makes of it
// one of five outcomes for every rule and every subject, so that nothing passes
// in silence.
package rules

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
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
	bySet  map[string][]brought // the rules of each practice set
	top    []string             // policies that belong to no rule
	law    func() (*law, error)
	digest string
	plain  bool
}

// brought is a rule that a practice set brings.
type brought struct {
	rule *rule
	bit  mask
}

// Option changes how an engine works.
type Option func(*Engine)

// Plain has OPA evaluate every rule on every subject, as stock OPA does. The
// verdicts are the same and take many times longer; it is a check on the
// engine's own reading of the rules.
func Plain() Option { return func(e *Engine) { e.plain = true } }

// New loads the rules that the program ships with. Their metadata is read and
// checked at once; the Rego of a rule is read and checked when a record first
// calls for it, and compiled for OPA when it first finds something.
func New(options ...Option) (*Engine, error) {
	e, faults, err := open(shipped, nil)
	if err = errors.Join(err, faults.err()); err != nil {
		return nil, err
	}
	for _, option := range options {
		option(e)
	}
	return e, nil
}

// newEngine loads the rules of a folder, checks all of them and compiles them
// strictly. The error joins every *Problem of every file.
func newEngine(files fs.FS) (*Engine, error) {
	e, faults, err := open(files, nil)
	if err != nil {
		return nil, err
	}
	modules := map[string]*ast.Module{}
	parallel(e.rules, func(r *rule) { r.read() })
	for _, r := range e.rules {
		faults = append(faults, r.read()...)
		modules[r.file] = r.mod
	}
	for _, name := range e.top {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, fmt.Errorf("read rules: %w", err)
		}
		modules[name] = parse(name, string(text), capabilities(), &faults)
	}
	if err := faults.err(); err != nil {
		return nil, err
	}
	return e, verify(modules, capabilities()).err()
}

// open reads the registers of a folder of rules and the metadata of each, and
// returns what is wrong with them.
func open(files fs.FS, yards []*Folder) (*Engine, problems, error) {
	var faults problems
	e := &Engine{files: files, kinds: collections(), byID: map[string]*rule{}, bySet: map[string][]brought{}}
	e.reg = readRegister(files, &faults)
	named, err := policies(files)
	if err != nil {
		return nil, nil, err
	}
	inTopic := named[:0:0]
	for _, name := range named {
		if path.Dir(name) == "." {
			e.top = append(e.top, name)
		} else {
			inTopic = append(inTopic, name)
		}
	}
	if !slices.Contains(e.top, bindingFile) {
		faults.add(bindingFile, 0, "the policy that decides which laws bind is missing")
	}
	e.law = sync.OnceValues(func() (*law, error) { return readLaw(files, e.kinds) })
	e.rules = load(files, inTopic, &faults)
	for _, f := range yards {
		faults = append(faults, e.add(f)...)
	}
	check := validator{reg: e.reg, kinds: e.kinds, faults: &faults}
	for _, r := range e.rules {
		check.metadata(r)
	}
	check.across(e.rules)
	slices.SortFunc(e.rules, func(a, b *rule) int { return compareIDs(a.meta.ID, b.meta.ID) })
	for i, r := range e.rules {
		e.prepare(r, i)
	}
	e.place()
	e.digest, err = digests(files, yards)
	return e, faults, err
}

// place gives each rule its slot, those that judge the same kind next to each
// other.
func (e *Engine) place() {
	slot := 0
	for _, name := range names(e.kinds) {
		kind := e.kinds[name]
		kind.first, kind.programs = slot, make([]atomic.Pointer[program], len(kind.rules))
		for _, r := range kind.rules {
			r.slot = slot
			slot++
		}
	}
}

// prepare makes a rule ready.
func (e *Engine) prepare(r *rule, number int) {
	r.number = number
	r.elsewhere = "applies to " + r.meta.Applies
	for _, set := range r.sets {
		e.bySet[set] = append(e.bySet[set], brought{r, r.bit(set)})
	}
	r.outside = "no practice set in force brings this rule; it stands in " + strings.Join(r.sets, ", ")
	r.read = sync.OnceValue(func() problems { return e.read(r) })
	for _, c := range r.meta.Sources {
		if s := e.reg.sources[c.Source]; s != nil {
			r.cited = append(r.cited, verdict.Cited{Citation: c, Title: s.Title, Edition: s.Edition, Force: s.Force})
		}
	}
	if r.of != nil {
		r.of.rules = append(r.of.rules, r)
	}
	e.byID[r.meta.ID] = r
}

// load reads those of some rules side by side that are not read yet.
func (e *Engine) load(some []*rule) error {
	var first []*rule
	for _, r := range some {
		if !r.isRead.Load() {
			first = append(first, r)
		}
	}
	if len(first) == 0 {
		return nil
	}
	parallel(first, func(r *rule) {
		if faults := r.read(); len(faults) == 0 && !e.plain {
			r.translated()
		}
	})
	var faults problems
	for _, r := range first {
		faults = append(faults, r.read()...)
	}
	return faults.err()
}

// Judge judges a record by its facts and returns the verdict of every rule on
// every subject. Waivers hold up to and on their last day, counted by today. An
// error is a fault of a rule, not of the record; see YardError and RunawayError
// for those of a yard's own.
func (e *Engine) Judge(r *record.Record, doc *facts.Document, today time.Time) (verdict.Record, error) {
	return e.judge(r, doc, today, true)
}

// JudgeBriefly judges as Judge does, in a tenth of the time, and returns the
// verdicts that stand against the record: what is met or not applicable is only
// counted.
func (e *Engine) JudgeBriefly(r *record.Record, doc *facts.Document, today time.Time) (verdict.Record, error) {
	return e.judge(r, doc, today, false)
}

func (e *Engine) judge(r *record.Record, doc *facts.Document, today time.Time, every bool) (verdict.Record, error) {
	doc = doc.On(today)
	w, err := e.newWriter(r, doc, today)
	if err != nil {
		return verdict.Record{}, err
	}
	w.every = every
	if err := w.judge(doc); err != nil {
		return verdict.Record{}, err
	}
	verdicts := w.write()
	judged := verdict.Record{
		Path: r.Name, SHA256: r.SHA256, Job: r.Job.Number.V, Title: r.Job.Title.V, Vessel: r.Vessel.Name.V,
		Kind: r.Job.Kind.V, Practice: doc.Practice, Counts: w.counts(verdicts), Verdicts: verdicts,
	}
	if len(w.failures) > 0 {
		return judged, &YardError{w.failures}
	}
	return judged, nil
}

// YardError says which rules of a yard could not be evaluated on a record. The
// verdicts are there all the same, with what those rules should have judged
// undecided.
type YardError struct{ Failures []string }

func (e *YardError) Error() string { return strings.Join(e.Failures, "; ") }
