package record

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record/internal/plainyaml"
	"driploop/model/record/internal/tree"
)

// handedOn is a text with a mark of the end of the document, for which it is
// handed on to yaml.v3.
func handedOn(text []byte) []byte {
	return append(append([]byte(nil), text...), "\n...\n"...)
}

// Both ways to read YAML give the same record and the same faults.
func TestRecordsDecodeAlikeByBothReaders(t *testing.T) {
	root := filepath.Join("..", "..", "testdata", "records")
	var texts [][]byte
	for _, pattern := range []string{"clean/*.yaml", "faulty/*.yaml", "sparse/*.yaml", "corpus/*.yaml"} {
		files, err := filepath.Glob(filepath.Join(root, pattern))
		require.NoError(t, err)
		require.NotEmpty(t, files, pattern)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			texts = append(texts, text)
		}
	}
	for _, faults := range [][]faulty{valueFaults(), nameFaults(), fileFaults()} {
		for _, c := range faults {
			texts = append(texts, []byte(c.text))
		}
	}
	taken := 0
	for _, text := range texts {
		require.Nil(t, plainyaml.Parse(string(handedOn(text)), &tree.Arena{}))
		if plainyaml.Parse(string(text), &tree.Arena{}) == nil {
			continue // read by yaml.v3 anyway
		}
		taken++
		r, faults := Decode("r", text)
		other, same := Decode("r", handedOn(text))
		other.SHA256 = r.SHA256
		assert.Equal(t, same, faults, "%s", text)
		assert.Equal(t, other, r, "%.200s", text)
	}
	assert.Greater(t, taken, 100)
}

// What is taken is not looked through for stray characters: it may have none.
func TestNoStrayCharacterIsTaken(t *testing.T) {
	taken := 0
	for r := rune(0); r < 0x11000; r++ {
		if r > 0x300 && r < 0x2000 || r > 0x2100 && r < 0xd700 || r > 0xe100 && r < 0xfe00 {
			continue // letters
		}
		for _, form := range []string{"a: b%cc\n", "a: b # %c\n", "a: '%c'\n", "a: \"%c\"\n", "%c: b\n"} {
			text := []byte(fmt.Sprintf(form, r))
			if plainyaml.Parse(string(text), &tree.Arena{}) == nil {
				continue
			}
			if taken++; strayIn(text) != "" {
				t.Fatalf("%q is taken, and %s", text, strayIn(text))
			}
		}
	}
	assert.Greater(t, taken, 10_000)
}

func strayIn(text []byte) string {
	_, says := stray(text)
	return says
}
