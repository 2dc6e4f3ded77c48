package rules

import (
	"encoding/json"
	"math"
	"reflect"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
)

// document is the facts of one record, as the engine reads them.
type document struct {
	subjects [][]subject // by number of the collection
	singles  singles
}

// singles are the vessel and the job, by number of their collection.
type singles []*subject

// list lists the subjects of a document.
func (e *Engine) list(doc *facts.Document) document {
	d := document{subjects: make([][]subject, len(e.kinds)), singles: make(singles, len(e.kinds))}
	value := reflect.ValueOf(doc).Elem()
	for _, kind := range e.kinds {
		all := kind.subjects(value)
		d.subjects[kind.number] = all
		if kind.single && len(all) == 1 {
			d.singles[kind.number] = &all[0]
		}
	}
	return d
}

// whole tells whether the document tells of vessel and job, as every record's
// does.
func (e *Engine) whole(d document) bool {
	for _, kind := range e.kinds {
		if kind.single && d.singles[kind.number] == nil {
			return false
		}
	}
	return true
}

// input returns the document as the input of the rules. What is open is left
// out: no rule may read it.
func (e *Engine) input(d document) ast.Value {
	terms := make([][2]*ast.Term, 0, len(e.kinds))
	for name, kind := range e.kinds {
		var all [][2]*ast.Term
		for i := range d.subjects[kind.number] {
			s := &d.subjects[kind.number][i]
			all = append(all, [2]*ast.Term{ast.StringTerm(s.id), s.term(kind.order)})
		}
		switch {
		case !kind.single:
			terms = append(terms, [2]*ast.Term{ast.StringTerm(name), ast.ObjectTerm(all...)})
		case len(all) > 0:
			terms = append(terms, all[0])
		}
	}
	return ast.NewObject(terms...)
}

// input returns some subjects of the rule, the vessel and the job as its input,
// with none but the facts that it mentions.
func (r *rule) input(d document, some []candidate) ast.Value {
	terms := make([][2]*ast.Term, 0, 3)
	for of, facts := range r.mentions {
		if of.single {
			terms = append(terms, [2]*ast.Term{ast.StringTerm(of.name), d.singles[of.number].term(facts)})
		}
	}
	if !r.of.single {
		all := make([][2]*ast.Term, len(some))
		for i, c := range some {
			all[i] = [2]*ast.Term{ast.StringTerm(c.id), c.term(r.mentions[r.of])}
		}
		terms = append(terms, [2]*ast.Term{ast.StringTerm(r.of.name), ast.ObjectTerm(all...)})
	}
	return ast.NewObject(terms...)
}

// mentioned returns the facts of the subject, the vessel and the job whose names
// stand anywhere in the rule's Rego. Facts are read by their names alone, so that
// it reads no others.
func (r *rule) mentioned(kinds map[string]*collection) map[*collection][]fact {
	words := map[string]bool{}
	ast.WalkTerms(r.mod, func(x *ast.Term) bool {
		if word, ok := x.Value.(ast.String); ok {
			words[string(word)] = true
		}
		return false
	})
	all := map[*collection][]fact{}
	for _, kind := range kinds {
		if !kind.single && kind != r.of {
			continue
		}
		all[kind] = []fact{}
		for _, f := range kind.order {
			if words[f.name] {
				all[kind] = append(all[kind], f)
			}
		}
	}
	return all
}

// term returns those of some facts that the subject has.
func (s *subject) term(facts []fact) *ast.Term {
	terms := make([][2]*ast.Term, 0, len(facts))
	for i := range facts {
		f := &facts[i]
		v := s.value().FieldByIndex(f.index)
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

// numberTerm returns a number in the notation of the document's JSON, which shows
// where a rule makes words of it.
func numberTerm(v float64) *ast.Term {
	notation, size := byte('f'), math.Abs(v)
	if size != 0 && (size < 1e-6 || size >= 1e21) {
		notation = 'e'
	}
	return ast.NumberTerm(json.Number(strconv.FormatFloat(v, notation, -1, 64)))
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
		return numberTerm(v.Float())
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
