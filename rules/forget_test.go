package rules

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// Verdicts stand when the facts that they came from are gone and those of the next
// record lie in their place.
func TestVerdictsOutliveTheFacts(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	var b facts.Builder
	all := demos(t)
	var before func()
	for _, name := range slices.Sorted(maps.Keys(all)) {
		r, faults := record.Decode(name, []byte(all[name]))
		require.Empty(t, faults)
		judged, err := engine.Judge(r, b.Build(r, circuit.Analyse(r)), exampleDay())
		require.NoError(t, err)
		if before != nil {
			before()
		}
		want, err := json.Marshal(judged)
		require.NoError(t, err)
		before = func() {
			got, err := json.Marshal(judged)
			require.NoError(t, err)
			assert.Equal(t, string(want), string(got), name)
		}
		b.Forget()
		before()
	}
	before()
}
