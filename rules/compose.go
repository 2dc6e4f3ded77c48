package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// array returns the values of an array that is written out.
func (t *translator) array(array *ast.Array, in scope) []way {
	terms := make([]*ast.Term, array.Len())
	for i := range terms {
		terms[i] = array.Elem(i)
	}
	var all []way
	for _, held := range t.tuples(terms, in) {
		is := value(items(held.are))
		if constants, ok := constantsOf(held.are); ok {
			is = constant{ast.NewArray(constants...)}
		}
		all = append(all, way{when: held.when, is: is})
	}
	return all
}

// collect returns what an array comprehension collects of constant lists. It is
// not understood where it goes over subjects or over a fact, since then it
// collects more than one thing by one of its ways.
func (t *translator) collect(x *ast.ArrayComprehension, in scope) value {
	before := len(t.doubts)
	in.picked = true
	all := collected{}
	for _, b := range t.body(x.Body, branch{scope: in}) {
		for _, w := range t.within(b, x.Term) {
			if doubtful(w.when) || len(itemsInAll([][]condition{w.when})) > 0 || escapes(w.is) {
				t.doubts = t.doubts[:before]
				return unclear{}
			}
			all = append(all, w)
		}
	}
	return all
}

// set returns the values of a set that is written out. One that holds facts is
// not taken apart: two of its members may be one.
func (t *translator) set(set ast.Set, in scope) []way {
	var all []way
	for _, members := range t.tuples(set.Slice(), in) {
		is := value(unordered(members.are))
		if constants, ok := constantsOf(members.are); ok {
			is = constant{ast.NewSet(constants...)}
		}
		all = append(all, way{when: members.when, is: is})
	}
	return all
}

func (t *translator) object(object ast.Object, x *ast.Term, in scope) []way {
	var keys, terms []*ast.Term
	words, scalars := true, true
	object.Foreach(func(key, item *ast.Term) {
		_, isWord := key.Value.(ast.String)
		_, isNumber := key.Value.(ast.Number)
		words, scalars = words && isWord, scalars && (isWord || isNumber)
		keys, terms = append(keys, key), append(terms, item)
	})
	if !scalars {
		return t.puzzled(x)
	}
	var all []way
	for _, held := range t.tuples(terms, in) {
		if constants, ok := constantsOf(held.are); ok {
			entries := make([][2]*ast.Term, len(keys))
			for i, key := range keys {
				entries[i] = [2]*ast.Term{key, constants[i]}
			}
			all = append(all, way{when: held.when, is: constant{ast.NewObject(entries...)}})
			continue
		}
		if !words {
			return t.puzzled(x)
		}
		of := fields{}
		for i, key := range keys {
			of[string(key.Value.(ast.String))] = held.are[i]
		}
		all = append(all, way{when: held.when, is: of})
	}
	return all
}

// constantsOf returns values as terms if all are constant.
func constantsOf(values []value) ([]*ast.Term, bool) {
	terms := make([]*ast.Term, len(values))
	for i, v := range values {
		c, ok := v.(constant)
		if !ok {
			return nil, false
		}
		terms[i] = ast.NewTerm(c.Value)
	}
	return terms, true
}
