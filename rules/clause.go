package rules

import (
	"fmt"
	"slices"
	"sync"

	"github.com/open-policy-agent/opa/v1/ast"
)

// clause is one way in which a part of a rule speaks of a subject.
type clause struct {
	when  []condition
	sets  mask      // of which it speaks
	def   int       // which definition of its part it comes from
	asks  *need     // what it asks for; of the part "asks" only
	order ast.Value // of the part "asks": orders what is missing as OPA does
}

// translated is what was understood of a rule.
type translated struct {
	excludes, applies, breach, asks []clause

	tellings func() [][]telling // of the part "breach", by definition
	program  program            // of the same

	bodies int      // how many bodies these come from
	missed []string // of those that are not wholly understood, where and why
}

// translate translates the parts of a rule.
func translate(r *rule, kinds map[string]*collection) *translated {
	var all translated
	all.tellings = sync.OnceValue(func() [][]telling { return tellings(r, kinds) })
	t := newTranslator(r.of, kinds, r.mod)
	for _, part := range []struct {
		name string
		into *[]clause
	}{{"excludes", &all.excludes}, {"applies", &all.applies}, {"breach", &all.breach}, {"asks", &all.asks}} {
		defs := 0
		for _, def := range r.mod.Rules {
			if nameOf(def) != part.name {
				continue
			}
			t.doubts, t.missed, t.left = nil, false, most
			for _, c := range t.part(r, part.name, def) {
				c.def = defs
				*part.into = append(*part.into, c)
			}
			defs++
			all.bodies++
			if t.missed {
				why := append(t.doubts, "a comparison of unlike values")[0]
				all.missed = append(all.missed, fmt.Sprintf("%s:%d: %s: %s", r.file, def.Location.Row, part.name, why))
			}
		}
	}
	slices.SortStableFunc(all.asks, func(a, b clause) int { return ast.Compare(a.order, b.order) })
	all.program = programOf(r, &all)
	return &all
}

func newTranslator(own *collection, kinds map[string]*collection, module *ast.Module) *translator {
	t := &translator{
		own: own, kinds: kinds, defined: map[string][]*ast.Rule{}, operands: map[operandKey]*operand{}, constants: map[string][]way{}, left: most,
	}
	for _, def := range module.Rules {
		name := nameOf(def)
		t.defined[name] = append(t.defined[name], def)
		t.shadows = t.shadows || ast.BuiltinMap[name] != nil
	}
	return t
}

// part returns the clauses of one definition of a part of a rule.
func (t *translator) part(r *rule, name string, def *ast.Rule) []clause {
	unknown := []clause{{when: []condition{doubt{}}, sets: r.all(), order: ast.Null{}}}
	if formOf([]*ast.Rule{def}) != setForm || t.shadows {
		t.unsure(def.Location, "%s", name)
		t.missed = true
		return unknown
	}
	var all []clause
	for _, b := range t.body(def.Body, branch{}) {
		for _, c := range t.head(r, name, def.Head.Key, b) {
			if !impossible(c.when) {
				c.when = tidy(c.when)
				all = append(all, c)
			}
		}
	}
	if t.left < 0 {
		t.missed = true
		return unknown
	}
	return merged(all)
}

// head returns the clauses for the member that a branch adds to a part: an id,
// or an object with the subject, the practice set and what it says.
func (t *translator) head(r *rule, part string, key *ast.Term, b branch) []clause {
	var all []clause
	address, said := t.addressed(key, b.scope)
	for _, w := range t.term(address, b.scope) {
		c := clause{when: and(b.when, w.when), sets: r.all(), order: ast.Null{}}
		if !t.address(r, w.is, &c) {
			c.when = and(c.when, t.unsure(key.Location, "whom %s concerns", part))
		}
		t.missed = t.missed || doubtful(closed(c.when))
		c.when = and(c.when, said)
		all = append(all, c)
	}
	return all
}

