package rules

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/verdict"
)

// cell is a fact as conditions read it.
type cell struct {
	text   string
	number float64 // of a boolean 0 or 1
	state  state
}

type state uint8

const (
	absent  state = iota
	inexact       // a number that OPA may compare otherwise
	exact
)

// exactInt is the range in which every integer is a float of its own.
const exactInt = 1 << 53

// site is where conditions are read: a subject, beside the vessel and the job.
type site struct {
	own     *subject
	singles singles
	item    string // of the list that is gone over
}

// newSite returns the site of a record.
func (e *Engine) newSite(d document) *site { return &site{singles: d.singles} }

// cell returns a fact as it stands at the site.
func (at *site) cell(o *operand) cell { return o.spot.read(at.holder(o).memory) }

// lack is what is missing for a fact.
type lack struct {
	fact string
	gaps []verdict.Gap
}

// gaps returns what is missing where a fact is absent, each gap once. Verdicts share
// it.
func (at *site) gaps(o *operand) []verdict.Gap {
	s := at.holder(o)
	noted := s.note()
	for i := range noted.lacks {
		if noted.lacks[i].fact == o.fact {
			return noted.lacks[i].gaps
		}
	}
	var gaps []verdict.Gap
	s.base.Open.Each(o.fact, func(g figure.Gap) {
		if missing := (verdict.Gap{Field: g.Field, Why: g.Why}); !slices.Contains(gaps, missing) {
			gaps = append(gaps, missing)
		}
	})
	if len(gaps) == 0 {
		gaps = []verdict.Gap{{Field: s.base.Path + "." + o.fact}}
	}
	noted.lacks = append(noted.lacks, lack{o.fact, gaps})
	return gaps
}

// holder returns what has a fact: the subject, the vessel or the job. The last
// two can be missing in a document that is not of a record.
func (at *site) holder(o *operand) *subject {
	if o.single != nil {
		return at.singles[o.single.number]
	}
	return at.own
}
