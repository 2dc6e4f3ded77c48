package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports/internal/sample"
)

func TestTheHeadlineSaysHowBadItIsAndHowFarThatGoes(t *testing.T) {
	h := sample.Survey(t, quantity.Both).Verdict
	assert.Equal(t, "1 fault found: 1 danger. 1 verdict could not be decided for want of something in the record.", h.Says)
	assert.Equal(t, "danger", h.Mark)
}

func TestAFindingHoldsPlaceFiguresWorkingSourceAndRemedy(t *testing.T) {
	s := sample.Survey(t, quantity.Metric)
	require.Len(t, s.Findings, 1)
	g := s.Findings[0]
	require.Len(t, g.Findings, 1)
	f := g.Findings[0]
	assert.Equal(t, "yard/pump.yaml:12:3", f.Place)
	require.NotNil(t, f.Excerpt)
	assert.Equal(t, "P1", f.Excerpt.Value)
	assert.Equal(t, "Move the fuse to within 1.83\u00a0m of the battery; isolate the source before work.", g.Remedy)
	require.Len(t, g.Sources, 1)
	assert.Contains(t, g.Sources[0].Document, "Law that binds this vessel")
	assert.Equal(t, []string{"183.460(a): a fuse within 72 in"}, g.Sources[0].Clauses)
	assert.Equal(t, "draw-conductors.P1", f.Drawn)
	assert.Equal(t, "conductors.P1", f.Part)
	require.Len(t, f.Bars, 1)
	b := f.Bars[0]
	assert.True(t, b.AtMost)
	assert.Equal(t, "116% of the limit", b.Times)
	assert.Greater(t, b.Fill, b.Mark, "the figure passes the mark of its limit")
	require.NotEmpty(t, f.Working, "the unprotected length has its working")
	assert.Equal(t, "unprotected length from house.pos", f.Working[0].Name)
	assert.NotEmpty(t, f.Working[0].Steps)
}

func TestAWaivedFindingSaysWhoAndWhy(t *testing.T) {
	s := sample.Survey(t, quantity.Both)
	require.Len(t, s.Waived, 1)
	require.Len(t, s.Waived[0].Findings[0].Remarks, 1)
	assert.Equal(t, "by foreman until 2027-01-01: moulded liner, photographed", s.Waived[0].Findings[0].Remarks[0].Text)
}

func TestQuestionsSayWhatBelongsThere(t *testing.T) {
	q := sample.Survey(t, quantity.Both).Questions
	assert.Equal(t, 2, q.Number)
	asked := map[string]string{}
	for _, one := range q.Entries {
		for _, a := range one.Asks {
			asked[a.Entry] = a.Says + " " + a.Such
		}
	}
	assert.Contains(t, asked["conductors.*.length"], "Length from terminal to terminal. such as ")
	require.Len(t, q.Reasons, 1)
	assert.Equal(t, []string{"the table ends at 50 V"}, q.Reasons[0].Whys)
}

func TestCoverageCountsSubjectsAndNamesRulesThatFoundNone(t *testing.T) {
	c := sample.Survey(t, quantity.Both).Coverage
	assert.Equal(t, []string{"sources/battery-unvented"}, c.Silent)
	judged := map[string]int{}
	for _, topic := range c.Topics {
		for _, r := range topic.Rules {
			judged[r.ID] = r.Judged
		}
	}
	assert.Equal(t, map[string]int{"protection/device-too-far": 1, "routing/support-too-far": 2, "conductors/drop-excessive": 1}, judged)
	assert.NotEmpty(t, c.Limits)
	require.NotEmpty(t, c.Documents)
	assert.Equal(t, "1 read", c.Documents[0].Trust)
}

func TestCountsAddUp(t *testing.T) {
	total := 0
	for _, c := range sample.Survey(t, quantity.Both).Counts {
		total += c.Number
		if c.Outcome == verdict.NotApplicable {
			assert.Equal(t, "not applicable", c.Word)
		}
	}
	assert.Equal(t, 5, total)
}
