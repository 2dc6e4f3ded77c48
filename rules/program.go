package rules

import "slices"

// program is what the sieve goes by of a rule, in little room as its questions are.
type program struct {
	excludes, applies, breach, asks []spoken
	wants                           []wanted
	hasApplies                      bool
}

// spoken is a clause: what has to hold for it to speak of a subject.
type spoken struct {
	sets      mask
	questions []ordinal
	// Of asks: the question whether the fact is known that it asks for, and whether
	// that decides to what the rule applies.
	fact     ordinal
	deciding bool
}

// wanted is a fact that has to be known.
type wanted struct {
	known     ordinal
	applies   mask // where one of these practice sets applies,
	unsettled bool // or where it is not settled whether one in force does
}

// programOf returns the program of a rule that was understood.
func programOf(r *rule, t *translated) program {
	p := program{excludes: r.of.spoken(t.excludes), applies: r.of.spoken(t.applies), breach: r.of.spoken(t.breach), asks: r.of.spoken(t.asks), hasApplies: r.hasApplies}
	for i := range r.needs {
		p.wants = append(p.wants, wanted{known: r.of.known(&r.needs[i]), applies: r.all()})
	}
	for i := range r.decides {
		one := wanted{known: r.of.known(&r.decides[i]), unsettled: true}
		if r.decides[i].judging {
			one.applies = r.all()
		}
		p.wants = append(p.wants, one)
	}
	for _, c := range r.clauses {
		for i := range c.needs {
			p.wants = append(p.wants, wanted{known: r.of.known(&c.needs[i]), applies: c.set})
		}
	}
	p.pack()
	return p
}

// pack puts the questions of all clauses next to each other.
func (p *program) pack() {
	total := 0
	parts := [][]spoken{p.excludes, p.applies, p.breach, p.asks}
	for _, c := range slices.Concat(parts...) {
		total += len(c.questions)
	}
	all := make([]ordinal, 0, total)
	for _, part := range parts {
		for i := range part {
			from := len(all)
			all = append(all, part[i].questions...)
			part[i].questions = all[from:len(all):len(all)]
		}
	}
}

func (c *collection) spoken(clauses []clause) []spoken {
	all := make([]spoken, len(clauses))
	for i := range clauses {
		one := &clauses[i]
		all[i] = spoken{sets: one.sets, questions: c.questionsOf(one.when)}
		if one.asks != nil {
			all[i].fact, all[i].deciding = c.known(one.asks), one.asks.deciding
		}
	}
	return all
}

// known is the question whether a fact is known.
func (c *collection) known(n *need) ordinal { return c.question(present{n.fact}) }
