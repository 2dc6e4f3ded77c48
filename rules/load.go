package rules

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// rule is one rule as loaded: what its metadata says, and once it is read, what
// its Rego does.
type rule struct {
	meta  verdict.Rule
	file  string // in its folder
	shown string // the same, as people are told it
	text  string
	about *metadata
	pkg   string  // the package that its id asks for
	files fs.FS   // that it stands in
	yard  *Folder // of a yard's own rule; nil for one that the program ships with

	of      *collection
	sets    []string // practice sets that bring it; a set's place is its bit in a mask
	needs   []need
	asks    []need
	decides []need
	clauses []clauseNeed
	cited   []verdict.Cited // as its sources; whether a law binds is for each record to say
	number  int             // among the rules of the engine, by id
	slot    int             // among them, by what they judge

	// elsewhere and outside say why it does not apply.
	elsewhere, outside string

	// read reads and checks the Rego, once; the rest is there from then on.
	read       func() problems
	isRead     atomic.Bool
	mod        *ast.Module
	limits     []Limit
	query      *query // for OPA to evaluate it
	mentions   map[*collection][]fact
	translated func() *translated // what is understood of it in Go

	hasApplies, hasAsks, hasExcludes bool
}

// need is a fact that a rule depends on, of its subject or of a singleton.
type need struct {
	name string // as the metadata writes it
	at   string // entry of the metadata that lists it
	of   *collection
	fact *operand
	// deciding and judging: the Rego rules applies and breach read it.
	deciding, judging bool
}

// clauseNeed is what the clauses of one practice set need beside what the rule
// needs.
type clauseNeed struct {
	set   mask
	needs []need
}

// mask is a set of a rule's practice sets.
type mask uint32

// policies returns the names of the policy files, tests left out, in order.
func policies(files fs.FS) ([]string, error) {
	var all []string
	for _, pattern := range []string{"*.rego", "*/*.rego"} {
		found, err := fs.Glob(files, pattern)
		if err != nil {
			return nil, fmt.Errorf("list rules: %w", err)
		}
		all = append(all, found...)
	}
	all = slices.DeleteFunc(all, func(name string) bool { return strings.HasSuffix(name, "_test.rego") })
	slices.Sort(all)
	return all, nil
}

// load reads the metadata of every rule, which stand in a topic's folder each.
func load(files fs.FS, named []string, faults *problems) []*rule {
	loaded := make([]*rule, len(named))
	found := make([]problems, len(named))
	numbers := make([]int, len(named))
	for i := range numbers {
		numbers[i] = i
	}
	parallel(numbers, func(i int) { loaded[i] = readRule(files, named[i], named[i], &found[i]) })
	for _, f := range found {
		*faults = append(*faults, f...)
	}
	return slices.DeleteFunc(loaded, func(r *rule) bool { return r == nil })
}

// readRule reads one policy file and its metadata.
func readRule(files fs.FS, name, shown string, faults *problems) *rule {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		faults.add(shown, 0, "%v", err)
		return nil
	}
	r := &rule{file: name, shown: shown, text: string(text), files: files}
	if r.about, err = readMetadata(r.text); err != nil {
		addYAML(faults, shown, err)
		return nil
	}
	return r
}

// parse parses a policy; nil if it is faulty.
func parse(name, text string, may *ast.Capabilities, faults *problems) *ast.Module {
	module, err := ast.ParseModuleWithOpts(name, text, ast.ParserOptions{Capabilities: may})
	if err != nil {
		addParse(faults, name, err)
		return nil
	}
	return module
}

// read reads and checks the Rego of a rule and makes it ready to judge.
func (e *Engine) read(r *rule) (faults problems) {
	if r.mod = parse(r.shown, r.text, r.may(), &faults); r.mod == nil {
		return faults
	}
	check := validator{reg: e.reg, kinds: e.kinds, faults: &faults}
	check.policy(r)
	if r.of != nil {
		r.query = queryOf(r.shown, r.mod, r.parts(), r.may())
		r.mentions = r.mentioned(e.kinds)
		r.translated = sync.OnceValue(func() *translated {
			t := translate(r, e.kinds)
			r.of.programs[r.slot-r.of.first].Store(&t.program)
			return t
		})
	}
	r.isRead.Store(len(faults) == 0)
	return faults
}

// addParse adds the errors of OPA's parser or compiler.
func addParse(faults *problems, name string, err error) {
	list, ok := err.(ast.Errors) //nolint:errorlint // the parser returns the type itself
	if !ok {
		faults.add(name, 0, "%v", err)
		return
	}
	for _, e := range list {
		file, line, column := name, 0, 0
		if e.Location != nil {
			file, line, column = e.Location.File, e.Location.Row, e.Location.Col
		}
		says := e.Message
		if e.Details != nil {
			says += " (" + strings.Join(e.Details.Lines(), "; ") + ")"
		}
		faults.add(file, line, "%s%s", says, instead(e.Message))
		(*faults)[len(*faults)-1].Column = column
	}
}

// addYAML adds an error of the YAML decoder, whose lines are those of the file.
func addYAML(faults *problems, name string, err error) {
	for _, says := range strings.Split(strings.TrimPrefix(err.Error(), "yaml: "), "\n") {
		says = strings.TrimSpace(says)
		if says == "" || says == "unmarshal errors:" {
			continue
		}
		line := 0
		if n, scanErr := fmt.Sscanf(says, "line %d:", &line); scanErr == nil && n == 1 {
			_, says, _ = strings.Cut(says, ": ")
		}
		faults.add(name, line, "metadata: %s", says)
	}
}
