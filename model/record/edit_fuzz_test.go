package record

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// seedTexts adds the demo records to a fuzzer, and texts of odd layout.
func seedTexts(f *testing.F) {
	for _, odd := range []string{
		"a: {b: 1}\n", "a:\n- b\n- {c: 1}\n", "x: &x {b: [1, 2]}\na: {<<: *x}\n", "a: |\n  text\n  more\nb: 1\n", "a: \"x\n  y\"\n", "? a\n: b\n", "a: !!str 1\n",
		"a:\r\n  b: 1\r\n", "\ufeffa: é\n", "a: 'it''s' # c\n", "{a: 1,\n b: 2}\n",
	} {
		f.Add([]byte(odd))
	}
	files, err := filepath.Glob("../../testdata/records/*/readme.yaml")
	require.NoError(f, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(text)
	}
}

// FuzzShape: whatever the layout, no value changes, and twice is once.
func FuzzShape(f *testing.F) {
	seedTexts(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		once, err := Shape("x", text)
		if err != nil {
			return
		}
		before, err := Leaves("x", text)
		require.NoError(t, err)
		after, err := Leaves("x", once)
		require.NoError(t, err)
		require.Equal(t, before, after)
		twice, err := Shape("x", once)
		require.NoError(t, err, "%q", once)
		require.Equal(t, string(once), string(twice))
	})
}

// FuzzEdit: a change that is made changes its entry and no other.
func FuzzEdit(f *testing.F) {
	seedTexts(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		before, err := Leaves("x", text)
		if err != nil || len(before) == 0 || len(before) > 200 {
			return
		}
		paths := make([]string, 0, len(before))
		for path := range before {
			paths = append(paths, path)
		}
		slices.Sort(paths)
		for _, path := range paths[:min(len(paths), 8)] {
			got, err := Edit("x", text, Change{Path: path, Value: "changed"})
			if err != nil {
				continue
			}
			after, err := Leaves("x", got)
			require.NoError(t, err)
			require.Equal(t, "str changed", after[path], "%s in %q gives %q", path, text, got)
			for other, value := range before {
				if other != path {
					require.Equal(t, value, after[other], "%s changed with %s in %q", other, path, text)
				}
			}
		}
	})
}
