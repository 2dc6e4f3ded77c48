package main

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBlankRecordHasAnExampleOfAllThatRulesJudge(t *testing.T) {
	blank, faults := solve("blank.yaml", blankRecord)
	require.Empty(t, faults)
	text, err := json.Marshal(blank.facts())
	require.NoError(t, err)
	var document map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(text, &document))
	engine, err := compiled()()
	require.NoError(t, err)
	for _, r := range engine.Rules() {
		var subjects map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(document[r.Subject], &subjects), r.ID)
		assert.NotEmpty(t, subjects, "%s judges %s", r.ID, r.Subject)
	}
}

func TestNeedsNameTheEntriesBehindAFact(t *testing.T) {
	engine, err := compiled()()
	require.NoError(t, err)
	entries := blankEntries()
	for id, want := range map[string]map[string][]string{
		"protection/device-voltage-low": {"rated_v": {"components.*.voltage"}, "nominal_v": nil},
		"protection/device-too-far":     {"length_mm": {"conductors.*.length"}},
		"conductors/overloaded":         {"current_a": {"components.*.current"}},
	} {
		rule, err := engine.Rule(id)
		require.NoError(t, err)
		got := map[string][]string{}
		for _, n := range needs(rule, entries) {
			got[n.Fact] = n.Entries
		}
		for fact, fields := range want {
			require.Contains(t, got, fact, id)
			if fields == nil {
				assert.Empty(t, got[fact])
			}
			assert.Subset(t, got[fact], fields, "%s %s", id, fact)
		}
	}
}

// The page of a rule tells of each entry what it is: the format knows them all.
func TestEveryEntryOfARulePageIsTold(t *testing.T) {
	engine, err := compiled()()
	require.NoError(t, err)
	open := blankEntries()
	for _, r := range engine.Rules() {
		assert.NotEmpty(t, r.Since, r.ID)
		for _, e := range entriesOf(needs(r, open)) {
			assert.NotEmpty(t, e.Says, "%s: %s", r.ID, e.Path)
		}
	}
}
