package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/rules"
)

// The pages in testdata/reports/coverage are what the program says of each
// document that is listed clause by clause.
func TestCoveragePages(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	coverage, err := engine.Coverage()
	require.NoError(t, err)
	require.NotEmpty(t, coverage)
	folder := filepath.Join("..", "..", "testdata", "reports", "coverage")
	var kept []string
	for _, c := range coverage {
		var out, errs bytes.Buffer
		require.Zero(t, run([]string{"cite", "--source", "--format", "md", c.Source.ID}, nil, &out, &errs), errs.String())
		page := filepath.Join(folder, c.Source.ID+".md")
		kept = append(kept, page)
		if *update {
			require.NoError(t, os.MkdirAll(folder, 0o755))
			require.NoError(t, os.WriteFile(page, out.Bytes(), 0o644))
		}
		want, err := os.ReadFile(page)
		require.NoError(t, err)
		assert.Equal(t, string(want), out.String(), "%s is stale: go test ./cmd/driploop -run TestCoveragePages -update", page)
	}
	found, err := filepath.Glob(filepath.Join(folder, "*"))
	require.NoError(t, err)
	assert.ElementsMatch(t, kept, found, "a page of a document that is not listed")
}
