package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestAReportListsTheRecordsOfAllParts: the page of the parts has the lines, marks
// and counts of the index of the same folder judged whole.
func TestAReportListsTheRecordsOfAllParts(t *testing.T) {
	folder := yardOf(t, 7)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "clean.yaml"), []byte(demo(t, "clean/windlass.yaml")), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "broken.yaml"), []byte("driploop: 1\njobb: 3\n"), 0o600))
	files := partsOf(t, folder, 3)
	page := filepath.Join(t.TempDir(), "index.html")
	_, errs, code := command(append([]string{"report", "--join", "-o", page}, files...)...)
	assert.Empty(t, errs)
	assert.Equal(t, exitUnusable, code, "one file is no record")
	joined, err := os.ReadFile(page)
	require.NoError(t, err)
	into := t.TempDir()
	_, _, code = command("report", "--config", "none", folder, "-o", into+"/")
	assert.Equal(t, exitUnusable, code)
	whole, err := os.ReadFile(filepath.Join(into, "index.html"))
	require.NoError(t, err)
	rows := strings.Count(string(whole), "<tr><td>")
	assert.Equal(t, 8, rows)
	assert.Equal(t, rows, strings.Count(string(joined), "<tr><td>"))
	assert.Contains(t, string(joined), "broken.yaml")
	for _, mark := range []string{"danger", "warning", "caution", "notice", "open", "clear"} {
		word := `class="word ` + mark + `"`
		assert.Equal(t, strings.Count(string(whole), word), strings.Count(string(joined), word), mark)
	}

	_, errs, code = command(append([]string{"report", "--join"}, files[1:]...)...)
	assert.Equal(t, exitUnusable, code)
	assert.Contains(t, errs, "part 1/3 is missing")
	_, errs, _ = command(append([]string{"report", "--join", "--units", "us"}, files...)...)
	assert.Contains(t, errs, "--units does not go with --join")
}
