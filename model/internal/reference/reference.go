// Package reference reads the expected values of tests: files under
// testdata/reference that each name their source and how far to trust it.
package reference

import (
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Row is one line of a file, by the name of its column.
type Row struct {
	t     *testing.T
	cells map[string]string
}

// Text returns a cell.
func (r Row) Text(column string) string {
	r.t.Helper()
	text, ok := r.cells[column]
	require.True(r.t, ok, "no column %s", column)
	return text
}

// Float returns a cell as a number; the test ends if it is none.
func (r Row) Float(column string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.Text(column), 64)
	require.NoError(r.t, err)
	return v
}

// Load returns the rows of testdata/reference/name. The test ends if the file
// does not say in its first lines where its values come from and how far they
// are trusted.
func Load(t *testing.T, name string) []Row {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root(), "testdata", "reference", name))
	require.NoError(t, err)
	require.Contains(t, string(text), "# Source: ")
	require.Contains(t, string(text), "# Trust: ")
	reader := csv.NewReader(strings.NewReader(string(text)))
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	require.NoError(t, err, name)
	require.Greater(t, len(lines), 1, "%s has no rows", name)
	var rows []Row
	for _, line := range lines[1:] {
		row := Row{t: t, cells: map[string]string{}}
		for i, head := range lines[0] {
			row.cells[head] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// root returns the top of the module, two folders above this file's own.
func root() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..", "..")
}

// Program returns the path of an outside program. Without it the test is
// skipped, but fails where CI=true, so that no build goes green unchecked.
func Program(t *testing.T, name, install string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI") == "true" {
		require.Fail(t, "missing program", "%s is needed: %s", name, install)
	}
	if err != nil {
		t.Skipf("%s is not installed: %s", name, install)
	}
	return path
}
