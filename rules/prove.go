package rules

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/storage/inmem"
	"github.com/open-policy-agent/opa/v1/tester"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Proof is what proving a folder of rules found.
type Proof struct {
	Rules    []*verdict.Rule
	Tests    int // Rego tests that passed
	Examples int // records that were judged as they are marked
}

// Prove checks a yard's folder of rules as far as it can be checked without its
// records: each rule is read, checked against the facts and for silence, and
// compiled strictly; its tests are run and its examples judged. The error joins
// every *Problem.
func Prove(f *Folder) (Proof, error) {
	e, err := NewWith(f)
	if err != nil {
		return Proof{}, err
	}
	return bounded(bounds{"proving the rules", 2 * time.Minute, 1 << 30}, func(ctx context.Context) (Proof, error) {
		p := prover{engine: e, folder: f}
		for _, r := range e.rules {
			if r.yard == f {
				p.own = append(p.own, r)
				p.proof.Rules = append(p.proof.Rules, &r.meta)
			}
		}
		if len(p.own) == 0 {
			p.faults.add(f.Path, 0, "holds no rule; a rule stands in %s/<topic>/<fault>.rego, and driploop start rule topic/fault begins one", f.Path)
		}
		p.tests(ctx)
		for _, r := range p.own {
			p.example(r)
		}
		p.strays()
		return p.proof, p.faults.err()
	})
}

// prover proves the rules of one folder.
type prover struct {
	engine *Engine
	folder *Folder
	own    []*rule
	proof  Proof
	faults problems
}

// tests runs the Rego tests of all rules.
func (p *prover) tests(ctx context.Context) {
	modules := map[string]*ast.Module{}
	may := yardCapabilities(forTests[:]...)
	for _, r := range p.own {
		modules[r.shown] = r.mod
		name := strings.TrimSuffix(r.file, ".rego") + "_test.rego"
		shown := path.Join(p.folder.Path, name)
		if _, err := fs.Stat(p.folder.Files, name); errors.Is(err, fs.ErrNotExist) {
			p.faults.add(shown, 0, "is missing: the tests of %s, one that finds and one that is silent at least", r.meta.ID)
			continue
		}
		if !p.folder.ordinary(name, shown, &p.faults) {
			continue
		}
		text, err := fs.ReadFile(p.folder.Files, name)
		if err != nil {
			p.faults.add(shown, 0, "%v", err)
			continue
		}
		test := parse(shown, string(text), may, &p.faults)
		if test == nil {
			continue
		}
		if want, got := r.pkg+"_test", strings.TrimPrefix(test.Package.Path.String(), "data."); got != want {
			p.faults.addAt(shown, test.Package.Location, "package %s is not that of the tests of %s; write package %s", got, r.meta.ID, want)
			continue
		}
		if n := len(slices.DeleteFunc(slices.Clone(test.Rules), func(t *ast.Rule) bool { return !strings.HasPrefix(nameOf(t), "test_") })); n < 2 {
			p.faults.addAt(shown, test.Package.Location, "has %d tests; write one that finds and one that is silent at least", n)
		}
		modules[shown] = test
	}
	if len(p.faults) == 0 {
		p.run(ctx, modules, may)
	}
}

func (p *prover) run(ctx context.Context, modules map[string]*ast.Module, may *ast.Capabilities) {
	store := inmem.New()
	txn, err := store.NewTransaction(ctx)
	if err != nil {
		p.faults.add(p.folder.Path, 0, "%v", err)
		return
	}
	defer store.Abort(ctx, txn)
	compiler := ast.NewCompiler().WithCapabilities(may).WithDefaultRegoVersion(ast.RegoV1)
	results, err := tester.NewRunner().SetStore(store).SetCompiler(compiler).SetModules(modules).SetTimeout(5*time.Second).RunTests(ctx, txn)
	if err != nil {
		addParse(&p.faults, p.folder.Path, err)
		return
	}
	for result := range results {
		at := &ast.Location{Row: 0}
		file := p.folder.Path
		if result.Location != nil {
			at, file = result.Location, result.Location.File
		}
		switch {
		case result.Pass():
			p.proof.Tests++
		case result.Error != nil:
			p.faults.addAt(file, at, "%s fails: %v", result.Name, result.Error)
		default:
			p.faults.addAt(file, at, "%s does not hold", result.Name)
		}
	}
}

// exampleDay is the day on which examples are judged, so that they read the same
// for ever.
func exampleDay() time.Time { return time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC) }

// example judges the records of a rule's example and holds the verdicts against
// their marks.
func (p *prover) example(r *rule) {
	name := strings.TrimSuffix(r.file, ".rego") + ".yaml"
	shown := path.Join(p.folder.Path, name)
	if _, err := fs.Stat(p.folder.Files, name); errors.Is(err, fs.ErrNotExist) {
		p.faults.add(shown, 0, `is missing: records that break %s, cure it and leave it open, parted by "---"`, r.meta.ID)
		return
	}
	if !p.folder.ordinary(name, shown, &p.faults) {
		return
	}
	example, err := p.engine.Example(r.meta.ID)
	if err != nil {
		p.faults.add(shown, 0, "%s", strings.TrimPrefix(err.Error(), name+": "))
		return
	}
	written, err := readExample(p.folder.Files, name)
	if err != nil {
		p.faults.add(shown, 0, "%v", err)
		return
	}
	x := exhibit{prover: p, rule: r, shown: shown, written: []Part{written.Breach, written.Cure, written.Open}}
	x.part("the breach", example.Breach, verdict.Breach, "want")
	x.part("the cure", example.Cure, verdict.Met, "")
	switch canOpen := len(r.meta.Needs)+len(r.meta.Asks)+len(r.meta.Decides) > 0; {
	case canOpen && example.Open.Text == "":
		p.faults.add(shown, 0, "has no third record, in which a fact that the rule needs is missing")
	case example.Open.Text != "":
		x.part("the open record", example.Open, verdict.Undecided, "open")
	}
}

