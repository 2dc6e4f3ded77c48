package record

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
)

// Every path is found where it stands, and what only looks like one is not.
func TestPlacesAreFoundByTheirPaths(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "bow.yaml"))
	require.NoError(t, err)
	r, faults := Decode("bow.yaml", text)
	require.Empty(t, faults)
	stands := maps.Collect(r.Places.All())
	require.Greater(t, len(stands), 150)
	count := 0
	for range r.Places.All() {
		count++
	}
	assert.Equal(t, len(stands), count, "no path comes twice")
	for path, at := range stands {
		found, ok := r.Places.Find(path)
		assert.True(t, ok, path)
		assert.Equal(t, at, found, path)
		assert.Equal(t, at, r.Places.At(path), path)
		for _, near := range []string{
			path + ".", path + "[", path + "[0", path + "]", "." + path, path + ".x", path[1:], path[:len(path)-1], strings.ToUpper(path),
			strings.ReplaceAll(path, ".", ".."), strings.ReplaceAll(path, "[", ".["), strings.ReplaceAll(path, "[", "[0"), strings.ReplaceAll(path, "]", "]."),
			strings.ReplaceAll(path, ".", "[") + "]", strings.Replace(path, ".", " ", 1),
		} {
			if _, is := stands[near]; is {
				continue
			}
			_, ok := r.Places.Find(near)
			assert.False(t, ok, near)
			assert.Zero(t, r.Places.At(near), near)
		}
	}
	for _, none := range []string{"", ".", "[", "[0]", "..", "é"} {
		_, ok := r.Places.Find(none)
		assert.False(t, ok, none)
	}
}

func TestPlacesOfSomePathsAreThose(t *testing.T) {
	some := map[string]verdict.Range{
		"job": span4(2, 1, 2, 4), "tests": span4(3, 1, 3, 6), "tests[0]": span4(3, 8, 3, 9), "tests[12].kind": span4(9, 8, 9, 12), "vessel.system": span4(4, 3, 4, 9),
	}
	p := PlacesOf(some)
	for path, at := range some {
		assert.Equal(t, at, p.At(path), path)
	}
	for _, leads := range []string{"vessel", "tests[12]"} {
		assert.Zero(t, p.At(leads), leads)
	}
	_, ok := Places{}.Find("job")
	assert.False(t, ok)
	assert.Empty(t, maps.Collect(Places{}.All()))
}

// A record may have more items and entries than any list of steps foresees.
func TestPlacesOfManyEntries(t *testing.T) {
	const many = 3000
	var b strings.Builder
	b.WriteString(head + "bundles:\n")
	for i := range many {
		b.WriteString("  B" + itemStep(i)[1:len(itemStep(i))-1] + ": {carrying: 2}\n")
	}
	b.WriteString("tests:\n" + strings.Repeat("  - {kind: pull}\n", many))
	r, _ := Decode("r", []byte(b.String()))
	first, second := r.Places.At("bundles.B0"), r.Places.At("tests[0]")
	require.NotZero(t, first)
	require.NotZero(t, second)
	for i := range many {
		number := itemStep(i)[1 : len(itemStep(i))-1]
		assert.Equal(t, first.Start.Line+i, r.Places.At("bundles.B"+number).Start.Line)
		assert.Equal(t, second.Start.Line+i, r.Places.At("tests["+number+"].kind").Start.Line)
	}
}
