package rules_test

import (
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/rules"
)

const demos = "../testdata/records"

// fingerprints judges a record and returns rule, subject and outcome by the
// fingerprint of the verdict.
func fingerprints(t *testing.T, engine *rules.Engine, text []byte) map[string]string {
	t.Helper()
	r, faults := record.Decode("job.yaml", text)
	require.Empty(t, faults)
	result, err := engine.Judge(r, facts.Build(r, circuit.Analyse(r)), exampleDay)
	require.NoError(t, err)
	all := map[string]string{}
	for i := range result.Verdicts {
		v := &result.Verdicts[i]
		key := v.Fingerprint(r.Job.Number.V)
		require.NotContains(t, all, key, "%s on %s", v.Rule.ID, v.ID)
		all[key] = v.Rule.ID + " on " + v.ID + " " + string(v.Outcome)
	}
	return all
}

// differing lists what stands in one of two maps only.
func differing(a, b map[string]string) (all []string) {
	for key, of := range a {
		if b[key] != of {
			all = append(all, "only before: "+of)
		}
	}
	for key, of := range b {
		if a[key] != of {
			all = append(all, "only after: "+of)
		}
	}
	slices.Sort(all)
	return all
}

// without leaves out the verdicts on what has a name in its own.
func without(all map[string]string, name string) map[string]string {
	named := regexp.MustCompile(`[ .]` + regexp.QuoteMeta(name) + `([ .]|$)`)
	left := maps.Clone(all)
	maps.DeleteFunc(left, func(_, of string) bool { return named.MatchString(of) })
	return left
}

// unordered tells whether the order of a list means nothing: that of parts of the
// record other than a route, and of some words.
func unordered(n *yaml.Node, key string) bool {
	parts := len(n.Content) > 0 && n.Content[0].Kind == yaml.MappingNode
	return parts && key != "route" || key == "practice" || key == "passes"
}

// shuffle puts the entries of every mapping, and of every list whose order means
// nothing, in another order.
func shuffle(n *yaml.Node, dice *rand.Rand, key string) {
	switch {
	case n.Kind == yaml.MappingNode:
		for i := len(n.Content)/2 - 1; i > 0; i-- {
			j := dice.IntN(i + 1)
			n.Content[2*i], n.Content[2*j] = n.Content[2*j], n.Content[2*i]
			n.Content[2*i+1], n.Content[2*j+1] = n.Content[2*j+1], n.Content[2*i+1]
		}
		for i := 0; i < len(n.Content); i += 2 {
			shuffle(n.Content[i+1], dice, n.Content[i].Value)
		}
		return
	case n.Kind == yaml.SequenceNode && unordered(n, key):
		dice.Shuffle(len(n.Content), func(i, j int) { n.Content[i], n.Content[j] = n.Content[j], n.Content[i] })
	}
	for _, c := range n.Content {
		shuffle(c, dice, key)
	}
}

// inline puts what an alias stands for in its place, and every entry on a line of
// its own, without comments.
func inline(n *yaml.Node) {
	if n.Kind == yaml.AliasNode {
		*n = *n.Alias
	}
	n.Anchor, n.Style, n.HeadComment, n.LineComment, n.FootComment = "", 0, "", "", ""
	n.Content = slices.Clone(n.Content)
	for i, c := range n.Content {
		copied := *c
		n.Content[i] = &copied
		inline(&copied)
	}
}

// rename gives a component or conductor another name wherever it is named.
func rename(n *yaml.Node, key, from, to string) {
	if first, rest, _ := strings.Cut(n.Value, "."); n.Kind == yaml.ScalarNode && first == from && key != "kind" && key != "purpose" {
		n.Value = strings.TrimSuffix(to+"."+rest, ".")
	}
	for _, collection := range []string{"components.", "conductors."} {
		if n.Value == collection+from {
			n.Value = collection + to
		}
	}
	for i, c := range n.Content {
		switch {
		case n.Kind != yaml.MappingNode:
			rename(c, key, from, to)
		case i%2 == 1:
			rename(c, n.Content[i-1].Value, from, to)
		case c.Value == from && (key == "components" || key == "conductors"):
			c.Value = to
		}
	}
}

