package facts_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// FuzzFacts: of any text that decodes, the circuit is analysed and the facts are
// built without a panic; the same text gives the same facts; they fit the schema
// that rules are checked against; and each fact is known, or
// open with what is missing.
func FuzzFacts(f *testing.F) {
	for _, pattern := range []string{"clean/*.yaml", "faulty/*.yaml", "sparse/*.yaml", "corpus/a*.yaml", "corpus/s*.yaml"} {
		paths, err := filepath.Glob(filepath.Join("../../testdata/records", pattern))
		require.NoError(f, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(f, err)
			f.Add(text)
		}
	}
	f.Add([]byte("driploop: 1\njob: {number: J}\n"))
	f.Add([]byte("driploop: 1\njob: {number: J}\nvessel: {system: 12 V}\ncomponents: {b: {kind: battery}, l: {kind: lamp, draw: 3 A}}\n" +
		"conductors: {P: {from: b.pos, to: l.pos, role: positive, size: 16 AWG, length: 1 m}, N: {from: l.neg, to: b.neg, role: negative}}\n"))
	schema := factsSchema(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<14 {
			t.Skip()
		}
		r, faults := record.Decode("f", text)
		if len(faults) > 0 {
			t.Skip()
		}
		doc := facts.Build(r, circuit.Analyse(r))
		written, err := json.Marshal(doc)
		require.NoError(t, err, "facts that are no JSON: a number is not finite")
		again, _ := record.Decode("f", text)
		second, err := json.Marshal(facts.Build(again, circuit.Analyse(again)))
		require.NoError(t, err)
		require.True(t, bytes.Equal(written, second), "the same text gives two documents")
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(written))
		require.NoError(t, err)
		require.NoError(t, schema.Validate(value))
		eachSubject(doc, func(name string, subject reflect.Value) { knownOrOpen(t, name, subject) })
	})
}

func factsSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	text, err := facts.Schema()
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("facts.json", doc))
	schema, err := c.Compile("facts.json")
	require.NoError(t, err)
	return schema
}
