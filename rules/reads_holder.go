package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// holder is what a variable or reference stands for on its way from the input
// to a fact.
type holder struct {
	kind holderKind
	of   *collection
}

type holderKind uint8

const (
	nothing    holderKind = iota // a value; no facts below it
	theInput                     // input
	manyOf                       // input.devices
	oneSubject                   // input.devices[id], input.vessel
)

// nameHolders finds the variables that stand for the input, a collection or a
// subject, whatever the order in which they are written.
func (d *reader) nameHolders(rule *ast.Rule) {
	for known := -1; known != len(d.names); {
		known = len(d.names)
		ast.WalkExprs(rule, func(e *ast.Expr) bool {
			for _, n := range namings(e) {
				h := d.stands(n.value)
				if n.element {
					h = h.element()
				}
				if h.kind == nothing {
					continue
				}
				if before, named := d.names[n.name]; named && before != h {
					d.fault(e.Location, "%s stands for two things; use another name for one of them", n.name)
					continue
				}
				d.names[n.name] = h
			}
			return false
		})
	}
}

// naming is a variable given a value, or each element of a value.
type naming struct {
	name    string
	value   *ast.Term
	element bool
}

// namings returns the variables that an expression names.
func namings(e *ast.Expr) []naming {
	switch terms := e.Terms.(type) {
	case *ast.SomeDecl:
		if call, ok := terms.Symbols[0].Value.(ast.Call); ok {
			if name, ok := variable(call[len(call)-2]); ok {
				return []naming{{name: name, value: call[len(call)-1], element: true}}
			}
		}
	case *ast.Every:
		if name, ok := variable(terms.Value); ok {
			return []naming{{name: name, value: terms.Domain, element: true}}
		}
	case []*ast.Term:
		if !e.IsAssignment() && !e.IsEquality() {
			return nil
		}
		var all []naming
		for i, other := range []int{2, 1} {
			if name, ok := variable(terms[i+1]); ok {
				all = append(all, naming{name: name, value: terms[other]})
			}
		}
		return all
	}
	return nil
}

func variable(t *ast.Term) (string, bool) {
	if t == nil {
		return "", false
	}
	name, ok := t.Value.(ast.Var)
	return string(name), ok
}

// element is what an element of the holder is.
func (h holder) element() holder {
	if h.kind == manyOf {
		return holder{kind: oneSubject, of: h.of}
	}
	return holder{}
}

// stands tells what a term stands for, without complaint.
func (d *reader) stands(t *ast.Term) holder {
	switch v := t.Value.(type) {
	case ast.Var:
		return d.start(v)
	case ast.Ref:
		head, ok := v[0].Value.(ast.Var)
		if !ok {
			return holder{}
		}
		h := d.start(head)
		for _, key := range v[1:] {
			h, _ = d.step(h, key)
		}
		return h
	}
	return holder{}
}

func (d *reader) start(name ast.Var) holder {
	if name == "input" {
		return holder{kind: theInput}
	}
	return d.names[string(name)]
}

// step goes from a holder to what it holds under a key. It also returns the
// fact, if that is one.
func (d *reader) step(h holder, key *ast.Term) (holder, *fact) {
	word, _ := key.Value.(ast.String)
	switch h.kind {
	case theInput:
		if of := d.kinds[string(word)]; of != nil && of.single {
			return holder{kind: oneSubject, of: of}, nil
		} else if of != nil {
			return holder{kind: manyOf, of: of}, nil
		}
	case manyOf:
		return h.element(), nil
	case oneSubject:
		if f, ok := h.of.facts[string(word)]; ok {
			return holder{}, &f
		}
	}
	return holder{}, nil
}
