package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// weighing compares values of which one is computed, as OPA orders them.
type weighing struct {
	a  value
	is relation
	b  value
}

func (w weighing) holds(at *site) truth {
	a, ok := at.evaluate(w.a)
	b, also := at.evaluate(w.b)
	if !ok || !also {
		return maybe
	}
	return truthOf(w.is.among(ast.Compare(a, b)))
}

func (w weighing) String() string {
	a, _ := spelt(w.a)
	b, _ := spelt(w.b)
	return "weighed " + a + " " + w.is.String() + " " + b
}

// spelt writes a single value; false if it is none that a weighing knows.
func spelt(v value) (string, bool) {
	switch v := v.(type) {
	case constant:
		return v.String(), true
	case *operand:
		return v.String(), kindOf(v) != other
	case calculation:
		return v.String(), true
	case *computed:
		return works{v}.String(), true
	}
	return "", false
}

// weigh returns the conditions under which two values are in a relation of which
// one at least is computed; false if there is none such.
func weigh(a value, is relation, b value) ([]condition, bool) {
	_, computes := a.(*computed)
	_, also := b.(*computed)
	_, ok := spelt(a)
	_, known := spelt(b)
	return []condition{weighing{a, is, b}}, (computes || also) && ok && known
}
