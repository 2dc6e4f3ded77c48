package rules

import (
	"maps"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// value is what a term of Rego stands for, as far as that can be told without a
// subject: one of the types below, or a *operand, an *item, a calculation or a holder.
type value any

type (
	constant struct{ ast.Value }
	identity struct{}         // the id of the subject
	items    []value          // an array whose items are not all constant
	fields   map[string]value // an object whose values are not all constant
	setOf    string           // the set that a definition of the package makes
	unclear  struct{}         // a value that is not understood
	unbound  struct{}         // what a variable has that was given no value yet
)

// kindOf tells of what kind a single value is; other if it is none.
func kindOf(v value) kind {
	switch v := v.(type) {
	case *operand:
		return v.of
	case *item:
		return texts
	case calculation:
		return numbers
	case constant:
		switch v.Value.(type) {
		case ast.Boolean:
			return truths
		case ast.Number:
			return numbers
		case ast.String:
			return texts
		}
	}
	return other
}

// numberIn returns a value as a number or boolean.
func numberIn(v value) (numeric, bool) {
	switch v := v.(type) {
	case *operand:
		return v, v.of == numbers || v.of == truths
	case calculation:
		return v, true
	case constant:
		return literalOf(v.Value)
	}
	return nil, false
}

// textIn returns a value as text.
func textIn(v value) (textual, bool) {
	switch v := v.(type) {
	case *operand:
		return v, v.of == texts
	case *item:
		return v, true
	}
	text, ok := wordIn(v)
	return word(text), ok
}

// wordIn returns a constant text.
func wordIn(v value) (string, bool) {
	c, _ := v.(constant)
	text, ok := c.Value.(ast.String)
	return string(text), ok
}

// compare returns the conditions under which two values are in a relation.
func compare(a value, is relation, b value) []condition {
	x, isConstant := a.(constant)
	if y, also := b.(constant); isConstant && also {
		return settled(is.among(ast.Compare(x.Value, y.Value)))
	}
	if when, ok := weigh(a, is, b); ok {
		return when
	}
	of, against := kindOf(a), kindOf(b)
	switch {
	case of == other || against == other:
		if is == eq {
			return equal(a, b)
		}
	case of != against:
		if is == eq || is == neq {
			return settled(is == neq)
		}
	case of == texts:
		x, _ := textIn(a)
		y, _ := textIn(b)
		return []condition{compareTexts(x, is, y)}
	default:
		x, ok := numberIn(a)
		if y, also := numberIn(b); ok && also {
			return []condition{compareNumbers(x, is, y)}
		}
	}
	return []condition{doubt{}}
}

func compareTexts(a textual, is relation, b textual) condition {
	if _, isWord := a.(word); isWord {
		a, is, b = b, is.flip(), a
	}
	fact, isFact := a.(*operand)
	if constant, isWord := b.(word); isFact && isWord && is == eq {
		return member{fact, []string{string(constant)}}
	}
	return wording{a, is, b}
}

func compareNumbers(a numeric, is relation, b numeric) condition {
	if _, isLiteral := a.(literal); isLiteral {
		a, is, b = b, is.flip(), a
	}
	fact, isFact := a.(*operand)
	if constant, isLiteral := b.(literal); isFact && isLiteral {
		return limit{fact, is, constant}
	}
	return comparison{a, is, b}
}

// settled returns no condition, or one that never holds.
func settled(holds bool) []condition {
	if holds {
		return nil
	}
	return []condition{never{}}
}

// equal compares ids, and the parts of composed values.
func equal(a, b value) []condition {
	if a == value(identity{}) && b == value(identity{}) {
		return nil
	}
	if x, ok := arrayIn(a); ok {
		if y, also := arrayIn(b); also {
			return equalItems(x, y)
		}
	}
	if x, ok := fieldsIn(a); ok {
		if y, also := fieldsIn(b); also {
			return equalFields(x, y)
		}
	}
	return []condition{doubt{}}
}

func equalItems(a, b items) []condition {
	if len(a) != len(b) {
		return settled(false)
	}
	var when []condition
	for i := range a {
		when = and(when, compare(a[i], eq, b[i]))
	}
	return when
}

func equalFields(a, b fields) []condition {
	if len(a) != len(b) {
		return settled(false)
	}
	var when []condition
	for _, name := range slices.Sorted(maps.Keys(a)) {
		other, ok := b[name]
		if !ok {
			return settled(false)
		}
		when = and(when, compare(a[name], eq, other))
	}
	return when
}

// arrayIn returns the items of an array.
func arrayIn(v value) (items, bool) {
	if of, ok := v.(items); ok {
		return of, true
	}
	c, _ := v.(constant)
	array, ok := c.Value.(*ast.Array)
	if !ok {
		return nil, false
	}
	of := make(items, array.Len())
	for i := range of {
		of[i] = constant{array.Elem(i).Value}
	}
	return of, true
}

// fieldsIn returns the fields of an object whose keys are words.
func fieldsIn(v value) (fields, bool) {
	if of, ok := v.(fields); ok {
		return of, true
	}
	c, _ := v.(constant)
	object, ok := c.Value.(ast.Object)
	if !ok {
		return nil, false
	}
	of := fields{}
	object.Foreach(func(key, item *ast.Term) {
		name, named := key.Value.(ast.String)
		ok = ok && named
		of[string(name)] = constant{item.Value}
	})
	return of, ok
}

// concerns tells whether a value is the id of the subject or holds it.
func concerns(v value) bool {
	switch v := v.(type) {
	case identity:
		return true
	case items:
		return slices.ContainsFunc(v, concerns)
	case unordered:
		return slices.ContainsFunc(v, concerns)
	case fields:
		for _, field := range v {
			if concerns(field) {
				return true
			}
		}
	}
	return false
}
