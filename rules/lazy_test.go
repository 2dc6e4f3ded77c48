package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/record"
)

// TestShippedRulesPassEveryCheck reads and compiles all rules as strictly as those
// of any folder: the program itself reads a rule only when it is called for.
func TestShippedRulesPassEveryCheck(t *testing.T) {
	engine, err := newEngine(shipped)
	require.NoError(t, err)
	assert.NotEmpty(t, engine.rules)
}

func TestRegoIsReadWhenItIsCalledFor(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	read := func() (topics map[string]int) {
		topics = map[string]int{}
		for _, r := range engine.rules {
			if r.isRead.Load() {
				topics[r.of.name]++
			}
		}
		return topics
	}
	assert.Empty(t, read(), "nothing is judged yet")

	doc := devices(map[string]*facts.Device{"fuse": {}}, ptr(true), "us-federal")
	_, err = engine.Judge(&record.Record{}, doc, testDay)
	require.NoError(t, err)
	topics := read()
	assert.NotZero(t, topics["devices"])
	assert.Zero(t, topics["conductors"], "there are none")
	for _, r := range engine.rules {
		if r.isRead.Load() {
			assert.NotZero(t, r.bit("us-federal"), "%s is not in force", r.meta.ID)
		}
	}
}

// TestFaultyRegoIsNoSilentPass judges by a rule whose metadata is sound and whose
// Rego is not, as if it had been shipped unchecked.
func TestFaultyRegoIsNoSilentPass(t *testing.T) {
	for name, text := range map[string]string{
		"does not parse": spoil(t, "rating_a > 100", "rating_a >"),
		"is not safe":    spoil(t, "rating_a > 100", "nominal_v > 100"),
	} {
		t.Run(name, func(t *testing.T) {
			files := folder(t, map[string]string{soundFile: text})
			engine, faults, err := open(files, nil)
			require.NoError(t, err)
			require.Empty(t, faults, "the metadata is sound")
			for range 2 {
				_, err = engine.Judge(&record.Record{}, breached(), testDay)
				require.ErrorContains(t, err, soundFile)
			}
			_, err = newEngine(files)
			require.ErrorContains(t, err, soundFile)
		})
	}
}

func TestFaultyLawIsNoSilentPass(t *testing.T) {
	engine, faults, err := open(folder(t, map[string]string{bindingFile: "package driploop.binding\n\nbinds["}), nil)
	require.NoError(t, err)
	require.Empty(t, faults)
	_, err = engine.Judge(&record.Record{}, breached(), testDay)
	require.ErrorContains(t, err, bindingFile)
}
