package rules

import (
	"reflect"
	"slices"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"
)

// computed is what a function of OPA makes of facts, worked out by OPA's own
// function.
type computed struct {
	does   string
	args   []value
	number int // tells it from others
}

// computing are the functions that computed knows: what they give is no greater
// than what goes in.
var computing = []string{"concat", "count", "max", "min"}

type (
	// unordered is a set whose members are not all constant.
	unordered []value
	// collected is what a comprehension collects. Some of it may be there twice, so
	// that only max and min may look at it.
	collected []way
)

// works holds where a computed value is there. Where it is not, OPA has to say
// whether that is an error.
type works struct{ of *computed }

func (w works) holds(at *site) truth {
	if _, ok := at.evaluate(w.of); ok {
		return yes
	}
	return maybe
}
func (w works) String() string { return w.of.does + " " + strconv.Itoa(w.of.number) }

// evaluate returns a value as OPA has it; false if it is not there, or only OPA
// can tell.
func (at *site) evaluate(v value) (ast.Value, bool) {
	switch v := v.(type) {
	case constant:
		return v.Value, true
	case identity:
		return ast.String(at.own.id), true
	case *operand:
		return at.fact(v)
	case literal:
		return ast.Number(v.says), true
	case calculation:
		return at.apply(v.does, []value{v.a, v.b})
	case *computed:
		return at.apply(v.does, v.args)
	case items:
		terms, ok := at.terms(v)
		return ast.NewArray(terms...), ok
	case unordered:
		terms, ok := at.terms(v)
		return ast.NewSet(terms...), ok
	case collected:
		return at.collect(v)
	case fields:
		entries := make([][2]*ast.Term, 0, len(v))
		for _, name := range names(v) {
			held, ok := at.evaluate(v[name])
			if !ok {
				return nil, false
			}
			entries = append(entries, [2]*ast.Term{ast.StringTerm(name), ast.NewTerm(held)})
		}
		return ast.NewObject(entries...), true
	}
	return nil, false
}

func (at *site) terms(of []value) ([]*ast.Term, bool) {
	terms := make([]*ast.Term, len(of))
	for i, v := range of {
		held, ok := at.evaluate(v)
		if !ok {
			return nil, false
		}
		terms[i] = ast.NewTerm(held)
	}
	return terms, true
}

func (at *site) collect(ways []way) (ast.Value, bool) {
	var terms []*ast.Term
	for _, w := range ways {
		switch all(w.when, at) {
		case maybe:
			return nil, false
		case yes:
			held, ok := at.evaluate(w.is)
			if !ok {
				return nil, false
			}
			terms = append(terms, ast.NewTerm(held))
		}
	}
	return ast.NewArray(terms...), true
}

// fact returns a fact of text, number or truth, or a list of words.
func (at *site) fact(o *operand) (ast.Value, bool) {
	if o.words && !o.optional {
		return termOf(reflect.ValueOf(o.list(at))).Value, true
	}
	switch c := at.cell(o); {
	case c.state != exact:
	case o.of == texts:
		return ast.String(c.text), true
	case o.of == numbers:
		return numberTerm(c.number).Value, true
	case o.of == truths:
		return ast.Boolean(c.number != 0), true
	}
	return nil, false
}

// apply has a function of OPA work on values.
func (at *site) apply(does string, args []value) (ast.Value, bool) {
	terms, ok := at.terms(args)
	if !ok {
		return nil, false
	}
	return worked(does, terms)
}

// worked has a function of OPA work out a value; false if that fails, or gives
// none.
func worked(does string, args []*ast.Term) (ast.Value, bool) {
	function := topdown.GetBuiltin(does)
	if function == nil {
		return nil, false
	}
	var result *ast.Term
	err := function(topdown.BuiltinContext{}, args, func(x *ast.Term) error {
		result = x
		return nil
	})
	if err != nil || result == nil {
		return nil, false
	}
	return result.Value, true
}

// compute returns the value of a function over values that are not all constant.
func (t *translator) compute(name string, args []value) (*computed, bool) {
	if !slices.Contains(computing, name) || slices.ContainsFunc(args, escapes) {
		return nil, false
	}
	extreme := name == "max" || name == "min"
	if slices.ContainsFunc(args, func(v value) bool { _, is := v.(collected); return is && !extreme }) {
		return nil, false
	}
	t.items++
	return &computed{does: name, args: args, number: t.items}, true
}
