package plainyaml

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// records are all YAML files of the project that are written by hand.
func records(t testing.TB) map[string][]byte {
	t.Helper()
	const root = "../../../.."
	all := map[string][]byte{}
	for _, dir := range []string{"testdata", "rules", "model"} {
		require.NoError(t, filepath.WalkDir(filepath.Join(root, dir), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".yaml") && !strings.HasSuffix(path, ".yml") {
				return err
			}
			text, err := os.ReadFile(path)
			name, _ := filepath.Rel(root, path)
			all[filepath.ToSlash(name)] = text
			return err
		}))
	}
	require.Greater(t, len(all), 150)
	return all
}

// handedOn are the files that are no records, or records meant to be odd.
var handedOn = map[string]bool{"rules/practice.yaml": true, "testdata/records/hostile/texts.yaml": true}

// Not one demo, corpus record or example may be handed on: that would be a
// slow-down which nobody sees.
func TestEveryRecordIsTaken(t *testing.T) {
	for name, text := range records(t) {
		for i, part := range bytes.Split(text, []byte("\n---\n")) { // as the examples of the rules are read
			if taken := isTaken(part); taken == handedOn[name] {
				t.Errorf("%s, document %d: taken is %t", name, i, taken)
			}
		}
	}
}

func TestRecordsReadLikeYAML(t *testing.T) {
	for name, text := range records(t) {
		for _, part := range bytes.Split(text, []byte("\n---\n")) {
			if says := differs(part); says != "" {
				t.Errorf("%s: %s", name, says)
			}
		}
	}
}
