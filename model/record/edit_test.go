package record

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEditChangesOneEntryAndNoOtherByte(t *testing.T) {
	const head = "driploop: 1\njob: {number: A-1}\nvessel: {name: Marigold}\n"
	for _, c := range []struct{ name, before, path, value, after string }{
		{"value in flow", "a: {b: 1 m, c: 2 m} # kept", "a.b", "3 m", "a: {b: 3 m, c: 2 m} # kept"},
		{"value in block", "a:\n  b: 1 m   # why\n  c: 2 m", "a.b", "3 m", "a:\n  b: 3 m   # why\n  c: 2 m"},
		{"quoted", `a: {b: "1 m"}`, "a.b", "3 m", "a: {b: 3 m}"},
		{"new in flow", "a: {b: 1 m}", "a.c", "3 m", "a: {b: 1 m, c: 3 m}"},
		{"new in empty flow", "a: {}", "a.c", "3 m", "a: {c: 3 m}"},
		{"new in flow over lines", "a: {b: 1 m,  # one\n    d: 2 m}", "a.c", "3 m", "a: {b: 1 m,  # one\n    d: 2 m, c: 3 m}"},
		{"new in block", "a:\n  b: 1 m  # one\n\n# next\nz: 1", "a.c", "3 m", "a:\n  b: 1 m  # one\n  c: 3 m  # note\n\n# next\nz: 1"},
		{"new behind a nested block", "a:\n  b:\n    d: 1\nz: 1", "a.c", "3 m", "a:\n  b:\n    d: 1\n  c: 3 m  # note\nz: 1"},
		{"new below new", "a: {b: 1 m}", "a.c.d", "3 m", "a: {b: 1 m, c: {d: 3 m}}"},
		{"below unknown", "a: {c: unknown}", "a.c.d", "3 m", "a: {c: {d: 3 m}}"},
		{"key without value", "a:\n  c:\n  d: 1", "a.c", "3 m", "a:\n  c: 3 m\n  d: 1"},
		{"list item", "a:\n  - {b: 1 m}\n  - {b: 2 m}", "a[1].b", "3 m", "a:\n  - {b: 1 m}\n  - {b: 3 m}"},
		{"beside an alias", "x: &x {b: 1 m}\na: *x", "a.b", "3 m", "x: &x {b: 1 m}\na: {<<: *x, b: 3 m}"},
		{"below an alias", "x: &x {b: {d: 1 m, e: 2 m}}\na: *x", "a.b.d", "3 m", "x: &x {b: {d: 1 m, e: 2 m}}\na: {b: {d: 3 m, e: 2 m}}"},
		{"over a merge", "x: &x {b: 1 m}\na: {<<: *x, c: 2 m}", "a.b", "3 m", "x: &x {b: 1 m}\na: {<<: *x, c: 2 m, b: 3 m}"},
		{"below a merge", "x: &x {b: {d: 1 m, e: 2 m}}\na: {<<: *x}", "a.b.d", "3 m", "x: &x {b: {d: 1 m, e: 2 m}}\na: {<<: *x, b: {d: 3 m, e: 2 m}}"},
		{"what others merge", "x: &x {b: 1 m}\na: {<<: *x}", "x.b", "3 m", "x: &x {b: 3 m}\na: {<<: *x, b: 1 m}"},
		{"what others alias", "x: &x {b: 1 m}\na: *x", "x.b", "3 m", "x: &x {b: 3 m}\na: {<<: *x, b: 1 m}"},
		{"a list that others merge", "x: &x {b: [1 m, 2 m]}\na: {<<: *x}", "x.b", "3 m", "x: &x {b: 3 m}\na: {<<: *x, b: [1 m, 2 m]}"},
		{"an item that others merge", "x: &x {b: [1 m, 2 m]}\na: {<<: *x}", "x.b[1]", "3 m", "x: &x {b: [1 m, 3 m]}\na: {<<: *x, b: [1 m, 2 m]}"},
		{"anchored block", "x: &x\n  b: 1 m\ny: 2", "x.c", "3 m", "x: &x\n  b: 1 m\n  c: 3 m  # note\ny: 2"},
		{"line ends", "a:\r\n  b: 1 m\r\nz: 1\r\n", "a.c", "3 m", "a:\r\n  b: 1 m\r\n  c: 3 m  # note\r\nz: 1\r\n"},
		{"accents before it", "a: {é: ü, b: 1 m}", "a.b", "3 m", "a: {é: ü, b: 3 m}"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Edit("x.yaml", []byte(head+c.before), Change{Path: c.path, Value: c.value, Comment: "note"})
			require.NoError(t, err)
			assert.Equal(t, head+c.after, string(got))
		})
	}
}

func TestEditRefusesWhatItCannotChangeAlone(t *testing.T) {
	const text = "driploop: 1\nx: &x {b: 1 m}\na: *x\n"
	_, err := Edit("x.yaml", []byte(text), Change{Path: "x.c", Value: "3 m"})
	require.EqualError(t, err, "x.c is shared with a.c by an anchor; write one of them out")
	_, err = Edit("x.yaml", []byte(text), Change{Path: "driploop.c", Value: "3 m"})
	require.EqualError(t, err, `driploop.c: nothing in the record has a place for "c"`)
	_, err = Edit("x.yaml", []byte("a: {"), Change{Path: "a", Value: "1"})
	require.Error(t, err)
}

// TestEditEveryLeaf changes every value of the demo records in turn: the value
// is changed, no other is, and the text differs nowhere else but where others
// shared it.
func TestEditEveryLeaf(t *testing.T) {
	files, err := filepath.Glob("../../testdata/records/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		before, err := Leaves(file, text)
		require.NoError(t, err)
		paths := make([]string, 0, len(before))
		for path := range before {
			paths = append(paths, path)
		}
		slices.Sort(paths)
		step := 1 + len(paths)/15 // enough to meet every shape
		for i := 0; i < len(paths); i += step {
			path := paths[i]
			got, err := Edit(file, text, Change{Path: path, Value: "changed"})
			require.NoError(t, err, "%s: %s", file, path)
			after, err := Leaves(file, got)
			require.NoError(t, err, "%s: %s\n%s", file, path, got)
			require.Equal(t, "str changed", after[path], "%s: %s", file, path)
			after[path] = before[path]
			require.Equal(t, before, after, "%s: %s", file, path)
			require.Equal(t, strings.Count(string(text), "# "), strings.Count(string(got), "# "), "%s: %s: comments", file, path)
		}
	}
}
