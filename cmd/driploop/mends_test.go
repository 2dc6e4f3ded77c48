package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
	"driploop/model/yard"
)

func judgeAs(name string) remedy.Judge {
	s := &session{out: &output{w: io.Discard}, engine: compiled()}
	j, err := s.judgingBy(&yard.Settings{}, time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC))
	return func(text []byte) (*remedy.Judged, error) {
		if err != nil {
			return nil, err
		}
		return j.text(name, text)
	}
}

// TestEveryMendMends: a rule that says how a breach is mended is mended so in its
// own example, proven by judging again.
func TestEveryMendMends(t *testing.T) {
	open := map[string]string{
		"protection/device-too-far":    "the example does not say whether the conductor is enclosed, without which no length is proven",
		"protection/stall-not-cleared": "the example does not say how long the motor stands",
	}
	e, err := compiled()()
	require.NoError(t, err)
	judge := judgeAs("example.yaml")
	for _, r := range e.Rules() {
		if len(r.Mends) == 0 || open[r.ID] != "" {
			continue
		}
		example, err := e.Example(r.ID)
		require.NoError(t, err)
		text := []byte(example.Breach.Text)
		judged, err := judge(text)
		require.NoError(t, err)
		cures := 0
		for i := range judged.Verdicts.Verdicts {
			if v := &judged.Verdicts.Verdicts[i]; v.Rule.ID == r.ID && v.Outcome == verdict.Breach {
				found, err := remedy.Of("example.yaml", text, judge, v)
				require.NoError(t, err)
				cures += len(found)
			}
		}
		assert.NotZero(t, cures, "%s: mends %q, and none clears its example", r.ID, r.Mends)
	}
}

// TestRemediesUntilOnlyTasksAreLeft writes remedies into every faulty record until
// none is left to write: no breach comes that was not there, nothing that was met
// becomes undecided, no other entry changes, and what is left is a task.
func TestRemediesUntilOnlyTasksAreLeft(t *testing.T) {
	for _, path := range faultyRecords(t) {
		t.Run(filepath.Base(path), func(t *testing.T) {
			t.Parallel()
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			judge := judgeAs(path)
			first, err := judge(text)
			require.NoError(t, err)
			if first.Record.SignOff.By.Is() { // a signed record is never written
				text, err = record.Edit(path, text, record.Change{Path: "sign_off.by", Value: "unknown"})
				require.NoError(t, err)
			}
			const rounds = 3 // the second has nothing to write
			for round := range rounds {
				plan, err := remedy.Find(path, text, judge)
				require.NoError(t, err)
				left := breaches(plan.After)
				assert.Subset(t, keysOf(breaches(plan.Before)), keysOf(left), "a breach came")
				assert.Len(t, plan.Tasks, len(left), "a breach is left that no task names")
				was := outcomes(plan.Before)
				for key, now := range outcomes(plan.After) {
					assert.False(t, now == verdict.Undecided && was[key] == verdict.Met, "%s became undecided", key)
				}
				onlyChanged(t, text, plan)
				if len(plan.Made) == 0 {
					assert.Equal(t, string(text), string(plan.Text))
					t.Logf("%d breaches, %d tasks after %d rounds", len(breaches(plan.Before)), len(plan.Tasks), round)
					return
				}
				text = plan.Text
			}
			assert.Fail(t, "remedies have no end")
		})
	}
}

// faultyRecords are the faulty demo records and the jobs of the corpus that break
// a rule.
func faultyRecords(t *testing.T) []string {
	var all []string
	for _, pattern := range []string{"faulty/*.yaml", "corpus/*.yaml"} {
		paths, err := filepath.Glob("../../testdata/records/" + pattern)
		require.NoError(t, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			if strings.HasPrefix(pattern, "faulty") || strings.Contains(string(text), "# want ") {
				all = append(all, path)
			}
		}
	}
	require.Greater(t, len(all), 10)
	return all
}

// onlyChanged demands that lines which hold no changed entry are the same bytes.
func onlyChanged(t *testing.T, before []byte, plan *remedy.Plan) {
	changed := map[string]bool{}
	for _, item := range plan.Made {
		for _, c := range item.Cure.Changes {
			changed[c.Path] = true
		}
	}
	was, err := record.Leaves("before", before)
	require.NoError(t, err)
	is, err := record.Leaves("after", plan.Text)
	require.NoError(t, err)
	for path, value := range is {
		assert.True(t, was[path] == value || changed[path], "%s changed", path)
	}
	old, now := strings.Split(string(before), "\n"), strings.Split(string(plan.Text), "\n")
	if len(old) != len(now) {
		return // an entry was added on a line of its own
	}
	differ := 0
	for i := range old {
		if old[i] != now[i] {
			differ++
		}
	}
	assert.LessOrEqual(t, differ, len(changed), "more lines than changes")
}

func outcomes(r *verdict.Record) map[string]verdict.Outcome {
	all := map[string]verdict.Outcome{}
	for i := range r.Verdicts {
		v := &r.Verdicts[i]
		all[v.Rule.ID+" "+v.Subject+" "+v.ID] = v.Outcome
	}
	return all
}

func keysOf(set map[string]bool) []string {
	keys := make([]string, 0, len(set))
	for k := range set {
		keys = append(keys, k)
	}
	return keys
}
