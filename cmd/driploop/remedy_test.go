package main

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
)

func remedies(t *testing.T, name string, text []byte) *remedy.Plan {
	plan, err := remedy.Find(name, text, judgeAs(name))
	require.NoError(t, err)
	return plan
}

func breaches(r *verdict.Record) map[string]bool {
	all := map[string]bool{}
	for i := range r.Verdicts {
		if v := &r.Verdicts[i]; v.Outcome == verdict.Breach {
			all[v.Rule.ID+" "+v.Subject+" "+v.ID] = true
		}
	}
	return all
}

// TestRemediesOfEveryExample takes the breach of every rule's example: what is
// made clears what it says and brings nothing new, and changes no entry but
// those it names.
func TestRemediesOfEveryExample(t *testing.T) {
	e, err := compiled()()
	require.NoError(t, err)
	made, proposed := 0, 0
	for _, r := range e.Rules() {
		example, err := e.Example(r.ID)
		require.NoError(t, err)
		text := []byte(example.Breach.Text)
		plan := remedies(t, "example.yaml", text)
		before, after := breaches(plan.Before), breaches(plan.After)
		require.NotEmpty(t, before, r.ID)
		changed := map[string]bool{}
		for _, item := range plan.Made {
			made++
			v := item.Breach
			assert.False(t, after[v.Rule.ID+" "+v.Subject+" "+v.ID], "%s: not cleared by what was made", r.ID)
			for _, c := range item.Cure.Changes {
				changed[c.Path] = true
			}
		}
		for _, item := range plan.Tasks {
			if item.Cure != nil {
				proposed++
			}
		}
		for v := range after {
			assert.True(t, before[v], "%s: brings %s", r.ID, v)
		}
		assert.Len(t, plan.Tasks, len(after), "%s: every breach that is left is a task", r.ID)
		was, err := record.Leaves("a", text)
		require.NoError(t, err)
		is, err := record.Leaves("b", plan.Text)
		require.NoError(t, err)
		for path, value := range is {
			assert.True(t, was[path] == value || changed[path], "%s: %s changed", r.ID, path)
		}
	}
	assert.Greater(t, made, 10, "breaches that the record alone clears")
	assert.Greater(t, proposed, 40, "breaches that one entry clears once the work is done")
	t.Logf("made %d, proposed %d", made, proposed)
}

func TestASignedRecordIsLeftAsItIs(t *testing.T) {
	text, err := os.ReadFile("../../testdata/records/faulty/readme.yaml")
	require.NoError(t, err)
	plan := remedies(t, "readme.yaml", text)
	require.NotEmpty(t, plan.Made)
	require.NotEqual(t, string(text), string(plan.Text))

	signed := append(text, "sign_off: {by: bench-2, on: 2026-05-07}\n"...)
	plan = remedies(t, "readme.yaml", signed)
	assert.Empty(t, plan.Made)
	assert.Equal(t, string(signed), string(plan.Text))
	require.NotEmpty(t, plan.Tasks)
	assert.NotNil(t, plan.Tasks[0].Cure, "it is still said what would clear it")
}

// TestMeasuredEntriesAreNotTouched: a larger conductor needs its crimps made and
// pulled anew, so that the change is work, not a matter of the record.
func TestMeasuredEntriesAreNotTouched(t *testing.T) {
	text, err := os.ReadFile("../../testdata/records/faulty/readme.yaml")
	require.NoError(t, err)
	text, err = record.Edit("x", text,
		record.Change{Path: "components.washdown.current", Value: "95 A"}, // no smaller fuse will do
		record.Change{Path: "conductors.P1.ends.from.crimp.pull", Value: "900 N"})
	require.NoError(t, err)
	plan := remedies(t, "x", text)
	var anew []string
	for _, item := range append(plan.Made, plan.Tasks...) {
		if item.Cure == nil {
			continue
		}
		for _, cure := range append(item.Others, *item.Cure) {
			for _, c := range cure.Changes {
				if c.Path == "conductors.P1.size" {
					assert.True(t, cure.Work, "%s", item.Breach.Rule.ID)
					anew = append(anew, cure.Again...)
				}
			}
		}
	}
	assert.Contains(t, anew, "conductors.P1.ends.from.crimp.pull")
	is, err := record.Leaves("x", plan.Text)
	require.NoError(t, err)
	assert.Equal(t, "str 900 N", is["conductors.P1.ends.from.crimp.pull"])
	assert.Equal(t, "str 10 AWG", is["conductors.P1.size"])
}
