package yard

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// FuzzUnpack: no bytes make reading an entry panic or take memory that they do
// not account for, and what is read packs into an entry that says the same.
func FuzzUnpack(f *testing.F) {
	k, rule := keptRecord()
	f.Add(Pack(&k))
	one := k
	one.Record.Verdicts = k.Record.Verdicts[:1]
	one.Record.Counts = verdict.Count(one.Record.Verdicts)
	f.Add(Pack(&one))
	f.Add(Pack(&Kept{Places: map[string]verdict.Range{}}))
	f.Add([]byte{1, 1, 'a'})
	find := func(string) *verdict.Rule { return rule }
	f.Fuzz(func(t *testing.T, body []byte) {
		got, ok := Unpack(body, find)
		if n := len(got.Record.Verdicts) + len(got.Places); n > len(body) {
			t.Fatalf("%d bytes became %d parts", len(body), n)
		}
		if !ok {
			return
		}
		packed := Pack(&got)
		again, ok := Unpack(packed, find)
		if !ok {
			t.Fatal("what was read cannot be read when it is packed again")
		}
		if !bytes.Equal(packed, Pack(&again)) {
			t.Fatal("packed again it says something else")
		}
	})
}

// FuzzSettings: no text makes reading panic; the same text gives the same
// settings; every fault has words and a place in the file; and settings are read
// without a fault only if the published schema lets them through.
func FuzzSettings(f *testing.F) {
	for _, k := range settings() {
		f.Add([]byte(k.key + ": " + k.example + "\n"))
	}
	for _, text := range []string{
		"gate: danger\nexclude: [\"**/x\"]\nseverity: {a/b: {to: notice, reason: x}}\n", "gate: &g danger\nunits: *g\n", "<<: {gate: none}\n", "",
		"# only a note\n", "practice: [workmanship, workmanship]\n", "rules: [../x, /etc, a/../..]\n", "documents: {any: {files: [\"[\", \"{a,b\"]}}\n",
		"exclude: [\"a\\nb\"]\n", "baseline: \"\"\n", "gate: !!str danger\n", "gate: danger\n---\ngate: none\n", "\ufeffcomplete: yes\n", "include: [**]\n",
	} {
		f.Add([]byte(text))
	}
	schema := settingsSchema(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		s, faults := Read("driploop.yaml", text)
		again, same := Read("driploop.yaml", text)
		if !reflect.DeepEqual(faults, same) || !reflect.DeepEqual(s.Explain(), again.Explain()) {
			t.Fatal("read twice the text says two things")
		}
		lines := strings.Count(string(text), "\n") + strings.Count(string(text), "\r") + 1
		for _, fault := range faults {
			if fault.Says == "" || fault.At.Line < 1 || fault.At.Line > lines {
				t.Fatalf("the fault %q stands at %v of %d lines", fault.Says, fault.At, lines)
			}
		}
		if len(faults) > 0 {
			return
		}
		for _, told := range s.Explain() {
			if told.Value == "" || told.From == "" {
				t.Fatalf("%q is told without a value or a place", told.Key)
			}
		}
		for _, path := range []string{"a.yaml", "b/c.yaml", "a\nb.yaml"} {
			s.leaves(path) // patterns that were taken can be matched
		}
		if strings.TrimSpace(string(text)) == "" {
			return // nothing is set, tabs or not
		}
		var value any
		if err := yaml.Unmarshal(text, &value); err != nil {
			t.Fatalf("read without a fault, and it is not YAML: %v", err)
		}
		if value == nil {
			return // nothing is set
		}
		value = asJSON(value)
		if err := schema.Validate(value); err != nil {
			t.Fatalf("read without a fault, and the schema refuses it: %v", err)
		}
	})
}

// FuzzBaseline: no text makes reading a baseline panic, and one that was not
// matched with anything yet has cured nothing and knows no clean record.
func FuzzBaseline(f *testing.F) {
	f.Add([]byte(`{"format": "driploop.baseline/1", "about": "", "known": []}`))
	f.Add([]byte(`{"format": "driploop.baseline/1", "about": "x", "known": [{"job": "a", "rule": "a/b"}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		b, err := ReadBaseline("x", text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		clean := &verdict.Record{Job: "J"}
		b.Apply(clean)
		assert.Empty(t, clean.Known, "nothing was judged")
	})
}

// asJSON makes of values of YAML what JSON has: no days and no endless numbers.
func asJSON(value any) any {
	switch v := value.(type) {
	case map[string]any:
		for k := range v {
			v[k] = asJSON(v[k])
		}
	case []any:
		for i := range v {
			v[i] = asJSON(v[i])
		}
	case time.Time:
		return v.String()
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Sprint(v)
		}
	}
	return value
}

func settingsSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("settings.json", doc))
	schema, err := c.Compile("settings.json")
	require.NoError(t, err)
	return schema
}
