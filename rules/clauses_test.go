package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/rules"
)

// Every clause of a listed document has a rule or a reason, and no rule cites a
// clause that is not listed: Coverage refuses else.
func TestEveryClauseHasRuleOrReason(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	coverage, err := engine.Coverage()
	require.NoError(t, err)
	listed := map[string]int{}
	for _, c := range coverage {
		listed[c.Source.ID] = len(c.Clauses)
		for _, clause := range c.Clauses {
			assert.True(t, len(clause.Rules) > 0 || clause.Why != "" || clause.Left == verdict.LeftEmpty, "%s %s", c.Source.ID, clause.Clause)
		}
	}
	// Every document of the United States that binds, and the handbook: what is
	// listed can only grow.
	for _, id := range []string{"33-cfr-183", "46-cfr-28", "46-cfr-58", "46-cfr-111", "46-cfr-129", "46-cfr-143", "46-cfr-169", "46-cfr-182", "46-cfr-183", "ac-43-13-1b"} {
		assert.NotZero(t, listed[id], "the clauses of %s", id)
	}
}

// All of Subpart I that a record can decide is judged.
func TestNoClauseOfSubpartIIsLeftOpen(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	coverage, err := engine.Coverage()
	require.NoError(t, err)
	for _, clause := range coverage[0].Clauses {
		require.Equal(t, "33-cfr-183", coverage[0].Source.ID)
		assert.NotEqual(t, verdict.LeftOpen, clause.Left, clause.Clause)
	}
}

func TestClausesOfACitation(t *testing.T) {
	for cited, want := range map[string][]string{
		"":                nil,
		"183.415":         {"183.415"},
		"183.380(a), (c)": {"183.380(a)", "183.380(c)"},
		"608(1), 731(1)":  {"608(1)", "731(1)"},
	} {
		assert.Equal(t, want, rules.Clauses(cited), cited)
	}
}
