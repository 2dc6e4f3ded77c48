package record

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// spoilt changes a text in one place, as a slip of the keyboard does or worse.
func spoilt(r *rand.Rand, text string) string {
	pieces := []string{"", " ", "  ", "\n", ":", ": ", "- ", "{", "}", "[", "]", ",", "'", "\"", "*x", "&x ", "#", "\t", "|", ">", "?", "? ", "!", "%", "@", "a", "\n\n    b", "---\n", "\n...\n", "é"}
	at := r.IntN(len(text))
	end := min(at+[]int{0, 0, 1, 1, 2, 9}[r.IntN(6)], len(text))
	return text[:at] + pieces[r.IntN(len(pieces))] + text[end:]
}

// Seams make the search for a syntax error short, and change nothing of its answer.
func TestSeamsFindTheSameFailure(t *testing.T) {
	var texts []string
	for _, pattern := range []string{"clean/*.yaml", "faulty/*.yaml", "corpus/*.yaml"} {
		files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "records", pattern))
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			texts = append(texts, string(text))
		}
	}
	tried, failing, seamed := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		for range 3 {
			whole := texts[r.IntN(len(texts))]
			text := []byte(spoilt(r, whole[:min(len(whole), 9000)]))
			tried++
			_, _, err := documents(bytes.NewReader(text))
			if err != nil {
				failing++
				seams := seamsOf(text)
				seamed += min(len(seams), 1)
				assert.Equal(t, failure(text, err.Error(), nil), failure(text, err.Error(), seams), "%s in %q", err, text)
			}
		}
	})
	assert.Greater(t, failing, tried/3)
	assert.Greater(t, seamed, failing/2)
}

// What stands for the text before a seam leaves the parser where that left it.
func TestSeamsStandForWhatIsBeforeThem(t *testing.T) {
	text := "# of a job\n\ndriploop: 1\nspaces: &s\n  a: &a\n    kind: &k locker\n  b: *a\n\n  # c\n  c: {kind: *k}\nbundles: {\n  B: {},\n  C: {}}\ntests:\n  - kind: pull\n  - &t\n    kind: hose\nsign_off:\n   by: one\n   on: [2026\n"
	var made []string
	for _, c := range seamsOf([]byte(text)) {
		made = append(made, string(c.instead())+text[c.at:][:strings.IndexByte(text[c.at:], '\n')])
	}
	assert.Equal(t, []string{
		"\n\n_: []\nspaces: &s",
		"\n\n_: _\n_:\n  _: [&a _, &k _, ]\n\n  b: *a",
		"\n\n_: _\n_:\n  _: [&a _, &k _, ]\n\n\n\n\n  c: {kind: *k}",
		"\n\n_: [&a _, &k _, &s _, ]\n\n\n\n\n\n\n\nbundles: {",
		"\n\n_: [&a _, &k _, &s _, ]\n\n\n\n\n\n\n\n\n\n\ntests:",
		"\n\n_: [&a _, &k _, &s _, &t _, ]\n\n\n\n\n\n\n\n\n\n\n\n\n\n\nsign_off:",
		"\n\n_: _\n\n\n\n\n\n\n\n\n\n\n\n\n\n\n_:\n   _: [&a _, &k _, &s _, &t _, ]\n   on: [2026",
	}, made)
	assert.Empty(t, seamsOf([]byte("- a\n- b: [c\n")))
	assert.Empty(t, seamsOf(nil))
}
