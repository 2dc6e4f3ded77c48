package facts_test

import (
	"encoding/json"
	"maps"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// Records of different sizes, one after the other and back again in the same
// memory, by several builders at a time: nothing of one is found in another.
func TestBuilderKeepsNothingOfOneRecordForTheNext(t *testing.T) {
	records, want := solvedRecords(t)
	paths := slices.Sorted(maps.Keys(records))
	var running sync.WaitGroup
	for range 3 {
		running.Go(func() {
			var b facts.Builder
			for _, path := range slices.Concat(paths, paths[:len(paths)/2]) {
				one := records[path]
				assert.Equal(t, want[path], written(t, b.Build(one.record, one.analysis)), path)
			}
		})
	}
	running.Wait()
}

func TestBuilderForgets(t *testing.T) {
	records, _ := solvedRecords(t)
	var b facts.Builder
	for path, one := range records {
		doc := b.Build(one.record, one.analysis)
		b.Forget()
		assert.Nil(t, doc.Vessel, path)
		assert.Empty(t, doc.Conductors, path)
		assert.Empty(t, doc.Components, path)
	}
}

type solvedRecord struct {
	record   *record.Record
	analysis *circuit.Analysis
}

// solvedRecords returns the demo records with the facts of each as JSON, built by
// itself.
func solvedRecords(t *testing.T) (map[string]solvedRecord, map[string]string) {
	t.Helper()
	all, alone := map[string]solvedRecord{}, map[string]string{}
	for path, source := range demoRecords(t) {
		r, faults := record.Decode(path, source)
		require.Empty(t, faults, path)
		all[path] = solvedRecord{r, circuit.Analyse(r)}
		alone[path] = written(t, facts.Build(r, circuit.Analyse(r)))
	}
	return all, alone
}

func written(t *testing.T, doc *facts.Document) string {
	t.Helper()
	text, err := json.Marshal(doc)
	assert.NoError(t, err)
	return string(text)
}
