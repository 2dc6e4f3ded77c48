package rules

import (
	"cmp"
	"math"
	"reflect"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"
)

// kind is the type of a fact or constant, as far as conditions compare it.
type kind uint8

const (
	other kind = iota // lists, objects, null
	truths
	numbers
	texts
)

// operand is a fact that conditions read.
type operand struct {
	name   string      // as the metadata would write it
	fact   string      // the same without "vessel." or "job."
	single *collection // the vessel or the job; nil for the subject's own
	spot   spot        // in what holds it
	of     kind
	// optional: it may be absent, and is a pointer.
	optional bool
	words    bool // it is a list of words
}

// operandOf returns a fact as conditions read it.
func operandOf(own, of *collection, f fact) *operand {
	o := &operand{name: f.name, fact: f.name, spot: f.spot, optional: f.optional, words: f.words}
	if of.single {
		o.single = of
	}
	if of != own {
		o.name = of.name + "." + f.name
	}
	switch f.kind {
	case reflect.Bool:
		o.of = truths
	case reflect.Int, reflect.Float64:
		o.of = numbers
	case reflect.String:
		o.of = texts
	}
	return o
}

// list returns the words of a fact that is a list of them.
func (o *operand) list(at *site) []string { return o.spot.list(at.holder(o).memory) }

func (o *operand) String() string { return o.name }

// textual is a fact or a constant of text.
type textual interface {
	text(at *site) (text string, known bool)
	String() string
}

func (o *operand) text(at *site) (string, bool) {
	c := at.cell(o)
	return c.text, c.state != absent
}

type word string

func (w word) text(*site) (string, bool) { return string(w), true }
func (w word) String() string            { return strconv.Quote(string(w)) }

// numeric is a fact, a constant or a computed value that is a number.
type numeric interface {
	number(at *site) (number, truth)
	String() string
}

// number is a number as OPA would have it. Facts and constants are exact: OPA
// compares their decimals, and the shortest decimals that stand for two floats
// are in the order of the floats. Arithmetic differs in its last digits; near a
// limit only OPA can tell.
type number struct{ v, slack float64 }

func (o *operand) number(at *site) (number, truth) {
	c := at.cell(o)
	return number{v: c.number}, readings[c.state]
}

// readings tells by the state of a cell whether it holds a number to go by.
var readings = [...]truth{absent: no, inexact: maybe, exact: yes}

// compare compares two numbers.
func (r relation) compare(a, b number) truth {
	if slack := a.slack + b.slack; slack > 0 && !(math.Abs(a.v-b.v) > slack) {
		return maybe
	}
	return truthOf(r.among(cmp.Compare(a.v, b.v)))
}

// literal is a constant number.
type literal struct {
	is   number
	says string
}

func (l literal) number(*site) (number, truth) { return l.is, yes }
func (l literal) String() string               { return l.says }

// literalOf returns a constant as a number; false if it is none, or one that no
// float stands for.
func literalOf(v ast.Value) (literal, bool) {
	switch c := v.(type) {
	case ast.Boolean:
		if c {
			return literal{number{v: 1}, "true"}, true
		}
		return literal{number{}, "false"}, true
	case ast.Number:
		f, ok := c.Float64()
		if !ok || ast.FloatNumberTerm(f).Value.Compare(c) != 0 {
			return literal{}, false
		}
		return literal{number{v: f}, string(c)}, true
	}
	return literal{}, false
}

// calculation is a number worked out from others.
type calculation struct {
	a, b numeric
	does string
}

// digits is how far a result in floats can lie from OPA's, as a share of what
// goes in; both keep more digits than that. A product can moreover be too small
// for a float.
const digits = 1e-12

func (c calculation) number(at *site) (number, truth) {
	a, known := c.a.number(at)
	if known != yes {
		return a, known
	}
	b, known := c.b.number(at)
	if known != yes {
		return b, known
	}
	x, y := math.Abs(a.v)+a.slack, math.Abs(b.v)+b.slack
	switch c.does {
	case "plus":
		return number{a.v + b.v, a.slack + b.slack + digits*(x+y)}, yes
	case "minus":
		return number{a.v - b.v, a.slack + b.slack + digits*(x+y)}, yes
	}
	return number{a.v * b.v, x*b.slack + y*a.slack + digits*x*y + math.SmallestNonzeroFloat64}, yes
}

func (c calculation) String() string {
	return "(" + c.a.String() + " " + c.does + " " + c.b.String() + ")"
}
