package rules

import (
	"reflect"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
)

// document is the facts of one record, as the engine reads them.
type document struct {
	subjects map[string][]subject // by collection
	singles  singles
}

// list lists the subjects of a document.
func (e *Engine) list(doc *facts.Document) document {
	d := document{subjects: map[string][]subject{}, singles: singles{}}
	value := reflect.ValueOf(doc).Elem()
	for name, kind := range e.kinds {
		all := kind.subjects(value)
		d.subjects[name] = all
		if kind.single && len(all) == 1 {
			d.singles[name] = &all[0]
		}
	}
	return d
}

// only returns the document with the subjects of one collection, beside vessel
// and job.
func (d document) only(collection string) document {
	return document{subjects: map[string][]subject{collection: d.subjects[collection]}, singles: d.singles}
}

// input returns the document as the input of the rules. What is open is left
// out: no rule may read it.
func (e *Engine) input(d document) ast.Value {
	terms := make([][2]*ast.Term, 0, len(e.kinds))
	for _, name := range names(e.kinds) {
		kind := e.kinds[name]
		if kind.single {
			if s := d.singles[name]; s != nil {
				terms = append(terms, [2]*ast.Term{ast.InternedTerm(name), kind.term(s)})
			}
			continue
		}
		all := make([][2]*ast.Term, len(d.subjects[name]))
		for i := range d.subjects[name] {
			s := &d.subjects[name][i]
			all[i] = [2]*ast.Term{ast.StringTerm(s.id), kind.term(s)}
		}
		terms = append(terms, [2]*ast.Term{ast.InternedTerm(name), ast.ObjectTerm(all...)})
	}
	return ast.NewObject(terms...)
}

// term returns the facts that a subject has.
func (c *collection) term(s *subject) *ast.Term {
	terms := make([][2]*ast.Term, 0, len(c.order))
	for _, f := range c.order {
		v := s.value.FieldByIndex(f.index)
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				continue
			}
			v = v.Elem()
		} else if f.optional && v.IsZero() {
			continue
		}
		terms = append(terms, [2]*ast.Term{f.term, termOf(v)})
	}
	return ast.ObjectTerm(terms...)
}

// termOf returns a fact's value as a term.
func termOf(v reflect.Value) *ast.Term {
	switch v.Kind() {
	case reflect.String:
		return ast.StringTerm(v.String())
	case reflect.Bool:
		return ast.InternedTerm(v.Bool())
	case reflect.Int:
		return ast.InternedTerm(int(v.Int()))
	case reflect.Float64:
		return ast.FloatNumberTerm(v.Float())
	case reflect.Slice:
		if v.IsNil() {
			return ast.NullTerm() // as JSON has it
		}
		all := make([]*ast.Term, v.Len())
		for i := range all {
			all[i] = termOf(v.Index(i))
		}
		return ast.ArrayTerm(all...)
	}
	return ast.NewTerm(ast.MustInterfaceToValue(v.Interface()))
}
