package rules

import "cmp"

// ask asks a question of some subjects.
func (s *sieve) ask(n ordinal, among some) answer {
	if int(n) >= len(s.questions) { // of a rule that was read meanwhile
		s.questions = s.subjects[0].of.questions.list()
		s.grow()
	}
	m := &s.known[n]
	if anew := among &^ m.asked; anew != 0 {
		q := &s.questions[n]
		if q.shape == aroundShape {
			anew = s.all
		}
		one := s.look(q, anew)
		m = &s.known[n]
		m.asked, m.yes, m.may = m.asked|anew, m.yes|one.yes, m.may|one.may
	}
	return answer{m.yes & among, m.may & among}
}

// look asks a question of some subjects of which it was not asked yet.
func (s *sieve) look(q *question, among some) answer {
	switch q.shape {
	case aroundShape:
		return answerOf(q.holds(s.site), among)
	case presentShape:
		return s.have(q, among)
	case limitShape:
		return s.limit(q, among)
	case memberShape:
		return s.member(q, among)
	case anyOfShape:
		return s.either(q, among)
	case noneOfShape:
		a := s.either(q, among)
		return answer{among &^ a.may, among &^ a.yes}
	}
	return s.each(q, among)
}

func (s *sieve) each(q *question, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		s.site.own = &s.subjects[i]
		one := answerOf(q.holds(s.site), 1<<i)
		a.yes, a.may = a.yes|one.yes, a.may|one.may
	}
	return a
}

func (s *sieve) have(q *question, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		if i := rest.lowest(); q.spot.known(s.memories[i]) {
			a.yes |= 1 << i
		}
	}
	a.may = a.yes
	return a
}

func (s *sieve) limit(q *question, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		switch c := q.spot.read(s.memories[i]); {
		case c.state == inexact:
			a.may |= 1 << i
		case c.state == exact && q.is.among(cmp.Compare(c.number, q.value)):
			a.yes |= 1 << i
		}
	}
	a.may |= a.yes
	return a
}

func (s *sieve) member(q *question, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		c := q.spot.read(s.memories[i])
		for _, word := range q.words {
			if c.text == word && c.state != absent {
				a.yes |= 1 << i
				break
			}
		}
	}
	a.may = a.yes
	return a
}

func (s *sieve) either(q *question, among some) (a answer) {
	for _, alternative := range q.of {
		one := s.holds(alternative, among&^a.yes)
		a.yes, a.may = a.yes|one.yes, a.may|one.may
		if a.yes == among {
			break
		}
	}
	return a
}

// answerOf is the same answer for some subjects.
func answerOf(t truth, of some) (a answer) {
	if t != no {
		a.may = of
	}
	if t == yes {
		a.yes = of
	}
	return a
}