// demo is a demo record with two tests of one kind on one day, and two waivers.
func demo(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(demos, name))
	require.NoError(t, err)
	var document yaml.Node
	require.NoError(t, yaml.Unmarshal(text, &document))
	var more yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(`
tests:
  - {kind: voltage-drop, load: washdown, current: 14 A, at_source: 12.5 V, at_load: 12.1 V, on: 2026-06-17}
  - {kind: voltage-drop, load: washdown, current: 15 A, at_source: 12.5 V, at_load: 11.1 V, on: 2026-06-17}
  - {kind: hose, on: 2026-06-17}
waivers:
  - {rule: routing/support-too-far, at: conductors.P2, reason: liner, by: foreman, until: 2027-06-30}
  - {rule: routing/support-too-far, at: conductors.P3, reason: liner, by: foreman, until: 2025-06-30}
`), &more))
	inline(&document)
	top, extra := document.Content[0], more.Content[0]
	for i := 0; i < len(extra.Content); i += 2 {
		at := -1
		for j := 0; j < len(top.Content); j += 2 {
			if top.Content[j].Value == extra.Content[i].Value {
				at = j
			}
		}
		if at < 0 {
			top.Content = append(top.Content, extra.Content[i], extra.Content[i+1])
		} else {
			top.Content[at+1].Content = append(top.Content[at+1].Content, extra.Content[i+1].Content...)
		}
	}
	text, err = yaml.Marshal(&document)
	require.NoError(t, err)
	return text
}

func TestVerdictsAndFingerprintsStayWhenEntriesChangePlaces(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	text := demo(t, "faulty/thruster-launch.yaml")
	want := fingerprints(t, engine, text)
	require.Greater(t, len(want), 500)
	for seed := range uint64(5) {
		moved := changed(t, text, func(n *yaml.Node) { shuffle(n, rand.New(rand.NewPCG(seed, 0)), "") })
		require.Empty(t, differing(want, fingerprints(t, engine, moved)), "seed %d", seed)
	}
}

// changed returns a record with its tree changed.
func changed(t *testing.T, text []byte, change func(*yaml.Node)) []byte {
	t.Helper()
	var document yaml.Node
	require.NoError(t, yaml.Unmarshal(text, &document))
	change(&document)
	out, err := yaml.Marshal(&document)
	require.NoError(t, err)
	require.NotEqual(t, string(text), string(out))
	return out
}

func TestFingerprintsStayWhenSomethingElseIsRenamed(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	text := demo(t, "faulty/thruster-launch.yaml")
	all := fingerprints(t, engine, text)
	for _, id := range []string{"thruster", "main-fuse", "pos-bus", "P1"} {
		require.Less(t, len(without(all, id)), len(all), id)
		renamed := changed(t, text, func(n *yaml.Node) { rename(n, "", id, "renamed") })
		assert.Empty(t, differing(without(all, id), without(fingerprints(t, engine, renamed), "renamed")), id)
	}
}

func TestBreachesNameWhatTheyHaveToDoWith(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	text, err := os.ReadFile(filepath.Join(demos, "faulty", "readme.yaml"))
	require.NoError(t, err)
	r, faults := record.Decode("job.yaml", text)
	require.Empty(t, faults)
	result, err := engine.Judge(r, facts.Build(r, circuit.Analyse(r)), exampleDay)
	require.NoError(t, err)
	related := map[string]string{}
	for _, v := range result.Verdicts {
		var all []string
		for _, other := range v.Related {
			assert.Equal(t, r.Places.At(other.Subject), other.At)
			assert.Positive(t, other.At.Start.Line)
			all = append(all, other.Role+" "+other.Subject)
		}
		if len(all) > 0 {
			related[v.Rule.ID+" on "+v.Subject] = strings.Join(all, ", ")
		}
	}
	assert.Equal(t, "source components.house, first device components.fuse", related["protection/device-too-far on conductors.P1"])
	assert.Equal(t, "protecting device components.fuse, to components.washdown", related["protection/device-oversized on conductors.P2"],
		"a part is named once, though the device that protects it is at its end, too")
}
