package main

import (
	"bytes"
	"encoding/json"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryRuleSaysWhatItLookedAt adds up, rule by rule, to the counts of the
// record.
func TestEveryRuleSaysWhatItLookedAt(t *testing.T) {
	var out bytes.Buffer
	code := run([]string{"check", "--all", "--no-cache", "--format", "json", "../../testdata/records/faulty/readme.yaml"}, nil, &out, io.Discard)
	require.Equal(t, exitBreach, code)
	var got struct {
		Records []struct {
			Counts map[string]int
			Rules  []struct {
				Rule     string
				Subjects int
				Counts   map[string]int
			}
		}
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &got))
	e, err := compiled()()
	require.NoError(t, err)
	rec := got.Records[0]
	seen, sums := map[string]bool{}, map[string]int{}
	for _, r := range rec.Rules {
		seen[r.Rule] = true
		total := 0
		for outcome, n := range r.Counts {
			sums[outcome] += n
			total += n
		}
		assert.Equal(t, total, r.Subjects, r.Rule)
	}
	assert.Equal(t, rec.Counts, sums)
	for _, r := range e.Rules() {
		assert.True(t, seen[r.ID], r.ID)
	}
}
