package rules

import (
	"context"
	"fmt"
	"io/fs"

	"github.com/open-policy-agent/opa/v1/ast"
)

// bindingFile is the policy that decides which laws bind the vessel.
const bindingFile = "binding.rego"

// law decides which laws bind a vessel.
type law struct {
	clauses []binding
	query   *query
}

// binding is one way in which a source is said to bind the vessel or not.
type binding struct {
	when   []condition
	source string // empty if it is not understood of which source it speaks
	binds  bool
}

// readLaw reads the policy that decides it.
func readLaw(files fs.FS, kinds map[string]*collection) (*law, error) {
	text, err := fs.ReadFile(files, bindingFile)
	if err != nil {
		return nil, fmt.Errorf("which laws bind: %w", err)
	}
	var faults problems
	module := parse(bindingFile, string(text), capabilities(), &faults)
	if module == nil {
		return nil, faults.err()
	}
	return newLaw(module, kinds), nil
}

// newLaw understands the parsed policy.
func newLaw(module *ast.Module, kinds map[string]*collection) *law {
	l := &law{query: queryOf(bindingFile, module, `{"binds": data.driploop.binding.binds}`, capabilities())}
	for _, def := range module.Rules {
		if nameOf(def) != "binds" {
			continue
		}
		t := newTranslator(kinds["vessel"], kinds, module)
		l.clauses = append(l.clauses, t.binds(def)...)
	}
	return l
}

// binds returns what one definition of binds says.
func (t *translator) binds(def *ast.Rule) []binding {
	unknown := []binding{{when: []condition{doubt{}}}}
	ref := def.Head.Ref()
	if t.shadows || def.Default || def.Else != nil || len(ref) != 2 || def.Head.Value == nil {
		return unknown
	}
	var all []binding
	for _, b := range t.body(def.Body, branch{}) {
		for _, pair := range t.tuples([]*ast.Term{ref[1], def.Head.Value}, b.scope) {
			source, named := wordIn(pair.are[0])
			for _, bound := range []bool{false, true} {
				c := binding{when: and(and(b.when, pair.when), compare(pair.are[1], eq, constant{ast.Boolean(bound)})), source: source, binds: bound}
				if !named {
					c.when = append(c.when, doubt{})
				}
				if !impossible(c.when) {
					all = append(all, c)
				}
			}
		}
	}
	if t.left < 0 {
		return unknown
	}
	return all
}

// read works out in Go which sources bind; what is not decided is absent. It
// returns false where OPA has to tell.
func (l *law) read(at *site) (map[string]bool, bool) {
	binds := map[string]bool{}
	for i := range l.clauses {
		c := &l.clauses[i]
		t := all(c.when, at)
		if t == no {
			continue
		}
		if before, said := binds[c.source]; t == maybe || said && before != c.binds {
			return nil, false
		}
		binds[c.source] = c.binds
	}
	return binds, true
}

// consult has OPA say which sources bind.
func (l *law) consult(input ast.Value) (map[string]bool, error) {
	result, err := l.query.run(context.Background(), input)
	if err != nil {
		return nil, fmt.Errorf("which laws bind: %w", err)
	}
	binds := map[string]bool{}
	decided, _ := result["binds"].(map[string]any)
	for id, value := range decided {
		if yes, ok := value.(bool); ok {
			binds[id] = yes
		}
	}
	return binds, nil
}
