package rules

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// rule is one rule as loaded.
type rule struct {
	meta  verdict.Rule
	file  string
	text  string
	about *metadata
	mod   *ast.Module

	of      *collection
	sets    []string // practice sets that bring it; a set's place is its bit in a mask
	needs   []need
	asks    []need
	decides []need
	clauses []clauseNeed
	limits  []Limit
	cited   []verdict.Cited // as its sources; whether a law binds is for each record to say

	hasApplies  bool
	hasAsks     bool
	hasExcludes bool

	// elsewhere and outside say why it does not apply.
	elsewhere, outside string

	number     int    // among the rules of the engine, by id
	query      *query // for OPA to evaluate it
	mentions   map[*collection][]fact
	translated func() *translated // what is understood of it in Go
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

// load reads and parses every rule; policies at the top belong to no rule and
// are returned apart.
func load(files fs.FS, named []string, faults *problems) (all []*rule, others map[string]*ast.Module) {
	loaded := make([]*rule, len(named))
	found := make([]problems, len(named))
	options := ast.ParserOptions{Capabilities: capabilities()}
	var work sync.WaitGroup
	for i, name := range named {
		work.Go(func() { loaded[i] = readRule(files, name, options, &found[i]) })
	}
	work.Wait()
	others = map[string]*ast.Module{}
	for i, r := range loaded {
		*faults = append(*faults, found[i]...)
		switch {
		case r == nil:
		case r.about == nil:
			others[r.file] = r.mod
		default:
			all = append(all, r)
		}
	}
	return all, others
}

// readRule reads one policy file. A file in a topic's folder is a rule.
func readRule(files fs.FS, name string, options ast.ParserOptions, faults *problems) *rule {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		faults.add(name, 0, "%v", err)
		return nil
	}
	r := &rule{file: name, text: string(text)}
	r.mod, err = ast.ParseModuleWithOpts(name, r.text, options)
	if err != nil {
		addParse(faults, name, err)
		return nil
	}
	if path.Dir(name) == "." {
		return r
	}
	if r.about, err = readMetadata(r.text); err != nil {
		addYAML(faults, name, err)
		return nil
	}
	return r
}

// addParse adds the errors of OPA's parser or compiler.
func addParse(faults *problems, name string, err error) {
	list, ok := err.(ast.Errors) //nolint:errorlint // the parser returns the type itself
	if !ok {
		faults.add(name, 0, "%v", err)
		return
	}
	for _, e := range list {
		file, line := name, 0
		if e.Location != nil {
			file, line = e.Location.File, e.Location.Row
		}
		says := e.Message
		if e.Details != nil {
			says += " (" + strings.Join(e.Details.Lines(), "; ") + ")"
		}
		faults.add(file, line, "%s", says)
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
