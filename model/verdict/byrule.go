package verdict

// RuleCount is how many parts of a record one rule looked at, by outcome. A rule
// that found none to look at has a total of 0.
type RuleCount struct {
	Rule   *Rule
	Counts Counts
}

// CountByRule counts verdicts for each of the rules, in their order, those
// included that have none. Rules beside them that have verdicts come last.
func CountByRule(rules []*Rule, verdicts []Verdict) []RuleCount {
	all := make([]RuleCount, 0, len(rules))
	at := make(map[string]int, len(rules))
	add := func(r *Rule) int {
		at[r.ID] = len(all)
		all = append(all, RuleCount{Rule: r, Counts: Counts{}})
		return at[r.ID]
	}
	for _, r := range rules {
		add(r)
	}
	for i := range verdicts {
		v := &verdicts[i]
		n, known := at[v.Rule.ID]
		if !known {
			n = add(v.Rule)
		}
		all[n].Counts[v.Outcome]++
	}
	return all
}
