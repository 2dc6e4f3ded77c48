package rules

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// truth is what a condition says of a subject, read in Go. Maybe is the answer
// where only OPA can tell; it is never taken for no.
type truth uint8

// The truths in the order that lets "and" be the least and "or" the greatest.
const (
	no truth = iota
	maybe
	yes
)

func truthOf(holds bool) truth {
	if holds {
		return yes
	}
	return no
}

// condition is one condition of a rule. As in Rego, it does not hold where a
// fact that it reads is absent.
type condition interface {
	holds(at *site) truth
	// String writes the condition; equal conditions are written alike.
	String() string
}

// all tells whether every condition holds.
func all(of []condition, at *site) truth {
	t := yes
	for _, c := range of {
		if t = min(t, c.holds(at)); t == no {
			break
		}
	}
	return t
}

// doubt is a condition that is not understood.
type doubt struct{}

func (doubt) holds(*site) truth { return maybe }
func (doubt) String() string    { return "?" }

// never is a condition that holds for no subject.
type never struct{}

func (never) holds(*site) truth { return no }
func (never) String() string    { return "never" }

// present holds where a fact is known.
type present struct{ fact *operand }

func (p present) holds(at *site) truth { return truthOf(at.cell(p.fact).state != absent) }
func (p present) String() string       { return "known " + p.fact.String() }

// relation is a set of results of a comparison.
type relation uint8

// The relations, by the results that satisfy them: below, equal, above.
const (
	lt  relation = 1
	eq  relation = 2
	gt  relation = 4
	lte          = lt | eq
	gte          = gt | eq
	neq          = lt | gt
)

// among tells whether a result, as cmp.Compare gives it, satisfies the relation.
func (r relation) among(result int) bool { return r&(1<<(result+1)) != 0 }

// flip is the relation with its sides changed.
func (r relation) flip() relation { return r&eq | r&lt<<2 | r&gt>>2 }

func (r relation) String() string {
	return [...]string{lt: "<", eq: "==", lte: "<=", gt: ">", neq: "!=", gte: ">="}[r]
}

// limit compares a fact with a constant: a number, or a boolean as 0 or 1. Most
// conditions are of this form, which is why it stands beside comparison.
type limit struct {
	fact *operand
	is   relation
	of   literal
}

func (l limit) holds(at *site) truth {
	c := at.cell(l.fact)
	if c.state != exact {
		return readings[c.state]
	}
	return truthOf(l.is.among(cmp.Compare(c.number, l.of.is.v)))
}
func (l limit) String() string { return l.fact.name + " " + l.is.String() + " " + l.of.says }

// comparison compares two numbers, or two booleans as 0 and 1.
type comparison struct {
	a  numeric
	is relation
	b  numeric
}

func (c comparison) holds(at *site) truth {
	a, known := c.a.number(at)
	if known != yes {
		return known
	}
	b, known := c.b.number(at)
	if known != yes {
		return known
	}
	if t := c.is.compare(a, b); t != maybe {
		return t
	}
	return weighing{c.a, c.is, c.b}.holds(at)
}

func (c comparison) String() string { return c.a.String() + " " + c.is.String() + " " + c.b.String() }

// wording compares two texts by their bytes.
type wording struct {
	a  textual
	is relation
	b  textual
}

func (w wording) holds(at *site) truth {
	a, known := w.a.text(at)
	if !known {
		return no
	}
	b, known := w.b.text(at)
	return truthOf(known && w.is.among(strings.Compare(a, b)))
}
func (w wording) String() string { return w.a.String() + " " + w.is.String() + " " + w.b.String() }

// member holds where a fact is one of some words.
type member struct {
	fact  *operand
	words []string
}

func (m member) holds(at *site) truth {
	word, known := m.fact.text(at)
	return truthOf(known && slices.Contains(m.words, word))
}

func (m member) String() string {
	quoted := make([]string, len(m.words))
	for i, w := range m.words {
		quoted[i] = strconv.Quote(w)
	}
	return m.fact.String() + " in {" + strings.Join(quoted, ", ") + "}"
}

// anyOf holds where all conditions of one of its alternatives do.
type anyOf [][]condition

func (a anyOf) holds(at *site) truth {
	t := no
	for _, alternative := range a {
		if t = max(t, all(alternative, at)); t == yes {
			break
		}
	}
	return t
}
func (a anyOf) String() string { return "any of " + written(a) }

// noneOf holds where none of its alternatives does.
type noneOf [][]condition

func (n noneOf) holds(at *site) truth { return yes - anyOf(n).holds(at) }
func (n noneOf) String() string       { return "none of " + written(n) }

func written(alternatives [][]condition) string {
	texts := make([]string, len(alternatives))
	for i, a := range alternatives {
		texts[i] = conjunction(a)
	}
	return "(" + strings.Join(texts, "; ") + ")"
}

// conjunction writes conditions that hold together.
func conjunction(of []condition) string {
	texts := make([]string, len(of))
	for i, c := range of {
		texts[i] = c.String()
	}
	return strings.Join(texts, ", ")
}
