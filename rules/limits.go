package rules

import (
	"fmt"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// Limit is one limit of a rule by practice set, as a reader is shown it.
type Limit struct {
	Set     string
	When    string // the condition, in words; empty if it always holds
	Clause  string // where it stands; empty if the set cites but one clause
	Figures []verdict.Figure
}

// readLimits reads the constant "limits" of a rule: an object keyed by practice
// set. A set holds an object of figures, or several: an object of them keyed by
// condition, or a list of them with the condition as "when".
func (v *validator) readLimits(r *rule, def *ast.Rule) []Limit {
	refuse := func(format string, args ...any) []Limit {
		v.faults.addAt(r.shown, def.Location, "limits %s", fmt.Sprintf(format, args...))
		return nil
	}
	if def.Head.Value == nil || len(def.Head.Args) > 0 || !def.Head.Value.IsGround() || def.Default {
		return refuse("is a constant: limits := {...}")
	}
	plain, err := ast.JSON(def.Head.Value.Value)
	if err != nil {
		return refuse("holds only numbers and words: %v", err)
	}
	bySet, ok := plain.(map[string]any)
	if !ok {
		return refuse("is an object keyed by practice set")
	}
	var all []Limit
	for _, set := range names(bySet) {
		if r.bit(set) == 0 {
			return refuse("names %s, which brings the rule no clause", set)
		}
	}
	for _, set := range r.sets {
		limits, err := limitsOf(set, bySet[set])
		if err != nil {
			return refuse("of %s: %v", set, err)
		}
		all = append(all, limits...)
	}
	return all
}

// limitsOf reads the limits of one practice set.
func limitsOf(set string, held any) ([]Limit, error) {
	var all []Limit
	add := func(when string, figures any) error {
		limit, err := readLimit(figures)
		if err != nil {
			return err
		}
		limit.Set = set
		if when != "" {
			limit.When = when
		}
		all = append(all, limit)
		return nil
	}
	switch several := held.(type) {
	case nil:
		return nil, nil
	case []any:
		for _, one := range several {
			if err := add("", one); err != nil {
				return nil, err
			}
		}
		return all, nil
	case map[string]any:
		if !conditions(several) {
			err := add("", several)
			return all, err
		}
		for _, when := range names(several) {
			if err := add(when, several[when]); err != nil {
				return nil, err
			}
		}
		return all, nil
	}
	return nil, fmt.Errorf("%v is no object of figures", held)
}

// conditions tells whether an object is keyed by conditions, not by figures.
func conditions(object map[string]any) bool {
	for _, value := range object {
		if _, nested := value.(map[string]any); !nested {
			return false
		}
	}
	return len(object) > 0
}

func readLimit(held any) (Limit, error) {
	object, ok := held.(map[string]any)
	if !ok {
		return Limit{}, fmt.Errorf("%v is no object of figures", held)
	}
	figures := map[string]any{}
	var limit Limit
	for name, value := range object {
		words, _ := value.(string)
		switch name {
		case "when":
			limit.When = words
		case "clause":
			limit.Clause = words
		default:
			figures[name] = value
		}
	}
	var err error
	limit.Figures, err = readFigures(figures)
	return limit, err
}
