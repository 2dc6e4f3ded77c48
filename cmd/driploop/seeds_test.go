package main

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/verdict"
)

// seed is a defect put into a whole record.
type seed struct {
	record  string
	sets    string // practice sets that the record is judged by, if not its own
	changes []record.Change
	rules   []string // what it breaks, and nothing else
}

// readSeeds reads testdata/seeds.txt; its head says how it is written.
func readSeeds(t *testing.T) []seed {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(demos, "..", "seeds.txt"))
	require.NoError(t, err)
	var seeds []seed
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, " | ")
		require.Len(t, parts, 3, line)
		name, sets, _ := strings.Cut(parts[0], " by ")
		s := seed{record: name, sets: sets, rules: strings.Fields(parts[2])}
		for change := range strings.SplitSeq(parts[1], "; ") {
			path, value, ok := strings.Cut(change, " = ")
			require.True(t, ok, change)
			s.changes = append(s.changes, record.Change{Path: path, Value: value})
		}
		seeds = append(seeds, s)
	}
	return seeds
}

// Each seeded defect breaks the rules named beside it on the subjects where they
// were not broken before, and no other rule.
func TestSeededDefectsAreFound(t *testing.T) {
	engine := shippedRules(t)
	breaches := func(name string, text []byte) map[string]string {
		_, result := judged(t, engine, name, string(text))
		found := map[string]string{}
		for i := range result.Verdicts {
			if v := &result.Verdicts[i]; v.Outcome == verdict.Breach {
				found[v.Rule.ID+" at "+v.Subject] = v.Rule.ID
			}
		}
		return found
	}
	for _, s := range readSeeds(t) {
		t.Run(s.record+"/"+s.changes[0].Path, func(t *testing.T) {
			text := []byte(demo(t, s.record+".yaml"))
			var err error
			if s.sets != "" {
				text, err = record.Edit(s.record, text, record.Change{Path: "practice", Value: "[" + s.sets + "]"})
				require.NoError(t, err)
			}
			before := breaches(s.record, text)
			changed, err := record.Edit(s.record, text, s.changes...)
			require.NoError(t, err)
			added := map[string]bool{}
			for at, rule := range breaches(s.record, changed) {
				if before[at] == "" {
					added[rule] = true
				}
			}
			assert.Equal(t, slices.Sorted(slices.Values(s.rules)), slices.Sorted(maps.Keys(added)))
		})
	}
}

// Every rule is broken by a seed or by a mark in a whole record.
func TestEveryRuleIsBrokenOnAWholeRecord(t *testing.T) {
	broken := map[string]bool{}
	for _, s := range readSeeds(t) {
		for _, id := range s.rules {
			broken[id] = true
		}
	}
	paths, err := filepath.Glob(filepath.Join(demos, "*", "*.yaml"))
	require.NoError(t, err)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, m := range marked(string(text), wanted) {
			_, id, _ := strings.Cut(m, ": ")
			broken[id] = true
		}
	}
	for _, r := range shippedRules(t).Rules() {
		assert.True(t, broken[r.ID], "%s is broken nowhere", r.ID)
	}
}
