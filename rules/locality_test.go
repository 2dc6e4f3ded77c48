package rules_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/rules"
)

// everyFact, set in the environment, makes the test below change every fact of
// every record and not an even sample.
const everyFact = "DRIPLOOP_EVERY_FACT"

// sampledFacts is how many facts of a record are changed without everyFact.
const sampledFacts = 30

func corpusFiles(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob("../testdata/records/corpus/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	return paths
}

var someDay = time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC)

// saying returns the outcomes of a judgement, by "rule at subject"; several of
// one rule on one subject are joined in order.
func saying(t *testing.T, engine *rules.Engine, r *record.Record, doc *facts.Document) map[string]string {
	t.Helper()
	result, err := engine.Judge(r, doc, someDay)
	require.NoError(t, err)
	all := map[string][]string{}
	for i := range result.Verdicts {
		v := &result.Verdicts[i]
		key := v.Rule.ID + " at " + v.Subject
		all[key] = append(all[key], string(v.Outcome))
	}
	said := map[string]string{}
	for key, outcomes := range all {
		slices.Sort(outcomes)
		said[key] = strings.Join(outcomes, ", ")
	}
	return said
}

// factAt is one fact of a document in its JSON form.
type factAt struct {
	collection, id, name string
	holder               map[string]any
}

// factsOf lists the numbers, flags and words of a document in a fixed order. The
// paths by which a verdict finds its place in the record are no facts.
func factsOf(document map[string]any) []factAt {
	var all []factAt
	add := func(collection, id string, subject map[string]any) {
		for _, name := range slices.Sorted(maps.Keys(subject)) {
			switch subject[name].(type) {
			case float64, bool, string:
				if name != "path" {
					all = append(all, factAt{collection, id, name, subject})
				}
			}
		}
	}
	for _, collection := range slices.Sorted(maps.Keys(document)) {
		subjects, ok := document[collection].(map[string]any)
		if !ok {
			continue
		}
		if _, single := subjects["path"]; single {
			add(collection, "", subjects)
			continue
		}
		for _, id := range slices.Sorted(maps.Keys(subjects)) {
			if subject, ok := subjects[id].(map[string]any); ok {
				add(collection, id, subject)
			}
		}
	}
	return all
}

// othersThan returns other values that a fact could have.
func othersThan(value any) []any {
	switch v := value.(type) {
	case float64:
		if v == float64(int(v)) && v < 20 { // it may be a count
			return []any{v + 1, v + 7}
		}
		return []any{v * 0.4, v * 3.1}
	case bool:
		return []any{!v}
	}
	return []any{"other"}
}

// mentions tells whether the text of a rule names a fact at all, in its
// conditions or in its metadata: by the words of the file, not by the engine.
func mentions(text, fact string) bool {
	return regexp.MustCompile(`\b` + regexp.QuoteMeta(fact) + `\b`).MatchString(text)
}

// Changing one fact of a whole job changes the outcome of those rules alone that
// read it, on that subject alone: what a rule says of one thing hangs on nothing
// that it does not name. The facts of vessel and job are read by rules on any
// subject.
func TestAFactChangesOnlyTheRulesThatReadIt(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	text, subject := map[string]string{}, map[string]string{}
	for _, r := range engine.Rules() {
		source, err := os.ReadFile(strings.ReplaceAll(r.ID, "-", "_") + ".rego")
		require.NoError(t, err)
		text[r.ID], subject[r.ID] = string(source), r.Subject
	}
	changed := 0
	for _, path := range corpusFiles(t) {
		t.Run(filepath.Base(path), func(t *testing.T) {
			source, err := os.ReadFile(path)
			require.NoError(t, err)
			r, faults := record.Decode(path, source)
			require.Empty(t, faults)
			whole, err := json.Marshal(facts.Build(r, circuit.Analyse(r)))
			require.NoError(t, err)
			judge := func(document []byte) (map[string]string, bool) {
				doc := &facts.Document{}
				if json.Unmarshal(document, doc) != nil {
					return nil, false // no such value, such as half a count
				}
				return saying(t, engine, r, doc), true
			}
			before, ok := judge(whole)
			require.True(t, ok)
			assert.Equal(t, saying(t, engine, r, facts.Build(r, circuit.Analyse(r))), before, "the document is whole as JSON")
			var document map[string]any
			require.NoError(t, json.Unmarshal(whole, &document))
			all := factsOf(document)
			step := max(1, len(all)/sampledFacts)
			if os.Getenv(everyFact) != "" {
				step = 1
			}
			for i := 0; i < len(all); i += step {
				f := all[i]
				was := f.holder[f.name]
				for _, other := range othersThan(was) {
					f.holder[f.name] = other
					now, err := json.Marshal(document)
					require.NoError(t, err)
					after, ok := judge(now)
					if !ok {
						continue
					}
					for key, outcome := range before {
						if after[key] == outcome {
							continue
						}
						changed++
						id, _, _ := strings.Cut(key, " at ")
						if id == "documents/waiver-idle" {
							continue // it judges whether the verdict that is waived is a breach
						}
						own := subject[id] == f.collection || f.collection == "vessel" || f.collection == "job"
						assert.True(t, own && mentions(text[id], f.name),
							"%s.%s.%s from %v to %v: %s was %s and is %s", f.collection, f.id, f.name, was, other, key, outcome, after[key])
					}
				}
				f.holder[f.name] = was
			}
		})
	}
	assert.Greater(t, changed, 100, "the changes do change verdicts")
	t.Log(fmt.Sprint(changed, " outcomes changed"))
}
