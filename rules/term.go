package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// term returns the ways in which a term comes to a value; none if it never does.
func (t *translator) term(x *ast.Term, in scope) []way {
	switch v := x.Value.(type) {
	case ast.Null, ast.Boolean, ast.Number, ast.String:
		return sure(constant{v})
	case ast.Var:
		return t.variable(v, x, in)
	case ast.Ref:
		return t.ref(v, x, in)
	case ast.Call:
		return t.result(v, x, in)
	case *ast.Array:
		return t.array(v, in)
	case ast.Object:
		return t.object(v, x, in)
	case ast.Set:
		return t.set(v, in)
	case *ast.ArrayComprehension:
		return sure(t.collect(v, in))
	case *ast.SetComprehension, *ast.ObjectComprehension:
		return sure(unclear{}) // always there; its value is not understood
	}
	return t.puzzled(x)
}

// variable returns what a variable or a definition of the package stands for.
func (t *translator) variable(name ast.Var, x *ast.Term, in scope) []way {
	if v, local := in.find(name); local {
		if v == value(unbound{}) {
			return t.puzzled(x)
		}
		return sure(v)
	}
	if name == "input" {
		return sure(holder{kind: theInput})
	}
	switch formOf(t.defined[string(name)]) {
	case setForm:
		return sure(setOf(name))
	case valueForm:
		return t.complete(string(name), x)
	}
	return t.puzzled(x)
}

// form is what a definition of a package makes.
type form uint8

const (
	strange form = iota
	valueForm
	functionForm
	setForm
)

// formOf returns the form that all rules of a definition share.
func formOf(rules []*ast.Rule) form {
	shared := strange
	for _, r := range rules {
		one := strange
		switch {
		case r.Default || r.Else != nil || len(r.Head.Ref()) > 1:
		case r.Head.Key != nil && r.Head.Value == nil:
			one = setForm
		case len(r.Head.Args) > 0:
			one = functionForm
		case r.Head.Key == nil:
			one = valueForm
		}
		if one == strange || shared != strange && shared != one {
			return strange
		}
		shared = one
	}
	return shared
}

// complete returns the values of a complete rule. Most are constants, which are
// worked out once.
func (t *translator) complete(name string, x *ast.Term) []way {
	if ways, ok := t.constants[name]; ok {
		return ways
	}
	ways := t.inline(name, nil, x.Location)
	if len(ways) == 1 && len(ways[0].when) == 0 {
		if _, ok := ways[0].is.(constant); ok {
			t.constants[name] = ways
		}
	}
	return ways
}

// inline returns the values of a function or of a complete rule.
func (t *translator) inline(name string, args []value, at *ast.Location) []way {
	if t.depth++; t.depth > deepest {
		t.depth--
		return []way{{when: t.unsure(at, "%s: too deep", name), is: unclear{}}}
	}
	defer func() { t.depth-- }()
	var all []way
	for _, rule := range t.defined[name] {
		if len(rule.Head.Args) != len(args) {
			return []way{{when: t.unsure(at, "%s", name), is: unclear{}}}
		}
		// A helper goes over no collection: it would speak of other subjects.
		in := branch{scope: scope{picked: true}}
		for i, pattern := range rule.Head.Args {
			in = t.argument(pattern, args[i], in)
		}
		if impossible(in.when) {
			continue
		}
		for _, b := range t.body(rule.Body, in) {
			all = append(all, t.close(t.within(b, rule.Head.Value), at)...)
		}
	}
	return all
}

// argument gives a parameter its value, or compares it: one name given twice
// asks for equal values.
func (t *translator) argument(pattern *ast.Term, v value, in branch) branch {
	if name, ok := pattern.Value.(ast.Var); ok {
		if before, again := in.scope.find(name); again {
			return branch{when: and(in.when, compare(before, eq, v)), scope: in.scope}
		}
	}
	return t.match(pattern, v, in)
}

// within returns the ways of a term at the end of a branch.
func (t *translator) within(b branch, x *ast.Term) []way {
	var all []way
	for _, w := range t.term(x, b.scope) {
		if when := and(b.when, w.when); !impossible(when) {
			all = append(all, way{when: when, is: w.is})
		}
	}
	return all
}

// members returns the members of a set that a definition makes, as far as they
// concern the subject.
func (t *translator) members(name string, at *ast.Location) []way {
	if t.depth++; t.depth > deepest {
		t.depth--
		return []way{{when: t.unsure(at, "%s: too deep", name), is: unclear{}}}
	}
	defer func() { t.depth-- }()
	var all []way
	for _, rule := range t.defined[name] {
		for _, b := range t.body(rule.Body, branch{}) {
			for _, w := range t.close(t.within(b, rule.Head.Key), at) {
				if b.scope.picked && !concerns(w.is) { // of any subject, not only of ours
					return []way{{when: t.unsure(at, "%s", name), is: unclear{}}}
				}
				all = append(all, w)
			}
		}
	}
	return all
}

// close ends the ways of a helper: what it asks of the items of a list is asked
// there, and no item leaves it.
func (t *translator) close(ways []way, at *ast.Location) []way {
	for i := range ways {
		w := &ways[i]
		if w.when = closed(w.when); escapes(w.is) {
			w.when, w.is = and(w.when, t.unsure(at, "an item of a list")), unclear{}
		}
	}
	return ways
}

// match gives the variables of a pattern a value, or compares it.
func (t *translator) match(pattern *ast.Term, v value, in branch) branch {
	if pattern == nil {
		return in
	}
	switch p := pattern.Value.(type) {
	case ast.Var:
		return branch{when: in.when, scope: in.scope.bind(p, v)}
	case ast.Null, ast.Boolean, ast.Number, ast.String:
		return branch{when: and(in.when, compare(v, eq, constant{p})), scope: in.scope}
	}
	return branch{when: and(in.when, t.unsure(pattern.Location, "%s", pattern)), scope: hide(pattern, in.scope)}
}

// tuple is one way in which several terms come to values.
type tuple struct {
	when []condition
	are  []value
}

// tuples returns the ways of several terms together.
func (t *translator) tuples(terms []*ast.Term, in scope) []tuple {
	all := []tuple{{}}
	for _, x := range terms {
		var next []tuple
		ways := t.term(x, in)
		for _, before := range all {
			for _, w := range ways {
				if t.left--; t.left < 0 {
					return nil
				}
				if when := and(before.when, w.when); !impossible(when) {
					next = append(next, tuple{when: when, are: append(before.are[:len(before.are):len(before.are)], w.is)})
				}
			}
		}
		all = next
	}
	return all
}