// exhibit is an example while it is judged.
type exhibit struct {
	*prover
	rule    *rule
	shown   string
	written []Part // the records as they stand in the file
	above   int    // lines of the records before
}

// marks are comments such as "# want topic/fault", at the lines that a verdict
// is to point at.
var marks = regexp.MustCompile(`# (want|open) ([a-z0-9-]+/[a-z0-9-]+(?:, [a-z0-9-]+/[a-z0-9-]+)*)`)

// marked returns the lines that carry a mark of the kind for the rule.
func marked(text, kind, id string) (lines []int) {
	for i, line := range strings.Split(text, "\n") {
		for _, m := range marks.FindAllStringSubmatch(line, -1) {
			if m[1] == kind && slices.Contains(strings.Split(m[2], ", "), id) {
				lines = append(lines, i+1)
			}
		}
	}
	return lines
}

func (x *exhibit) fault(line int, format string, args ...any) {
	x.faults.add(x.shown, x.above+line, format, args...)
}

// part judges one record of an example: it has verdicts of one outcome, exactly
// at its marks if there are to be some, and none that contradict it.
func (x *exhibit) part(what string, part Part, want verdict.Outcome, kind string) {
	defer func() {
		x.above += strings.Count(x.written[0].Text, "\n") + 1
		x.written = x.written[1:]
	}()
	r, faults := record.Decode(x.shown, []byte(part.Text))
	for _, f := range faults {
		x.fault(f.At.Start.Line, "%s", f.Says)
		x.faults[len(x.faults)-1].Column = f.At.Start.Column
	}
	if len(faults) > 0 {
		return
	}
	judged, err := x.engine.Judge(r, facts.Build(r, circuit.Analyse(r)), exampleDay())
	if err != nil {
		x.fault(1, "%s: %v", what, err)
		return
	}
	x.examined(what, part, want, kind, judged.Verdicts)
}

func (x *exhibit) examined(what string, part Part, want verdict.Outcome, kind string, verdicts []verdict.Verdict) {
	id := x.rule.meta.ID
	var at []int
	before := len(x.faults)
	for i := range verdicts {
		v := &verdicts[i]
		switch {
		case v.Rule.ID != id:
		case v.Outcome == want:
			at = append(at, v.At.Start.Line)
		case v.Outcome == verdict.Breach, v.Outcome == verdict.Undecided && want != verdict.Undecided:
			x.fault(v.At.Start.Line, "%s: %s is %s at %s, where it should be %s%s", what, id, v.Outcome, v.Subject, want, lacking(v))
		}
	}
	if kind == "" {
		if len(at) == 0 && before == len(x.faults) {
			x.fault(1, "%s: %s is %s nowhere in it", what, id, want)
		}
	} else {
		x.held(what, id, want, kind, marked(part.Text, kind, id), at)
	}
	if before == len(x.faults) {
		x.proof.Examples++
	}
}

// held compares the lines that carry marks with those that verdicts point at.
func (x *exhibit) held(what, id string, want verdict.Outcome, kind string, marked, at []int) {
	if len(marked) == 0 {
		x.fault(1, `%s: no line is marked; write "# %s %s" at the line that the verdict points at`, what, kind, id)
	}
	for _, line := range marked {
		if !slices.Contains(at, line) {
			x.fault(line, "%s: marked, and %s is not %s here", what, id, want)
		}
	}
	for _, line := range at {
		if !slices.Contains(marked, line) && len(marked) > 0 {
			x.fault(line, "%s: %s is %s here, and the line is not marked", what, id, want)
		}
	}
}

func lacking(v *verdict.Verdict) string {
	if len(v.Missing) == 0 {
		return ""
	}
	gaps := make([]string, len(v.Missing))
	for i, g := range v.Missing {
		gaps[i] = g.String()
	}
	return ": missing " + strings.Join(gaps, ", ")
}

// strays refuses tests and examples that belong to no rule.
func (p *prover) strays() {
	rule := map[string]bool{}
	for _, r := range p.own {
		rule[strings.TrimSuffix(r.file, ".rego")] = true
	}
	for _, pattern := range []string{"*/*_test.rego", "*/*.yaml"} {
		found, err := fs.Glob(p.folder.Files, pattern)
		if err != nil {
			p.faults.add(p.folder.Path, 0, "%v", err)
		}
		for _, name := range found {
			if of := strings.TrimSuffix(strings.TrimSuffix(name, "_test.rego"), ".yaml"); !rule[of] {
				p.faults.add(path.Join(p.folder.Path, name), 0, "belongs to no rule: there is no %s", fmt.Sprintf("%s/%s.rego", p.folder.Path, of))
			}
		}
	}
}
