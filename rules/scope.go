package rules

import (
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// scope is what the variables of a body stand for. It is never changed: binding
// a variable makes another one.
type scope struct {
	names *local
	// picked: the body has gone over its collection, and speaks of one subject.
	picked bool
}

type local struct {
	name ast.Var
	is   value
	up   *local
}

func (s scope) bind(name ast.Var, is value) scope {
	s.names = &local{name: name, is: is, up: s.names}
	return s
}

func (s scope) find(name ast.Var) (value, bool) {
	for b := s.names; b != nil; b = b.up {
		if b.name == name {
			return b.is, true
		}
	}
	return nil, false
}

// way is one way in which a term comes to a value.
type way struct {
	when []condition
	is   value
}

// branch is one way in which a body goes on.
type branch struct {
	when  []condition
	scope scope
}

// sure returns the only way of a value that is always there.
func sure(v value) []way { return []way{{is: v}} }

// and returns conditions together. It never writes into the first list, which
// several branches share.
func and(a, b []condition) []condition {
	if len(b) == 0 {
		return a
	}
	both := make([]condition, 0, len(a)+len(b))
	for _, c := range append(append(both, a...), b...) {
		if _, impossible := c.(never); impossible {
			return []condition{never{}}
		}
	}
	return both[:len(a)+len(b)]
}

// impossible tells whether conditions hold for no subject.
func impossible(when []condition) bool {
	for _, c := range when {
		if _, is := c.(never); is {
			return true
		}
	}
	return false
}

// either returns the condition that one of several alternatives holds.
func either(alternatives [][]condition) []condition {
	var possible [][]condition
	for _, a := range alternatives {
		if len(a) == 0 {
			return nil
		}
		if !impossible(a) {
			possible = append(possible, a)
		}
	}
	switch len(possible) {
	case 0:
		return settled(false)
	case 1:
		return possible[0]
	}
	if m, ok := membership(possible); ok {
		return []condition{m}
	}
	common, rest := hoisted(possible)
	if slices.ContainsFunc(rest, func(when []condition) bool { return len(when) == 0 }) {
		return common
	}
	return append(common, anyOf(rest))
}

// neither returns the condition that none of several alternatives holds.
func neither(alternatives [][]condition) []condition {
	one := either(alternatives)
	switch {
	case len(one) == 0:
		return settled(false)
	case impossible(one):
		return nil
	}
	if several, ok := one[0].(anyOf); ok && len(one) == 1 {
		return []condition{noneOf(several)}
	}
	return []condition{noneOf{one}}
}

// membership turns comparisons of one fact with several words into one.
func membership(alternatives [][]condition) (member, bool) {
	var all member
	for _, a := range alternatives {
		m, ok := a[0].(member)
		if !ok || len(a) != 1 || all.fact != nil && all.fact != m.fact {
			return all, false
		}
		all = member{m.fact, append(all.words[:len(all.words):len(all.words)], m.words...)}
	}
	return all, true
}
