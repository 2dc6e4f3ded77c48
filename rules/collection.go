package rules

import (
	"reflect"
	"slices"
	"strings"
	"sync/atomic"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
	"driploop/model/verdict"
)

// collection is one kind of subject in the facts document, as its Go type
// declares it. A singleton, such as "vessel", is a collection of one subject
// whose id is the collection's name.
type collection struct {
	name   string
	made   reflect.Type // the struct of a subject
	field  int          // in facts.Document
	number int          // among the collections
	single bool
	base   spot // what every subject carries
	facts  map[string]fact
	order  []fact  // by name
	rules  []*rule // that judge it, by id
	first  int     // slot of the first of them
	// programs are those of the rules, once they are translated.
	programs []atomic.Pointer[program]

	questions questions // that rules ask
}

// fact is one fact of a collection.
type fact struct {
	name     string
	index    []int // in the subject's Go type
	spot     spot
	kind     reflect.Kind
	words    bool // it is a list of words
	optional bool // may be absent
	term     *ast.Term
}

// subject is one thing that a rule judges.
type subject struct {
	id   string
	of   *collection
	base *facts.Subject
	memory
	*notes // nil of most
}

// openFacts is what a subject lists as not known; no fact for rules.
const openFacts = "open"

// based is what every fact type is.
type based interface{ Base() *facts.Subject }

// collections returns the collections of the facts document by name.
func collections() map[string]*collection {
	all := map[string]*collection{}
	document := reflect.TypeFor[facts.Document]()
	for i := range document.NumField() {
		field := document.Field(i)
		of, single := field.Type, true
		if of.Kind() == reflect.Map {
			of, single = of.Elem(), false
		}
		if !of.Implements(reflect.TypeFor[based]()) {
			continue
		}
		name, _ := jsonName(field)
		base, _ := of.Elem().FieldByName("Subject")
		c := &collection{name: name, made: of.Elem(), field: i, number: len(all), single: single, base: spotOf(of.Elem(), base.Index), facts: factsOf(of.Elem()), questions: questions{numbers: map[string]ordinal{}}}
		for _, name := range names(c.facts) {
			c.order = append(c.order, c.facts[name])
		}
		all[name] = c
	}
	return all
}

// factsOf returns the facts of a subject type by name, those of embedded types
// included.
func factsOf(subject reflect.Type) map[string]fact {
	all := map[string]fact{}
	for _, field := range reflect.VisibleFields(subject) {
		name, optional := jsonName(field)
		if name == "" || name == "-" || name == openFacts || field.Anonymous {
			continue
		}
		of := field.Type
		if of.Kind() == reflect.Pointer {
			of = of.Elem()
		}
		all[name] = fact{name: name, index: field.Index, spot: spotOf(subject, field.Index), kind: of.Kind(), words: of == reflect.TypeFor[[]string](), optional: optional, term: ast.StringTerm(name)}
	}
	return all
}

// jsonName returns the name of a field in JSON and whether it may be left out.
func jsonName(field reflect.StructField) (name string, optional bool) {
	name, options, _ := strings.Cut(field.Tag.Get("json"), ",")
	return name, strings.Contains(options, "omitempty")
}

// subjects returns the subjects of the collection in a document, in any order.
func (c *collection) subjects(doc reflect.Value) []subject {
	field := doc.Field(c.field)
	if c.single {
		if field.IsNil() {
			return nil
		}
		return []subject{c.subject(c.name, field)}
	}
	all := make([]subject, 0, field.Len())
	id := reflect.New(field.Type().Key()).Elem()
	for entry := field.MapRange(); entry.Next(); {
		if one := entry.Value(); !one.IsNil() {
			id.SetIterKey(entry)
			all = append(all, c.subject(id.String(), one))
		}
	}
	return all
}

func (c *collection) subject(id string, pointer reflect.Value) subject {
	m := memoryOf(pointer)
	return subject{id: id, of: c, base: c.base.subject(m), memory: m}
}

// notes are what is noted of a subject once something is to be told of it.
type notes struct {
	listed chain
	at     verdict.Range // in the file
	lacks  []lack
}

// note returns the subject's notes.
func (s *subject) note() *notes {
	if s.notes == nil {
		s.notes = &notes{}
	}
	return s.notes
}

// value returns the struct of the subject.
func (s *subject) value() reflect.Value { return s.pointer(s.of.made).Elem() }

// names returns the names of the collections, in order.
func names[T any](of map[string]T) []string {
	all := make([]string, 0, len(of))
	for name := range of {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}
