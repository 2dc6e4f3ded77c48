package rules

// look asks a question of one subject after the other. The forms that most
// questions have are asked here without going to a site.
func (s *sieve) look(q *question, among some) (a answer) {
	if q.around {
		a.add(q.holds(s.site), among)
		return a
	}
	switch c := q.condition.(type) {
	case present:
		return s.present(c.fact, among)
	case limit:
		return s.limit(&c, among)
	case member:
		return s.member(&c, among)
	}
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		s.site.own = &s.subjects[i]
		a.add(q.holds(s.site), 1<<i)
	}
	return a
}

func (s *sieve) present(fact *operand, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		if i := rest.lowest(); fact.spot.known(s.memories[i]) {
			a.yes |= 1 << i
		}
	}
	a.may = a.yes
	return a
}

func (s *sieve) limit(l *limit, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		c := l.fact.spot.read(s.memories[i])
		a.add(l.admits(&c), 1<<i)
	}
	return a
}

func (s *sieve) member(m *member, among some) (a answer) {
	for rest := among; rest != 0; rest &= rest - 1 {
		i := rest.lowest()
		c := m.fact.spot.read(s.memories[i])
		a.add(m.admits(&c), 1<<i)
	}
	return a
}

// add adds the same answer for some subjects.
func (a *answer) add(t truth, of some) {
	if t != no {
		a.may |= of
	}
	if t == yes {
		a.yes |= of
	}
}
