package verdict_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/verdict"
)

func TestCountByRule(t *testing.T) {
	a, b, c := &verdict.Rule{ID: "a/a"}, &verdict.Rule{ID: "b/b"}, &verdict.Rule{ID: "c/c"}
	got := verdict.CountByRule([]*verdict.Rule{a, b}, []verdict.Verdict{
		{Rule: b, Outcome: verdict.Met}, {Rule: b, Outcome: verdict.Met}, {Rule: b, Outcome: verdict.Breach}, {Rule: c, Outcome: verdict.Waived},
	})
	assert.Equal(t, []verdict.RuleCount{
		{a, verdict.Counts{}},
		{b, verdict.Counts{verdict.Met: 2, verdict.Breach: 1}},
		{c, verdict.Counts{verdict.Waived: 1}},
	}, got)
	assert.Equal(t, []int{0, 3, 1}, []int{got[0].Counts.Total(), got[1].Counts.Total(), got[2].Counts.Total()})
}
