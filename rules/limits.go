package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// Limit is one limit of a rule by practice set, as a reader is shown it.
type Limit struct {
	Set     string
	When    string // the condition, in words; empty if it always holds
	Figures []verdict.Figure
}

// readLimits reads the constant "limits" of a rule: an object keyed by practice
// set that holds an object of figures or a list of such objects.
func (v *validator) readLimits(r *rule, def *ast.Rule) []Limit {
	refuse := func(says string) []Limit {
		v.faults.add(r.file, def.Location.Row, "limits %s", says)
		return nil
	}
	if def.Head.Value == nil || len(def.Head.Args) > 0 || !def.Head.Value.IsGround() || def.Default {
		return refuse("is a constant: limits := {...}")
	}
	plain, err := ast.JSON(def.Head.Value.Value)
	if err != nil {
		return refuse("holds only numbers and words: " + err.Error())
	}
	bySet, ok := plain.(map[string]any)
	if !ok {
		return refuse("is an object keyed by practice set")
	}
	var all []Limit
	for _, set := range r.sets {
		held, ok := bySet[set]
		if !ok {
			continue
		}
		delete(bySet, set)
		several, ok := held.([]any)
		if !ok {
			several = []any{held}
		}
		for _, one := range several {
			figures, ok := one.(map[string]any)
			if !ok {
				return refuse("of " + set + " is no object of figures")
			}
			limit := Limit{Set: set}
			limit.When, _ = figures["when"].(string)
			delete(figures, "when")
			if limit.Figures, err = readFigures(figures); err != nil {
				return refuse("of " + set + ": " + err.Error())
			}
			all = append(all, limit)
		}
	}
	for _, set := range names(bySet) {
		return refuse("names " + set + ", which brings the rule no clause")
	}
	return all
}
