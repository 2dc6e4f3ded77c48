package rules

import (
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// relations are the operators that compare.
var relations = map[string]relation{"equal": eq, "neq": neq, "lt": lt, "lte": lte, "gt": gt, "gte": gte}

// memberOf is the operator "in".
const memberOf = "internal.member_2"

// compares tells whether a function is one that predicate knows: its value is
// true or false, and never missing.
func compares(name string) bool {
	_, relates := relations[name]
	_, matches := matchers[name]
	return relates || matches || name == memberOf
}

// predicate returns the conditions under which such a function is true.
func (t *translator) predicate(name string, args []value, at *ast.Location) []condition {
	if name == memberOf {
		return t.isIn(args[0], args[1], at)
	}
	if is, ok := relations[name]; ok {
		when := compare(args[0], is, args[1])
		if doubtful(when) {
			return t.unsure(at, "%s of values that are not understood", name)
		}
		return when
	}
	a, isText := textIn(args[0])
	b, also := textIn(args[1])
	if !isText || !also {
		return t.unsure(at, "%s of values that are not understood", name)
	}
	return []condition{matching{a, b, name}}
}

// arity is the number of arguments of a function of OPA. A call can have one
// more, with which the result is compared; such calls are not understood.
func arity(name string) int {
	if b := ast.BuiltinMap[name]; b != nil {
		return b.Decl.Arity()
	}
	return -1
}

// call returns the alternatives under which a call holds.
func (t *translator) call(call []*ast.Term, in scope, at *ast.Location) [][]condition {
	name := call[0].Value.String()
	var all [][]condition
	if compares(name) && len(call)-1 == arity(name) {
		for _, args := range t.tuples(call[1:], in) {
			all = append(all, and(args.when, t.predicate(name, args.are, at)))
		}
		return all
	}
	x := ast.NewTerm(ast.Call(call)).SetLocation(at)
	for _, w := range t.result(ast.Call(call), x, in) {
		all = append(all, and(w.when, t.notFalse(w.is, x)))
	}
	return all
}

// isIn returns the conditions under which a value is a member of a collection.
func (t *translator) isIn(v, of value, at *ast.Location) []condition {
	var alternatives [][]condition
	if set, ok := of.(setOf); ok {
		for _, m := range t.members(string(set), at) {
			alternatives = append(alternatives, and(m.when, compare(v, eq, m.is)))
		}
		return either(alternatives)
	}
	if fact, ok := of.(*operand); ok && fact.words && !fact.optional {
		if text, isText := textIn(v); isText {
			return []condition{holding{fact, text}}
		}
	}
	elements, ok := elementsOf(of)
	if !ok {
		return t.unsure(at, "membership in a value that is not understood")
	}
	for _, e := range elements {
		alternatives = append(alternatives, compare(v, eq, e.item))
	}
	return either(alternatives)
}

// result returns the ways in which a call comes to a value.
func (t *translator) result(call ast.Call, x *ast.Term, in scope) []way {
	name := call[0].Value.String()
	switch {
	case compares(name) && len(call)-1 == arity(name):
		return t.truthOf(call, x, in)
	case formOf(t.defined[name]) == functionForm:
		var all []way
		for _, args := range t.tuples(call[1:], in) {
			for _, w := range t.inline(name, args.are, x.Location) {
				all = append(all, way{when: and(args.when, w.when), is: w.is})
			}
		}
		return all
	case t.defined[name] != nil || len(call)-1 != arity(name):
		return t.puzzled(x)
	}
	var all []way
	for _, args := range t.tuples(call[1:], in) {
		is, ok := t.builtin(name, args.are)
		when := args.when
		if made, computes := is.(*computed); computes {
			when = and(when, []condition{works{made}})
		}
		if !ok {
			when = and(when, t.unsure(x.Location, "%s", x))
		}
		all = append(all, way{when: when, is: is})
	}
	return all
}

// truthOf returns the two values of a comparison.
func (t *translator) truthOf(call ast.Call, x *ast.Term, in scope) []way {
	var all []way
	for _, args := range t.tuples(call[1:], in) {
		when := t.predicate(call[0].Value.String(), args.are, x.Location)
		all = append(all,
			way{when: and(args.when, when), is: constant{ast.Boolean(true)}},
			way{when: and(args.when, neither([][]condition{when})), is: constant{ast.Boolean(false)}})
	}
	return all
}

// kindTests are the functions that ask for the type of a value.
var kindTests = map[string]kind{"is_string": texts, "is_number": numbers, "is_boolean": truths}

// calculations are the functions that calculation knows.
var calculations = []string{"plus", "minus", "mul"}

// builtin returns what a function of OPA makes of values.
func (t *translator) builtin(name string, args []value) (value, bool) {
	if terms, ok := constantsOf(args); ok {
		return fold(name, terms)
	}
	if of, ok := kindTests[name]; ok && kindOf(args[0]) != other {
		return constant{ast.Boolean(kindOf(args[0]) == of)}, true
	}
	if slices.Contains(calculations, name) && kindOf(args[0]) == numbers && kindOf(args[1]) == numbers {
		a, ok := numberIn(args[0])
		b, also := numberIn(args[1])
		return calculation{a, b, name}, ok && also
	}
	if made, ok := t.compute(name, args); ok {
		return made, true
	}
	return unclear{}, false
}

// fold lets OPA work out what holds for every subject.
func fold(name string, args []*ast.Term) (value, bool) {
	if v, ok := worked(name, args); ok {
		return constant{v}, true
	}
	return unclear{}, false
}
