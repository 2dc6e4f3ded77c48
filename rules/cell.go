package rules

import (
	"math"
	"reflect"
	"slices"

	"driploop/model/figure"
	"driploop/model/verdict"
)

// cell is a fact as conditions have read it, so that the many rules that judge a
// subject go through its Go value but once.
type cell struct {
	text   string
	number float64 // of a boolean 0 or 1
	state  state
	gaps   []verdict.Gap // why it is absent, once asked for
}

type state uint8

const (
	unread state = iota
	absent
	inexact // a number that OPA may compare otherwise
	exact
)

// exactInt is the range in which every integer is a float of its own.
const exactInt = 1 << 53

// read reads a fact into the cell.
func (c *cell) read(s *subject, o *operand) {
	v, known := o.in(s)
	if c.state = absent; !known {
		return
	}
	c.state = exact
	switch v.Kind() {
	case reflect.String:
		c.text = v.String()
	case reflect.Float64:
		if c.number = v.Float(); math.IsNaN(c.number) || math.IsInf(c.number, 0) {
			c.state = inexact
		}
	case reflect.Int:
		i := v.Int()
		if c.number = float64(i); i < -exactInt || i > exactInt {
			c.state = inexact
		}
	case reflect.Bool:
		if v.Bool() {
			c.number = 1
		}
	}
}

// site is where conditions are read: a subject, beside the vessel and the job.
type site struct {
	own     *subject
	singles singles
	item    string // of the list that is gone over

	cells  []cell   // of the subject
	around [][]cell // of vessel and job, by number of their collection
}

// newSite returns the site of a record.
func (e *Engine) newSite(d document) *site {
	at := &site{singles: d.singles, around: make([][]cell, len(e.kinds))}
	for _, kind := range e.kinds {
		if kind.single {
			at.around[kind.number] = make([]cell, len(kind.order))
		}
	}
	return at
}

// another returns a site beside this one, in the same record.
func (at *site) another() *site { return &site{singles: at.singles, around: at.around} }

// move goes to a subject.
func (at *site) move(s *subject, of *collection) {
	at.own = s
	at.cells = slices.Grow(at.cells[:0], len(of.order))[:len(of.order)]
	clear(at.cells)
}

// cell returns a fact as it stands at the site.
func (at *site) cell(o *operand) *cell {
	cells := at.cells
	if o.single != nil {
		cells = at.around[o.single.number]
	}
	c := &cells[o.slot]
	if c.state == unread {
		c.read(at.holder(o), o)
	}
	return c
}

// gaps returns what is missing where a fact is absent, each gap once.
func (at *site) gaps(o *operand) []verdict.Gap {
	c := at.cell(o)
	if c.state != absent || c.gaps != nil {
		return c.gaps
	}
	base := at.holder(o).base
	base.Open.Each(o.fact, func(g figure.Gap) {
		if missing := (verdict.Gap{Field: g.Field, Why: g.Why}); !slices.Contains(c.gaps, missing) {
			c.gaps = append(c.gaps, missing)
		}
	})
	if len(c.gaps) == 0 {
		c.gaps = []verdict.Gap{{Field: base.Path + "." + o.fact}}
	}
	return c.gaps
}

// holder returns what has a fact: the subject, the vessel or the job. The last
// two can be missing in a document that is not of a record.
func (at *site) holder(o *operand) *subject {
	if o.single != nil {
		return at.singles[o.single.number]
	}
	return at.own
}