// addressed parts the head of a finding from the conditions under which all
// that it says has a value.
func (t *translator) addressed(key *ast.Term, in scope) (address *ast.Term, said []condition) {
	object, ok := key.Value.(ast.Object)
	if !ok {
		return key, nil
	}
	var entries [][2]*ast.Term
	object.Foreach(func(name, x *ast.Term) {
		switch word, _ := name.Value.(ast.String); word {
		case "subject", "set", "fact":
			entries = append(entries, [2]*ast.Term{name, x})
		default:
			said = and(said, t.there(x, in))
		}
	})
	return ast.ObjectTerm(entries...), said
}

// address reads of which sets a member of a part speaks, and what it asks for.
// It returns false if that is not understood, or no good: OPA's answer is then
// an error.
func (t *translator) address(r *rule, v value, c *clause) bool {
	of, ok := fieldsIn(v)
	if !ok {
		of = fields{"subject": v}
	}
	order := make([][2]*ast.Term, 0, len(of))
	for _, name := range names(of) {
		word, isWord := wordIn(of[name])
		switch name {
		case "subject":
			if of[name] != value(identity{}) && (!t.own.single || word != t.own.name) {
				return false
			}
			word = ""
		case "set":
			if c.sets = r.bit(word); c.sets == 0 || !isWord {
				c.sets = r.all()
				return false
			}
		case "fact":
			if c.asks = r.asked(word); c.asks == nil {
				return false
			}
		}
		order = append(order, [2]*ast.Term{ast.StringTerm(name), ast.StringTerm(word)})
	}
	c.order = ast.NewObject(order...)
	return true
}

// there returns the conditions under which every part of a term has a value.
func (t *translator) there(x *ast.Term, in scope) []condition {
	var when []condition
	switch v := x.Value.(type) {
	case ast.Object:
		v.Foreach(func(_, item *ast.Term) { when = and(when, t.there(item, in)) })
		return when
	case *ast.Array:
		v.Foreach(func(item *ast.Term) { when = and(when, t.there(item, in)) })
		return when
	}
	before := len(t.doubts)
	var alternatives [][]condition
	for _, w := range t.term(x, in) {
		alternatives = append(alternatives, w.when)
	}
	// What a finding says is OPA's to work out: not to understand it is no loss.
	t.doubts = t.doubts[:before]
	return either(alternatives)
}

// doubtful tells whether a doubt is among conditions.
func doubtful(when []condition) bool {
	for _, c := range when {
		var alternatives [][]condition
		switch c := c.(type) {
		case doubt:
			return true
		case anyOf:
			alternatives = c
		case noneOf:
			alternatives = c
		case someItem:
			alternatives = [][]condition{c.when}
		case each:
			return true
		}
		if slices.ContainsFunc(alternatives, doubtful) {
			return true
		}
	}
	return false
}

// tidy leaves out conditions that stand twice, and that a fact is known where
// another condition reads it.
func tidy(when []condition) []condition {
	var kept []condition
	seen := map[string]bool{}
	facts := compared(when)
	for _, c := range closed(when) {
		if p, ok := c.(present); ok && slices.Contains(facts, p.fact) {
			continue
		}
		if text := c.String(); !seen[text] {
			seen[text] = true
			kept = append(kept, c)
		}
	}
	return kept
}

// merged makes one clause of those that say the same.
func merged(clauses []clause) []clause {
	var all []clause
	alternatives := map[int][][]condition{}
	for _, c := range clauses {
		i := slices.IndexFunc(all, func(a clause) bool { return a.sets == c.sets && a.asks == c.asks && ast.Compare(a.order, c.order) == 0 })
		if i < 0 {
			i = len(all)
			all = append(all, c)
		}
		alternatives[i] = append(alternatives[i], c.when)
	}
	for i := range all {
		all[i].when = either(alternatives[i])
	}
	return all
}
