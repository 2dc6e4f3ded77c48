package rules

// sieve judges a batch of subjects of one collection at once. What is met and what
// a rule does not apply to, which is nearly all, passes; what is left has to be
// looked at one by one. Each question is asked once of a subject, whichever rules
// ask it.
type sieve struct {
	site      *site // moves from subject to subject
	subjects  []subject
	memories  []memory // of the subjects
	all       some
	questions []question
	known     []answered // by number of the question; of a kind before it there may be more
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
func (s *sieve) turn(of *collection, subjects []subject) {
	s.subjects, s.all = subjects, first(len(subjects))
	s.memories = s.memories[:0]
	for i := range subjects {
		s.memories = append(s.memories, subjects[i].memory)
	}
	s.questions = of.questions.list()
	clear(s.known)
	s.grow()
}

func (s *sieve) grow() {
	s.known = append(s.known, make([]answered, max(0, len(s.questions)-len(s.known)))...)
}

// sift judges by one rule. It goes by the same clauses as opine and judge do.
func (s *sieve) sift(p *program, inForce mask, into *sifted) {
	var admitted, excluded, unsettled bySet
	for set := range inForce.each() {
		admitted[set] = s.all
	}
	var unsure some
	if len(p.excludes) > 0 {
		unsure = s.speaks(p.excludes, inForce, &admitted, &excluded)
		for set := range inForce.each() {
			admitted[set] &^= excluded[set]
		}
	}
	applies := &into.bySet
	if *applies = admitted; p.hasApplies {
		*applies = bySet{}
		unsure |= s.speaks(p.applies, inForce, &admitted, applies)
		for set := range inForce.each() {
			unsettled[set] = admitted[set] &^ applies[set]
		}
	}
	into.applies, into.closer = applies.of(inForce), unsure
	for i := range p.wants {
		want := &p.wants[i]
		of := applies.of(want.applies & inForce)
		if want.unsettled {
			of |= unsettled.of(inForce)
		}
		into.closer |= s.lacking(want.known, of&^into.closer)
	}
	for i := range p.breach {
		c := &p.breach[i]
		if of := applies.of(c.sets&inForce) &^ into.closer; of != 0 {
			into.closer |= s.holds(c.questions, of).may
		}
	}
	for i := range p.asks {
		c := &p.asks[i]
		of := admitted.of(c.sets&inForce) &^ into.closer
		if of == 0 {
			continue
		}
		a := s.holds(c.questions, of)
		into.closer |= a.may &^ a.yes
		asked := applies.of(c.sets & inForce)
		if c.deciding {
			asked |= unsettled.of(c.sets & inForce)
		}
		into.closer |= s.lacking(c.fact, a.yes&asked)
	}
}

// speaks finds of which subjects a part of a rule speaks on behalf of each
// practice set, and returns those of which that is not certain.
func (s *sieve) speaks(clauses []spoken, inForce mask, among, into *bySet) (unsure some) {
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
func (s *sieve) lacking(known ordinal, among some) some {
	if among == 0 {
		return 0
	}
	return among &^ s.ask(known, among).yes
}

// holds tells for which of some subjects questions hold together.
func (s *sieve) holds(questions []ordinal, among some) answer {
	a := answer{among, among}
	for _, n := range questions {
		one := s.ask(n, a.may)
		a.yes &= one.yes
		if a.may = one.may; a.may == 0 {
			break
		}
	}
	return a
}
