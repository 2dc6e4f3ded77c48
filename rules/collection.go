package rules

import (
	"reflect"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/facts"
)

// collection is one kind of subject in the facts document, as its Go type
// declares it. A singleton, such as "vessel", is a collection of one subject
// whose id is the collection's name.
type collection struct {
	name   string
	field  int // in facts.Document
	number int // among the collections
	single bool
	facts  map[string]fact
	order  []fact  // by name
	rules  []*rule // that judge it, by id
}

// fact is one fact of a collection.
type fact struct {
	name     string
	slot     int   // among the facts of the collection, by name
	index    []int // in the subject's Go type
	kind     reflect.Kind
	words    bool // it is a list of words
	optional bool // may be absent
	term     *ast.Term
}

// subject is one thing that a rule judges.
type subject struct {
	id    string
	base  *facts.Subject
	value reflect.Value // of the struct
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
		c := &collection{name: name, field: i, number: len(all), single: single, facts: factsOf(of.Elem())}
		for i, name := range names(c.facts) {
			f := c.facts[name]
			f.slot = i
			c.facts[name] = f
			c.order = append(c.order, f)
		}
		all[name] = c
	}
	return all
}

// factsOf returns the facts of a subject type by name, those of embedded types
// included.
func factsOf(of reflect.Type) map[string]fact {
	all := map[string]fact{}
	for _, field := range reflect.VisibleFields(of) {
		name, optional := jsonName(field)
		if name == "" || name == "-" || name == openFacts || field.Anonymous {
			continue
		}
		of := field.Type
		if of.Kind() == reflect.Pointer {
			of = of.Elem()
		}
		all[name] = fact{name: name, index: field.Index, kind: of.Kind(), words: of == reflect.TypeFor[[]string](), optional: optional, term: ast.StringTerm(name)}
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
		return []subject{subjectOf(c.name, field)}
	}
	all := make([]subject, 0, field.Len())
	for entry := field.MapRange(); entry.Next(); {
		if !entry.Value().IsNil() {
			all = append(all, subjectOf(entry.Key().String(), entry.Value()))
		}
	}
	return all
}

func subjectOf(id string, pointer reflect.Value) subject {
	return subject{id: id, base: pointer.Interface().(based).Base(), value: pointer.Elem()}
}

// names returns the names of the collections, in order.
func names[T any](of map[string]T) []string {
	all := make([]string, 0, len(of))
	for name := range of {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}
