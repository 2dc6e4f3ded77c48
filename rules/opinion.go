package rules

// opinion is what the Rego of one rule says of one subject.
type opinion struct {
	applies, excludes mask
	findings          []finding
	asks              []ask
}

// opine works out in Go what a rule says of a subject. It returns false where OPA
// has to tell, since something that bears on it is not understood.
func (t *translated) opine(r *rule, at *site, inForce mask, says *opinion) bool {
	says.applies, says.excludes, says.findings, says.asks = r.all(), 0, says.findings[:0], says.asks[:0]
	var certain bool
	if says.excludes, certain = speaks(t.excludes, at, inForce); !certain {
		return false
	}
	admitted := inForce &^ says.excludes
	if r.hasApplies {
		if says.applies, certain = speaks(t.applies, at, admitted); !certain {
			return false
		}
	}
	return t.tell(at, admitted&says.applies, &says.findings) && asks(t.asks, at, admitted, &says.asks)
}

// speaks returns for which of some sets a part of a rule speaks of a subject,
// and whether that is certain.
func speaks(clauses []clause, at *site, of mask) (sets mask, certain bool) {
	var perhaps mask
	for i := range clauses {
		switch c := &clauses[i]; c.holds(at, of&^sets) {
		case yes:
			sets |= c.sets
		case maybe:
			perhaps |= c.sets
		}
	}
	return sets, perhaps&of&^sets == 0
}

// asks adds what a rule asks for on behalf of some sets, and tells whether that
// is certain.
func asks(clauses []clause, at *site, of mask, into *[]ask) (certain bool) {
	for i := range clauses {
		switch c := &clauses[i]; c.holds(at, of) {
		case yes:
			*into = append(*into, ask{sets: c.sets, need: c.asks})
		case maybe:
			return false
		}
	}
	return true
}

// holds tells whether a clause holds that speaks of some sets.
func (c *clause) holds(at *site, of mask) truth {
	if c.sets&of == 0 {
		return no
	}
	return all(c.when, at)
}
