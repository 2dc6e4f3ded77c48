package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

const demos = "../../testdata/records"

// judged judges the text of a record by the shipped rules.
func judged(t *testing.T, engine *rules.Engine, name, text string) (*record.Record, verdict.Record) {
	t.Helper()
	one, faults := solve(name, []byte(text))
	require.Empty(t, faults, "the record is valid")
	verdicts, err := engine.Judge(one.record, one.facts(), time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	return one.record, verdicts
}

func demo(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(demos, path))
	require.NoError(t, err)
	return string(text)
}

func shippedRules(t *testing.T) *rules.Engine {
	t.Helper()
	engine, err := rules.New()
	require.NoError(t, err)
	return engine
}

// of returns the verdicts with an outcome, one line each, for a person who has
// to find them.
func of(outcome verdict.Outcome, verdicts []verdict.Verdict) []string {
	var lines []string
	for i := range verdicts {
		if v := &verdicts[i]; v.Outcome == outcome {
			line := fmt.Sprintf("%d: %s at %s", v.At.Start.Line, v.Rule.ID, v.Subject)
			for _, gap := range v.Missing {
				line += "; " + gap.String()
			}
			lines = append(lines, line)
		}
	}
	return lines
}

func TestCleanRecordsAreMetThroughout(t *testing.T) {
	engine := shippedRules(t)
	paths, err := filepath.Glob(filepath.Join(demos, "clean", "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			r, result := judged(t, engine, path, demo(t, "clean/"+filepath.Base(path)))
			assert.Empty(t, of(verdict.Breach, result.Verdicts))
			assert.Empty(t, of(verdict.Undecided, result.Verdicts))
			assert.Zero(t, result.Counts[verdict.Waived])
			assert.Greater(t, result.Counts[verdict.Met], len(r.Conductors), "more is judged than one rule a conductor")
		})
	}
}

func TestCleanLaunchIsAWholeJob(t *testing.T) {
	r, result := judged(t, shippedRules(t), "launch", demo(t, "clean/thruster-launch.yaml"))
	assert.GreaterOrEqual(t, len(r.Conductors), 20)
	assert.GreaterOrEqual(t, len(r.Components), 8)
	assert.GreaterOrEqual(t, len(r.Penetrations), 4)
	for _, kind := range []string{"protection", "conductors", "routing", "terminations", "sources", "penetrations", "equipment", "documents", "measurements", "grounding"} {
		met := slices.ContainsFunc(result.Verdicts, func(v verdict.Verdict) bool {
			return v.Outcome == verdict.Met && strings.HasPrefix(v.Rule.ID, kind+"/")
		})
		assert.True(t, met, "a rule of %s is met", kind)
	}
}

// want finds the faults that a line of a record is marked with.
var want = regexp.MustCompile(`# want ([a-z0-9-]+/[a-z0-9-]+(?:, [a-z0-9-]+/[a-z0-9-]+)*)$`)

// marks returns the faults that a record is marked with, as "line: rule".
func marks(text string) []string {
	var found []string
	for i, line := range strings.Split(text, "\n") {
		if m := want.FindStringSubmatch(line); m != nil {
			for _, id := range strings.Split(m[1], ", ") {
				found = append(found, fmt.Sprintf("%d: %s", i+1, id))
			}
		}
	}
	return found
}

func TestFaultyRecordsBreachWhatIsMarkedAndNothingElse(t *testing.T) {
	engine := shippedRules(t)
	paths, err := filepath.Glob(filepath.Join(demos, "faulty", "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			text := demo(t, "faulty/"+filepath.Base(path))
			_, result := judged(t, engine, path, text)
			found := map[string]string{}
			for i := range result.Verdicts {
				if v := &result.Verdicts[i]; v.Outcome == verdict.Breach {
					found[fmt.Sprintf("%d: %s", v.At.Start.Line, v.Rule.ID)] = v.Subject
				}
			}
			marked := marks(text)
			assert.Equal(t, strings.Count(text, "# want "), len(slices.Compact(lines(marked))), "every mark ends its line and names rules")
			for _, m := range marked {
				assert.Contains(t, found, m, "marked, but not found")
			}
			for _, f := range slices.Sorted(maps.Keys(found)) {
				assert.Contains(t, marked, f, "found at %s, but not marked", found[f])
			}
		})
	}
}

// lines returns the line number of each mark.
func lines(marked []string) []string {
	numbers := make([]string, len(marked))
	for i, m := range marked {
		numbers[i], _, _ = strings.Cut(m, ":")
	}
	return numbers
}

func TestFaultyLaunchHasTwentyFaultsOfDifferentKinds(t *testing.T) {
	kinds := map[string]bool{}
	for _, m := range marks(demo(t, "faulty/thruster-launch.yaml")) {
		_, id, _ := strings.Cut(m, ": ")
		kinds[id] = true
	}
	assert.GreaterOrEqual(t, len(kinds), 20)
}
