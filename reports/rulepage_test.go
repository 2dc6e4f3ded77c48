package reports_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
)

// rulePage is of an invented rule.
func rulePage() *reports.RulePage {
	rule := *tooFar
	rule.Applies, rule.Since = "every way from a source to its first fuse or breaker", "0.1.0"
	rule.Says = "{unprotected} without a device"
	rule.Remedy = "Move the device to within {limit.unprotected} of {from}."
	rule.Needs, rule.Asks, rule.Related = []string{"length_mm"}, []string{"enclosed"}, []string{"protection/unprotected"}
	rule.Sources = []verdict.Citation{
		{Set: "us-federal", Source: "33-cfr-183", Clause: "183.455(b)(1)", Asks: "a device within 7 in of the source", Trust: verdict.Read},
		{Set: "us-voluntary", Source: "reported", Asks: "the same, farther where enclosed", Trust: verdict.Secondary},
		{Set: "workmanship", Source: "practice", Asks: "as near as can be", Trust: verdict.NoSource},
	}
	inches := func(v float64) []verdict.Figure {
		return []verdict.Figure{{Name: "unprotected", Quantity: quantity.New(v, "in")}}
	}
	return &reports.RulePage{
		Rule: &rule,
		Sources: []*verdict.Source{
			{ID: "33-cfr-183", Title: "33 CFR part 183, subpart I", Edition: "2025", Issuer: "US Coast Guard", Force: verdict.Law, Scope: "boats with a petrol engine"},
			{ID: "reported", Title: "Small-craft practice", Force: verdict.Standard},
			{ID: "practice", Title: "Common practice of the trade", Force: verdict.Practice},
		},
		Related: []*verdict.Rule{overloaded},
		Limits: []reports.RuleLimit{
			{Set: "us-federal", Clause: "183.455(b)(1)", Figures: inches(7)},
			{Set: "us-federal", Clause: "183.455(b)(1)", When: "in a sheath or enclosure", Figures: inches(40)},
			{Set: "us-voluntary", When: "from a battery, enclosed", Figures: inches(72)},
		},
		Needs: []reports.RuleNeed{
			{Fact: "length_mm", Entries: []string{"conductors.*.length"}},
			{Fact: "enclosed", When: "where the case calls for it", Entries: []string{"conductors.*.route", "conductors.*.route[*].in"}},
			{Fact: "vessel.hull"},
		},
		Entries: []reports.RuleEntry{
			{Path: "conductors.*.length", Says: "Length.", Example: "2.4 m"},
			{Path: "conductors.*.route[*].in", Says: "What it runs in.", When: "only where the case calls for it"},
		},
		Breach: reports.RuleExample{Says: "The fuse sits 2.4 m away.", Text: "# The fuse sits 2.4 m away.\ndriploop: 1\n"},
		Cure:   reports.RuleExample{Says: "The fuse sits on the post.", Text: "# The fuse sits on the post.\ndriploop: 1\n"},
		Open:   reports.RuleExample{Says: "Nobody measured it.", Text: "# Nobody measured it.\ndriploop: 1\n"},
	}
}

func TestRulePageGolden(t *testing.T) {
	var text, md, tree, list bytes.Buffer
	require.NoError(t, reports.RuleText(&text, rulePage(), reports.Options{}))
	golden(t, "rule", "too-far.txt", text.Bytes())
	require.NoError(t, reports.RuleMarkdown(&md, rulePage(), reports.Options{}))
	golden(t, "rule", "too-far.md", md.Bytes())
	require.NoError(t, reports.RulesJSON(&tree, []*reports.RulePage{rulePage()}, reports.Options{}))
	golden(t, "rule", "too-far.json", tree.Bytes())
	require.NoError(t, reports.RuleList(&list, []*verdict.Rule{overloaded, drop, unlabelled, raw, tooFar}, reports.Options{}))
	golden(t, "rule", "list.txt", list.Bytes())
}

func TestRulePageTellsLawFromWhatIsReported(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, reports.RuleText(&b, rulePage(), reports.Options{Units: quantity.US}))
	text := strings.Join(strings.Fields(b.String()), " ")
	for _, part := range []string{
		"Law, US Coast Guard; binds boats with a petrol engine 183.455(b)(1): a device within 7 in of the source (clause read) [us-federal]",
		"Standard the same, farther where enclosed (as reported; the document itself was not seen) [us-voluntary]",
		"Practice as near as can be (common practice, no source) [workmanship]", "us-federal 183.455(b)(1) in a sheath or enclosure unprotected at most 40 in",
	} {
		assert.Contains(t, text, part)
	}
}

func TestRulesJSONNamesEachSourceOnce(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, reports.RulesJSON(&b, []*reports.RulePage{rulePage(), rulePage()}, reports.Options{}))
	var tree struct {
		Format  string
		Rules   []struct{ ID, Severity string }
		Sources []struct{ ID string }
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &tree))
	assert.Equal(t, "driploop.rules/1", tree.Format)
	require.Len(t, tree.Rules, 2)
	assert.Equal(t, "danger", tree.Rules[0].Severity)
	assert.Len(t, tree.Sources, 3)
}
