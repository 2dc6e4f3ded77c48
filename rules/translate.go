package rules

import (
	"fmt"

	"github.com/open-policy-agent/opa/v1/ast"
)

// translator reads the Rego of one rule and says under which conditions on a
// subject its parts hold. Constants are unrolled and helpers written out where
// they are used, so that what is left are comparisons of facts. What it does not
// understand becomes a doubt, and is left to OPA.
type translator struct {
	own      *collection
	kinds    map[string]*collection
	defined  map[string][]*ast.Rule
	operands map[operandKey]*operand
	// constants are definitions that have one value, whatever the subject.
	constants map[string][]way

	shadows bool // a definition has the name of a function of OPA: nothing is understood

	doubts []string // where and what is not understood
	missed bool     // a clause is not wholly understood
	items  int      // of lists that are gone over
	depth  int      // of helpers that use helpers
	left   int      // ways that may still be gone
}

// most is how many ways a part of a rule may be gone before it is left to OPA,
// and deepest how deep helpers may use helpers.
const (
	most    = 2000
	deepest = 10
)

type operandKey struct {
	of   *collection
	name string
}

// unsure notes what is not understood and returns the doubt.
func (t *translator) unsure(at *ast.Location, format string, args ...any) []condition {
	row := 0
	if at != nil {
		row = at.Row
	}
	t.doubts = append(t.doubts, fmt.Sprintf("line %d: %s", row, fmt.Sprintf(format, args...)))
	return []condition{doubt{}}
}

// puzzled returns the only way of a term that is not understood.
func (t *translator) puzzled(x *ast.Term) []way {
	return []way{{when: t.unsure(x.Location, "%s", x), is: unclear{}}}
}

// body returns the ways through the conditions of a body.
func (t *translator) body(body ast.Body, in branch) []branch {
	branches := []branch{in}
	for _, e := range body {
		var next []branch
		for _, b := range branches {
			for _, further := range t.expr(e, b.scope) {
				when := and(b.when, further.when)
				if t.left--; t.left < 0 {
					return []branch{{when: t.unsure(e.Location, "more than %d ways", most), scope: b.scope}}
				}
				if !impossible(when) {
					next = append(next, branch{when: when, scope: further.scope})
				}
			}
		}
		branches = next
	}
	return branches
}

// expr returns the ways through one condition.
func (t *translator) expr(e *ast.Expr, in scope) []branch {
	holds := func(when []condition) []branch { return []branch{{when: when, scope: in}} }
	if len(e.With) > 0 {
		return holds(t.unsure(e.Location, "%s", e))
	}
	switch terms := e.Terms.(type) {
	case *ast.SomeDecl:
		return t.some(e, terms, in)
	case *ast.Term:
		if e.Negated {
			return holds(t.negated(e, in))
		}
		return holds(t.truthy(terms, in))
	case []*ast.Term:
		if !e.Negated && (e.IsAssignment() || e.IsEquality()) {
			return t.assign(e, terms[1], terms[2], in)
		}
		if e.Negated {
			return holds(t.negated(e, in))
		}
		return holds(either(t.call(terms, in, e.Location)))
	}
	return holds(t.unsure(e.Location, "%s", e))
}

// truthy returns the conditions under which a term is there and not false.
func (t *translator) truthy(x *ast.Term, in scope) []condition {
	var alternatives [][]condition
	for _, w := range t.term(x, in) {
		alternatives = append(alternatives, and(w.when, t.notFalse(w.is, x)))
	}
	return either(alternatives)
}

func (t *translator) notFalse(v value, x *ast.Term) []condition {
	switch v := v.(type) {
	case constant:
		return settled(v.Compare(ast.Boolean(false)) != 0)
	case *operand:
		if v.of == truths {
			return compare(v, eq, constant{ast.Boolean(true)})
		}
		return nil
	case *item, calculation, identity, holder, items, fields, setOf:
		return nil
	}
	return t.unsure(x.Location, "%s", x)
}

// negated returns the conditions under which an expression does not hold. OPA
// takes the operands out of the negation, all but a plain term itself, so that a
// "not" over an operand that is not there fails; operands that may be missing
// are left to it.
func (t *translator) negated(e *ast.Expr, in scope) []condition {
	var operands []*ast.Term
	switch terms := e.Terms.(type) {
	case *ast.Term:
		if ref, ok := terms.Value.(ast.Ref); ok {
			operands = ref[1:]
		} else if !isVariable(terms) {
			operands = []*ast.Term{terms}
		}
	case []*ast.Term:
		operands = terms[1:]
	}
	for _, operand := range operands {
		if !t.certain(operand, in) {
			return t.unsure(e.Location, "%s", e)
		}
	}
	switch terms := e.Terms.(type) {
	case *ast.Term:
		return neither([][]condition{t.truthy(terms, in)})
	case []*ast.Term:
		if !e.IsAssignment() && !e.IsEquality() {
			return neither(t.call(terms, in, e.Location))
		}
	}
	return t.unsure(e.Location, "%s", e)
}

// certain tells whether a term has a value whatever is missing.
func (t *translator) certain(x *ast.Term, in scope) bool {
	for _, w := range t.term(x, in) {
		if len(w.when) == 0 {
			return true
		}
	}
	return false
}

// assign gives a variable the ways of a term, or compares two terms.
func (t *translator) assign(e *ast.Expr, left, right *ast.Term, in scope) []branch {
	switch {
	case t.free(left, in) || e.IsAssignment() && isVariable(left):
		return t.bound(left, right, in)
	case e.IsAssignment():
		return []branch{{when: t.unsure(e.Location, "%s", e), scope: hide(left, in)}}
	case t.free(right, in):
		return t.bound(right, left, in)
	}
	return []branch{{when: either(t.call([]*ast.Term{equals, left, right}, in, e.Location)), scope: in}}
}

// equals is the operator "==".
var equals = ast.RefTerm(ast.VarTerm("equal"))

// free tells whether a term is a variable without a value.
func (t *translator) free(x *ast.Term, in scope) bool {
	name, ok := x.Value.(ast.Var)
	if !ok {
		return false
	}
	if v, local := in.find(name); local {
		return v == value(unbound{})
	}
	return name != "input" && name != "data" && t.defined[string(name)] == nil
}

func isVariable(x *ast.Term) bool {
	_, ok := x.Value.(ast.Var)
	return ok
}

func (t *translator) bound(name, x *ast.Term, in scope) []branch {
	var all []branch
	for _, w := range t.term(x, in) {
		all = append(all, branch{when: w.when, scope: in.bind(name.Value.(ast.Var), w.is)})
	}
	return all
}

// hide binds the variables of a pattern that is not understood, so that they
// are not taken for something else.
func hide(pattern *ast.Term, in scope) scope {
	if pattern != nil {
		ast.WalkVars(pattern, func(name ast.Var) bool {
			in = in.bind(name, unclear{})
			return false
		})
	}
	return in
}
