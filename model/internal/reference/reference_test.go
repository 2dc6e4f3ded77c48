package reference

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every file of reference values says what it is, where from, how far trusted
// and how close a result has to come.
func TestEveryFileNamesItsOrigin(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(root(), "testdata", "reference", "*.csv"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, head := range []string{"# Source: ", "# Trust: ", "Tolerance: ", "# Columns: "} {
			assert.True(t, strings.Contains(string(text), head), "%s lacks %q", filepath.Base(file), head)
		}
	}
}
