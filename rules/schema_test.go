package rules

import (
	"flag"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
)

var update = flag.Bool("update", false, "rewrite generated files")

func TestSchemaFileIsThatOfTheFacts(t *testing.T) {
	want, err := facts.Schema()
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.WriteFile("schema/facts.json", want, 0o644))
	}
	got, err := os.ReadFile("schema/facts.json")
	require.NoError(t, err)
	assert.True(t, string(want) == string(got), "the facts have changed; run: go test ./rules -run TestSchemaFile -update")
}
