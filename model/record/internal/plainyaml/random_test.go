package plainyaml

import (
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// pieces are what texts of YAML are put together from, and what confuses them.
func pieces() []string {
	return []string{
		"a", "b", "c d", "1", "-5", "é", "true", "2 V", ": ", ": ", ": ", ":", " : ", "- ", "- ", "-", "\n", "\n", "\n  ", "\n  ", "\n    ", "\n   ", "\n# e\n", " ", "  ",
		"{", "}", "[", "]", ", ", ", ", ",", "#", " # f", "'", "\"", "'g h'", "\"i, j\"", "''", "\\", "&x ", "&x", "*x", "<<: ", "<<", "?", "? ", "|", "> ", "!", "---", "...", "\t", "~", "%", "@", "\r\n",
		"\na: b\n", "\n  a: b", "\n- c", "\n  - d", "{a: b}", "[c, d]", "\nk:", "\n  k:",
	}
}

// patched puts some pieces together, as often as not as a record would.
func patched(r *rand.Rand) string {
	var b strings.Builder
	if r.IntN(4) > 0 {
		b.WriteString("a:")
	}
	all := pieces()
	for range 1 + r.IntN(12) {
		b.WriteString(all[r.IntN(len(all))])
	}
	return b.String()
}

// excerpt returns some lines of a text, moved to the left.
func excerpt(r *rand.Rand, text string) string {
	lines := strings.Split(text, "\n")
	from := r.IntN(len(lines))
	part := slices.Clone(lines[from:min(len(lines), from+1+r.IntN(12))])
	indent := len(part[0]) - len(strings.TrimLeft(part[0], " "))
	for i, line := range part {
		part[i] = line[min(indent, len(line)-len(strings.TrimLeft(line, " "))):]
	}
	return strings.Join(part, "\n")
}

// mutated changes a text in one place, by a character, a piece or a line.
func mutated(r *rand.Rand, text string) string {
	if text == "" {
		return "a"
	}
	at, all := r.IntN(len(text)), pieces()
	lines := strings.SplitAfter(text, "\n")
	line, other := r.IntN(len(lines)), r.IntN(len(lines))
	switch r.IntN(9) {
	case 0:
		return text[:at] + text[at+1:]
	case 1:
		return text[:at] + all[r.IntN(len(all))] + text[at:]
	case 2:
		return text[:at] + all[r.IntN(len(all))] + text[at+1:]
	case 3:
		return text[:at]
	case 4:
		lines = slices.Delete(lines, line, line+1)
	case 5:
		lines = slices.Insert(lines, other, lines[line])
	case 6:
		lines[line], lines[other] = lines[other], lines[line]
	case 7:
		lines[line] = strings.Repeat(" ", r.IntN(4)) + lines[line]
	default:
		lines[line] = strings.TrimPrefix(lines[line], strings.Repeat(" ", 1+r.IntN(3)))
	}
	return strings.Join(lines, "")
}

// alike holds many made-up texts to yaml.v3 and makes sure that enough of them
// are taken, so that something is compared.
func alike(t *testing.T, texts int, leastTaken float64, made func(r *rand.Rand) string) {
	t.Helper()
	all, taken := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		for range texts {
			text := []byte(made(r))
			if all++; isTaken(text) {
				taken++
			}
			if says := differs(text); says != "" {
				t.Fatalf("%q: %s", text, says)
			}
		}
	})
	assert.Greaterf(t, float64(taken)/float64(all), leastTaken, "of %d texts %d were taken", all, taken)
}

func TestPiecesReadLikeYAML(t *testing.T) { alike(t, 1000, 0.05, patched) }

func TestMutatedRecordsReadLikeYAML(t *testing.T) {
	all := records(t)
	var names []string
	for name := range all {
		names = append(names, name)
	}
	sort.Strings(names)
	alike(t, 150, 0.15, func(r *rand.Rand) string {
		text := excerpt(r, string(all[names[r.IntN(len(names))]]))
		for range r.IntN(4) {
			text = mutated(r, text)
		}
		return text
	})
}
