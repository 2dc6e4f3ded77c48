package rules

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// quantityForm is a number with what stands behind it, such as "12 V" or "8 AWG".
var quantityForm = regexp.MustCompile(`^(-?\d+(?:\.\d+)?)( .+)?$`)

// factors change a number a little, much, to nothing, and below it.
var factors = []float64{0, 0.5, 0.9, 0.999, 1.001, 1.1, 2, 10, 1000, -1}

// vocabulary is which scalars stand under a key in any record, by key.
type vocabulary map[string][]string

func vocabularyOf(t testing.TB, records map[string]string) vocabulary {
	t.Helper()
	words := vocabulary{}
	for _, name := range slices.Sorted(maps.Keys(records)) {
		_, leaves := tree(t, records[name])
		for _, l := range leaves {
			if key := l.key(); !slices.Contains(words[key], l.value.Value) {
				words[key] = append(words[key], l.value.Value)
			}
		}
	}
	return words
}

// key is the last name of a leaf's path, without its number in a list.
func (l leaf) key() string {
	key := l.path[strings.LastIndex(l.path, ".")+1:]
	key, _, _ = strings.Cut(key, "[")
	return key
}

// mutated draws a record with up to four values taken away, unknown, or changed
// to another number or word.
func mutated(t *rapid.T, tb testing.TB, text string, words vocabulary) string {
	root, _ := tree(tb, text)
	for range rapid.IntRange(1, 4).Draw(t, "changes") {
		leaves := leavesOf(root, "", nil, nil)
		if len(leaves) == 0 {
			break
		}
		l := rapid.SampledFrom(leaves).Draw(t, "leaf")
		switch rapid.SampledFrom([]string{"without", "unknown", "number", "word", "word"}).Draw(t, "change") {
		case "without":
			root = without(root, l)
		case "unknown":
			root = reading(root, l, "unknown")
		case "number":
			if m := quantityForm.FindStringSubmatch(l.value.Value); m != nil {
				number, err := strconv.ParseFloat(m[1], 64)
				require.NoError(tb, err)
				number *= rapid.SampledFrom(factors).Draw(t, "factor")
				root = reading(root, l, strconv.FormatFloat(number, 'g', 6, 64)+m[2])
			}
		case "word":
			root = reading(root, l, rapid.SampledFrom(words[l.key()]).Draw(t, "word"))
		}
	}
	return rendered(root)
}

// TestMutatedRecordsAreJudgedAsByOPAAlone changes the records of the examples and
// the demo records and compares whole verdicts of all rules.
func TestMutatedRecordsAreJudgedAsByOPAAlone(t *testing.T) {
	fast, plain := engines(t)
	records := everyRecord(t, fast)
	names, words := slices.Sorted(maps.Keys(records)), vocabularyOf(t, records)
	usable := 0
	rapid.Check(t, func(rt *rapid.T) {
		text := mutated(rt, t, records[rapid.SampledFrom(names).Draw(rt, "record")], words)
		r, faults := record.Decode("record.yaml", []byte(text))
		if len(faults) > 0 {
			return
		}
		usable++
		judgedAlike(rt, fast, plain, r, facts.Build(r, circuit.Analyse(r)))
	})
	require.NotZero(t, usable)
	t.Logf("%d changed records were judged both ways", usable)
}

// TestMutatedExamplesAgreeWithOPA changes the records of each rule's example and
// compares what is read of that rule in Go with what OPA finds.
func TestMutatedExamplesAgreeWithOPA(t *testing.T) {
	engine := readEngine(t)
	words := vocabularyOf(t, everyRecord(t, engine))
	for i, r := range engine.rules {
		t.Run(r.meta.ID, func(t *testing.T) {
			example, err := engine.Example(r.meta.ID)
			require.NoError(t, err)
			usable := 0
			mutations := rapid.Custom(func(rt *rapid.T) string {
				part := rapid.SampledFrom([]Part{example.Breach, example.Cure}).Draw(rt, "part")
				return mutated(rt, t, part.Text, words)
			})
			for n := range 40 {
				rec, faults := record.Decode("record.yaml", []byte(mutations.Example(1000*i+n)))
				if len(faults) > 0 {
					continue
				}
				usable++
				agree(t, engine, r, r.translated(), facts.Build(rec, circuit.Analyse(rec)))
			}
			require.NotZero(t, usable)
		})
	}
}
