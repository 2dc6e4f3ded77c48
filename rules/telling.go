package rules

import (
	"encoding/json"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// telling is one finding that a rule makes of a subject where its conditions hold.
type telling struct {
	when           []condition
	finding        finding // without what hangs on the subject
	figures, limit []figureOf
	whole          value // the member of the set, by which OPA orders several
}

// figureOf is one figure of a finding: what it always is, or the value that it
// is taken from.
type figureOf struct {
	name  string
	fixed verdict.Figure
	from  value // nil if it is fixed
}

// tellings reads what the definitions of "breach" say, in their order. Those of a
// definition are nil where it is not understood, and OPA has to tell.
func tellings(r *rule, kinds map[string]*collection) [][]telling {
	t := newTranslator(r.of, kinds, r.mod)
	var all [][]telling
	for _, def := range r.mod.Rules {
		if nameOf(def) == "breach" {
			t.left = most
			all = append(all, t.tellings(r, def))
		}
	}
	return all
}

func (t *translator) tellings(r *rule, def *ast.Rule) []telling {
	if formOf([]*ast.Rule{def}) != setForm || t.shadows {
		return nil
	}
	all := []telling{}
	for _, b := range t.body(def.Body, branch{}) {
		for _, w := range t.within(b, def.Head.Key) {
			one, ok := t.telling(r, w.is)
			if !ok {
				return nil
			}
			one.when = tidy(w.when)
			all = append(all, one)
		}
	}
	if t.left < 0 {
		return nil
	}
	return all
}

// telling reads a member of breach. It returns false if that is not understood,
// or no good: OPA's answer is then an error.
func (t *translator) telling(r *rule, v value) (one telling, ok bool) {
	of, ok := fieldsIn(v)
	if !ok || escapes(v) {
		return one, false
	}
	var about clause
	address := fields{}
	for _, name := range []string{"subject", "set"} {
		if part, said := of[name]; said {
			address[name] = part
		}
	}
	if about.sets = r.all(); address["subject"] == nil || !t.address(r, address, &about) {
		return one, false
	}
	one.whole, one.finding = v, finding{sets: about.sets, severity: r.meta.Severity}
	for name, part := range of {
		word, isWord := wordIn(part)
		switch name {
		case "subject", "set":
		case "clause":
			one.finding.clause = word
			ok = isWord && (word == "" || r.cites(about.sets, word))
		case "severity":
			severity, err := verdict.ParseSeverity(word)
			one.finding.severity = severity
			ok = err == nil && severity <= r.meta.Severity
		case "figures":
			one.figures, ok = figuresOf(part)
		case "limit":
			one.limit, ok = figuresOf(part)
		default:
			ok = false
		}
		if !ok {
			return one, false
		}
	}
	return one, true
}

func figuresOf(v value) ([]figureOf, bool) {
	of, ok := fieldsIn(v)
	if !ok {
		return nil, false
	}
	all := make([]figureOf, 0, len(of))
	for _, name := range names(of) {
		one := figureOf{name: name, from: of[name]}
		if c, fixed := one.from.(constant); fixed {
			if one.fixed, ok = printed(name, c.Value); !ok {
				return nil, false
			}
			one.from = nil
		}
		all = append(all, one)
	}
	return all, true
}

// printed turns a value of OPA into a figure.
func printed(name string, v ast.Value) (verdict.Figure, bool) {
	var plain any
	switch v := v.(type) {
	case ast.Number:
		plain = json.Number(v)
	case ast.String:
		plain = string(v)
	}
	f, err := readFigure(name, plain)
	return f, err == nil
}

// at returns the finding as it is of a subject.
func (one *telling) at(at *site) (f finding, ok bool) {
	f = one.finding
	if f.figures, ok = figuresAt(one.figures, at); ok {
		f.limit, ok = figuresAt(one.limit, at)
	}
	return f, ok
}

func figuresAt(of []figureOf, at *site) ([]verdict.Figure, bool) {
	if of == nil {
		return nil, true
	}
	all := make([]verdict.Figure, len(of))
	for i := range of {
		var ok bool
		if all[i], ok = of[i].at(at); !ok {
			return nil, false
		}
	}
	return all, true
}

func (f *figureOf) at(at *site) (verdict.Figure, bool) {
	if f.from == nil {
		return f.fixed, true
	}
	if fact, ok := f.from.(*operand); ok {
		switch c := at.cell(fact); {
		case c.state == exact && fact.of == numbers:
			plain, q := quantity.FromFact(f.name, c.number)
			return verdict.Figure{Name: plain, Quantity: q}, true
		case c.state == exact && fact.of == texts:
			return verdict.Figure{Name: f.name, Text: c.text}, true
		}
		return verdict.Figure{}, false
	}
	v, ok := at.evaluate(f.from)
	if !ok {
		return verdict.Figure{}, false
	}
	return printed(f.name, v)
}

// tell adds what a rule finds of a subject on behalf of some sets, and tells
// whether that is certain.
func (t *translated) tell(at *site, of mask, into *[]finding) (certain bool) {
	told := -1              // the definition told last
	var findings []*telling // beside those that are added
	for i := range t.breach {
		c := &t.breach[i]
		if c.def == told || c.holds(at, of) == no {
			continue
		}
		told = c.def
		defined := t.tellings()[c.def]
		if defined == nil {
			return false
		}
		for i := range defined {
			one := &defined[i]
			if one.finding.sets&of == 0 {
				continue
			}
			switch all(one.when, at) {
			case maybe:
				return false
			case yes:
				f, ok := one.at(at)
				if !ok {
					return false
				}
				*into, findings = append(*into, f), append(findings, one)
			}
		}
	}
	if len(findings) > 1 {
		return inOrder(at, findings, into)
	}
	return told < 0 || len(findings) > 0
}

// inOrder puts findings into the order in which OPA has them in the set, each
// once.
func inOrder(at *site, told []*telling, all *[]finding) (certain bool) {
	type member struct {
		whole ast.Value
		finding
	}
	members := make([]member, len(told))
	for i, one := range told {
		whole, ok := at.evaluate(one.whole)
		if !ok {
			return false
		}
		members[i] = member{whole, (*all)[i]}
	}
	slices.SortStableFunc(members, func(a, b member) int { return ast.Compare(a.whole, b.whole) })
	*all = (*all)[:0]
	for i, m := range members {
		if i == 0 || ast.Compare(m.whole, members[i-1].whole) != 0 {
			*all = append(*all, m.finding)
		}
	}
	return true
}
