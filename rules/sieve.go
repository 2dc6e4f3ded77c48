package rules

// sieve judges a batch of subjects of one collection at once. What is met and what
// a rule does not apply to, which is nearly all, passes; what is left has to be
// looked at one by one. Each question is asked once of a subject, whichever rules
// ask it.
type sieve struct {
	site     *site // moves from subject to subject
	subjects []subject
	memories []memory // of the subjects
	all      some
	known    []answered // by number of the question
}

// answered is what was answered to a question until now.
type answered struct {
	asked some
	answer
}

// sifted is what becomes of a batch of subjects by one rule.
type sifted struct {
	closer  some  // have to be looked at one by one
	applies some  // of all: those that the rule applies to
	bySet   bySet // the same by practice set
}

// turn turns to another batch of subjects.
func (s *sieve) turn(subjects []subject) {
	s.subjects, s.all = subjects, first(len(subjects))
	clear(s.known)
	s.memories = s.memories[:0]
	for i := range subjects {
		s.memories = append(s.memories, subjects[i].memory)
	}
}

// sift judges by one rule. It goes by the same clauses as opine and judge do.
func (s *sieve) sift(t *translated, r *rule, inForce mask, into *sifted) {
	var admitted, excluded bySet
	for set := range inForce.each() {
		admitted[set] = s.all
	}
	var unsure some
	if len(t.excludes) > 0 {
		unsure = s.speaks(t.excludes, inForce, &admitted, &excluded)
		for set := range inForce.each() {
			admitted[set] &^= excluded[set]
		}
	}
	applies := &into.bySet
	if *applies = admitted; r.hasApplies {
		*applies = bySet{}
		unsure |= s.speaks(t.applies, inForce, &admitted, applies)
	}
	var unsettled bySet
	for set := range inForce.each() {
		unsettled[set] = admitted[set] &^ applies[set]
	}
	into.applies = applies.of(inForce)
	into.closer = unsure
	for i := range t.breach {
		c := &t.breach[i]
		if of := applies.of(c.sets&inForce) &^ into.closer; of != 0 {
			into.closer |= s.holds(c.questions, of).may
		}
	}
	for i := range t.asks {
		c := &t.asks[i]
		of := admitted.of(c.sets&inForce) &^ into.closer
		if of == 0 {
			continue
		}
		a := s.holds(c.questions, of)
		into.closer |= a.may &^ a.yes
		asked := applies.of(c.sets & inForce)
		if c.asks.deciding {
			asked |= unsettled.of(c.sets & inForce)
		}
		into.closer |= s.lacking(c.asks, a.yes&asked)
	}
	s.needs(r, inForce, unsettled.of(inForce), into)
}

// needs looks closer at subjects that lack a fact.
func (s *sieve) needs(r *rule, inForce mask, unsettled some, into *sifted) {
	for i := range r.needs {
		into.closer |= s.lacking(&r.needs[i], into.applies&^into.closer)
	}
	for i := range r.decides {
		of := unsettled
		if r.decides[i].judging {
			of |= into.applies
		}
		into.closer |= s.lacking(&r.decides[i], of&^into.closer)
	}
	for i := range r.clauses {
		c := &r.clauses[i]
		of := into.bySet.of(c.set & inForce)
		for k := range c.needs {
			into.closer |= s.lacking(&c.needs[k], of&^into.closer)
		}
	}
}

// speaks finds of which subjects a part of a rule speaks on behalf of each
// practice set, and returns those of which that is not certain.
func (s *sieve) speaks(clauses []clause, inForce mask, among, into *bySet) (unsure some) {
	var may bySet
	for i := range clauses {
		c := &clauses[i]
		sets := c.sets & inForce
		var of some
		for set := range sets.each() {
			of |= among[set] &^ into[set]
		}
		if of == 0 {
			continue
		}
		a := s.holds(c.questions, of)
		for set := range sets.each() {
			into[set] |= a.yes & among[set]
			may[set] |= a.may & among[set]
		}
	}
	for set := range inForce.each() {
		unsure |= may[set] &^ into[set]
	}
	return unsure
}

// lacking returns those of some subjects that lack a fact.
func (s *sieve) lacking(n *need, among some) some {
	if among == 0 {
		return 0
	}
	return among &^ s.ask(&n.known, among).yes
}

// holds tells for which of some subjects questions hold together.
func (s *sieve) holds(questions []question, among some) answer {
	a := answer{among, among}
	for i := range questions {
		one := s.ask(&questions[i], a.may)
		a.yes &= one.yes
		if a.may = one.may; a.may == 0 {
			break
		}
	}
	return a
}

// ask asks one question of some subjects.
func (s *sieve) ask(q *question, among some) answer {
	switch {
	case q.of != nil:
		return s.either(q, among)
	case q.number == none:
		return s.look(q, among)
	}
	for q.number >= len(s.known) {
		s.known = append(s.known, answered{})
	}
	m := &s.known[q.number]
	if anew := among &^ m.asked; anew != 0 {
		if q.around {
			anew = s.all
		}
		one := s.look(q, anew)
		m.asked, m.yes, m.may = m.asked|anew, m.yes|one.yes, m.may|one.may
	}
	return answer{m.yes & among, m.may & among}
}

// either asks for alternatives, or whether none of them holds.
func (s *sieve) either(q *question, among some) answer {
	var a answer
	for _, alternative := range q.of {
		one := s.holds(alternative, among&^a.yes)
		a.yes, a.may = a.yes|one.yes, a.may|one.may
		if a.yes == among {
			break
		}
	}
	if q.inverted {
		return answer{among &^ a.may, among &^ a.yes}
	}
	return a
}
