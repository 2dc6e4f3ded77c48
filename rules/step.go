package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// ref returns the ways in which a reference comes to a value.
func (t *translator) ref(ref ast.Ref, x *ast.Term, in scope) []way {
	ways := t.term(ref[0], in)
	for _, key := range ref[1:] {
		keys := t.term(key, in)
		var next []way
		for _, w := range ways {
			for _, k := range keys {
				for _, s := range t.step(w.is, k.is, x) {
					if t.left--; t.left < 0 {
						return nil
					}
					if when := and(and(w.when, k.when), s.when); !impossible(when) {
						next = append(next, way{when: when, is: s.is})
					}
				}
			}
		}
		ways = next
	}
	return ways
}

// step goes from a value to what it holds under a key.
func (t *translator) step(v, key value, x *ast.Term) []way {
	var all []way
	switch v := v.(type) {
	case holder:
		return t.into(v, key, x)
	case setOf:
		for _, m := range t.members(string(v), x.Location) {
			all = append(all, way{when: and(m.when, compare(key, eq, m.is)), is: key})
		}
		return all
	case constant:
		object, ok := v.Value.(ast.Object)
		if k, also := key.(constant); ok && also {
			if item := object.Get(ast.NewTerm(k.Value)); item != nil {
				return sure(constant{item.Value})
			}
			return nil
		}
	}
	elements, ok := elementsOf(v)
	if !ok || kindOf(key) == other {
		return t.puzzled(x)
	}
	for _, e := range elements {
		if when := compare(key, eq, e.key); !impossible(when) {
			all = append(all, way{when: when, is: e.item})
		}
	}
	return all
}

// into goes from the input down to a fact.
func (t *translator) into(h holder, key value, x *ast.Term) []way {
	word, _ := wordIn(key)
	switch {
	case h.kind == theInput && t.kinds[word] != nil:
		next := holder{kind: manyOf, of: t.kinds[word]}
		if next.of.single {
			next = next.element()
		}
		return sure(next)
	case h.kind == manyOf && h.of == t.own && key == value(identity{}):
		return sure(h.element())
	case h.kind == oneSubject:
		if f, ok := h.of.facts[word]; ok {
			return t.fact(h.of, f)
		}
	}
	return t.puzzled(x)
}

// fact returns the value of a fact, where it is known.
func (t *translator) fact(of *collection, f fact) []way {
	key := operandKey{of, f.name}
	o := t.operands[key]
	if o == nil {
		o = operandOf(t.own, of, f)
		t.operands[key] = o
	}
	if !f.optional {
		return sure(o)
	}
	return []way{{when: []condition{present{o}}, is: o}}
}

// element is what a collection holds under one key.
type element struct {
	key, item value
	when      []condition
	picks     bool // it is the subject
}

// elementsOf lists what an array, an object or a constant set holds. The key of
// a set's member is the member.
func elementsOf(v value) ([]element, bool) {
	var all []element
	add := func(key ast.Value, item value) { all = append(all, element{key: constant{key}, item: item}) }
	switch v := v.(type) {
	case items:
		for i, item := range v {
			add(ast.InternedTerm(i).Value, item)
		}
		return all, true
	case fields:
		for _, name := range names(v) {
			add(ast.String(name), v[name])
		}
		return all, true
	case constant:
		switch c := v.Value.(type) {
		case *ast.Array:
			for i := range c.Len() {
				add(ast.InternedTerm(i).Value, constant{c.Elem(i).Value})
			}
			return all, true
		case ast.Object:
			c.Foreach(func(key, item *ast.Term) { add(key.Value, constant{item.Value}) })
			return all, true
		case ast.Set:
			c.Foreach(func(item *ast.Term) { add(item.Value, constant{item.Value}) })
			return all, true
		}
	}
	return nil, false
}

// elements lists what "some" goes over.
func (t *translator) elements(v value, in scope, at *ast.Location) ([]element, bool) {
	switch v := v.(type) {
	case holder:
		if v.kind != manyOf || v.of != t.own || in.picked {
			return nil, false
		}
		return []element{{key: identity{}, item: v.element(), picks: true}}, true
	case *operand:
		if v.words && !v.optional {
			t.items++
			one := &item{v, t.items}
			return []element{{key: unclear{}, item: one, when: []condition{each{one}}}}, true
		}
	case setOf:
		var all []element
		for _, m := range t.members(string(v), at) {
			picks := concerns(m.is)
			if picks && in.picked {
				return nil, false // a second subject
			}
			all = append(all, element{key: m.is, item: m.is, when: m.when, picks: picks})
		}
		return all, true
	}
	return elementsOf(v)
}

// some returns the ways through "some": one for each element.
func (t *translator) some(e *ast.Expr, decl *ast.SomeDecl, in scope) []branch {
	call, ok := decl.Symbols[0].Value.(ast.Call)
	if !ok {
		for _, symbol := range decl.Symbols {
			in = in.bind(symbol.Value.(ast.Var), unbound{})
		}
		return []branch{{scope: in}}
	}
	var key *ast.Term
	item, domain := call[len(call)-2], call[len(call)-1]
	if len(call) == 4 {
		key = call[1]
	}
	var all []branch
	for _, w := range t.term(domain, in) {
		elements, ok := t.elements(w.is, in, e.Location)
		if !ok || key != nil && key.Equal(item) {
			all = append(all, branch{when: and(w.when, t.unsure(e.Location, "%s", e)), scope: hide(item, hide(key, in))})
			continue
		}
		for _, one := range elements {
			b := t.match(key, one.key, branch{when: and(w.when, one.when), scope: in})
			b = t.match(item, one.item, b)
			b.scope.picked = b.scope.picked || one.picks
			all = append(all, b)
		}
	}
	return all
}
