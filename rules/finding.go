package rules

import (
	"encoding/json"
	"fmt"
	"math"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// finding is one member of a rule's breach.
type finding struct {
	sets     mask   // whose limit is breached
	clause   string // the only clause of those sets to cite; "" for all of them
	severity verdict.Severity
	figures  []verdict.Figure
	limit    []verdict.Figure
}

// ask is one member of a rule's asks.
type ask struct {
	sets mask
	need *need
}

// found is what the Rego of one rule says of one record, by subject.
type found struct {
	applies  map[string]mask
	excludes map[string]mask
	breach   map[string][]finding
	asks     map[string][]ask
}

// all is the mask of every practice set of the rule.
func (r *rule) all() mask { return 1<<len(r.sets) - 1 }

// opinion returns what was found of one subject.
func (f *found) opinion(r *rule, id string) opinion {
	says := opinion{applies: f.applies[id], excludes: f.excludes[id], findings: f.breach[id], asks: f.asks[id]}
	if !r.hasApplies {
		says.applies = r.all()
	}
	return says
}

// decode reads the result of a rule's evaluation.
func (r *rule) decode(result map[string]any) (found, error) {
	f := found{applies: map[string]mask{}, excludes: map[string]mask{}, breach: map[string][]finding{}, asks: map[string][]ask{}}
	for _, member := range members(result, "breach") {
		id, one, err := r.readFinding(member)
		if err != nil {
			return f, fmt.Errorf("rule %s: breach: %w", r.meta.ID, err)
		}
		f.breach[id] = append(f.breach[id], one)
	}
	for part, into := range map[string]map[string]mask{"applies": f.applies, "excludes": f.excludes} {
		for _, member := range members(result, part) {
			id, sets, err := r.readConcern(member)
			if err != nil {
				return f, fmt.Errorf("rule %s: %s: %w", r.meta.ID, part, err)
			}
			into[id] |= sets
		}
	}
	for _, member := range members(result, "asks") {
		id, one, err := r.readAsk(member)
		if err != nil {
			return f, fmt.Errorf("rule %s: asks: %w", r.meta.ID, err)
		}
		f.asks[id] = append(f.asks[id], one)
	}
	return f, nil
}

func members(result map[string]any, part string) []any {
	set, _ := result[part].([]any)
	return set
}

// readConcern reads one member of applies or excludes: an id, or an object.
func (r *rule) readConcern(member any) (id string, sets mask, err error) {
	if id, ok := member.(string); ok {
		return id, r.all(), nil
	}
	return r.address(member)
}

// address reads the subject of a member and the practice sets it speaks of.
func (r *rule) address(member any) (id string, sets mask, err error) {
	object, ok := member.(map[string]any)
	if !ok {
		return "", 0, fmt.Errorf("%v is no object with a subject", member)
	}
	if id, ok = object["subject"].(string); !ok {
		return "", 0, fmt.Errorf("%v names no subject", member)
	}
	named, given := object["set"]
	if !given {
		return id, r.all(), nil
	}
	set, _ := named.(string)
	if sets = r.bit(set); sets == 0 {
		return "", 0, fmt.Errorf("practice set %v brings the rule no clause", named)
	}
	return id, sets, nil
}

// readFinding reads one member of breach.
func (r *rule) readFinding(member any) (id string, f finding, err error) {
	f.severity = r.meta.Severity
	if id, f.sets, err = r.address(member); err != nil {
		return "", f, err
	}
	for name, value := range member.(map[string]any) {
		switch name {
		case "subject", "set":
		case "clause":
			f.clause, _ = value.(string)
			if f.clause != "" && !r.cites(f.sets, f.clause) {
				err = fmt.Errorf("clause %v is none that the rule cites", value)
			}
		case "severity":
			word, _ := value.(string)
			f.severity, err = verdict.ParseSeverity(word)
			if err == nil && f.severity > r.meta.Severity {
				err = fmt.Errorf("severity %s is above the rule's own", word)
			}
		case "figures":
			f.figures, err = readObject(value)
		case "limit":
			f.limit, err = readObject(value)
		default:
			err = fmt.Errorf("%q is no part of a finding", name)
		}
		if err != nil {
			return "", f, err
		}
	}
	return id, f, nil
}

// cites tells whether the rule cites the clause in one of the sets.
func (r *rule) cites(sets mask, clause string) bool {
	for _, c := range r.meta.Sources {
		if r.bit(c.Set)&sets != 0 && c.Clause == clause {
			return true
		}
	}
	return false
}

func (r *rule) readAsk(member any) (id string, a ask, err error) {
	if id, a.sets, err = r.address(member); err != nil {
		return "", a, err
	}
	name, _ := member.(map[string]any)["fact"].(string)
	if a.need = r.asked(name); a.need == nil {
		return "", a, fmt.Errorf("fact %q is not in the metadata's asks", name)
	}
	return id, a, nil
}

// asked returns the fact of that name that the rule may ask for, or nil.
func (r *rule) asked(name string) *need {
	for _, listed := range [][]need{r.asks, r.needs, r.decides} {
		for i := range listed {
			if listed[i].name == name {
				return &listed[i]
			}
		}
	}
	return nil
}

func readObject(value any) ([]verdict.Figure, error) {
	object, ok := value.(map[string]any)
	if !ok {
		return nil, fmt.Errorf("%v is no object of figures", value)
	}
	return readFigures(object)
}

// readFigures turns the figures of a finding or limit into quantities, in
// alphabetical order.
func readFigures(from map[string]any) ([]verdict.Figure, error) {
	all := make([]verdict.Figure, 0, len(from))
	for _, name := range names(from) {
		f, err := readFigure(name, from[name])
		if err != nil {
			return nil, err
		}
		all = append(all, f)
	}
	return all, nil
}

// readFigure turns one figure into a quantity, by the unit that its name ends
// in, or into words.
func readFigure(name string, value any) (verdict.Figure, error) {
	if words, ok := value.(string); ok {
		return verdict.Figure{Name: name, Text: words}, nil
	}
	number, ok := value.(json.Number)
	if !ok {
		return verdict.Figure{}, fmt.Errorf("figure %s is %v, neither a number nor words", name, value)
	}
	v, err := number.Float64()
	if err != nil || math.IsInf(v, 0) {
		return verdict.Figure{}, fmt.Errorf("figure %s is no number: %v", name, value)
	}
	plain, q := quantity.FromFact(name, v)
	return verdict.Figure{Name: plain, Quantity: q}, nil
}
