package record

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// compiled is the schema as an independent validator reads it.
func compiled(t testing.TB) *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	require.NoError(t, c.AddResource("record.json", doc))
	s, err := c.Compile("record.json")
	require.NoError(t, err)
	return s
}

// instance is a YAML text as a validator sees it, by the core schema of YAML
// 1.2 with merge keys.
func instance(t testing.TB, text []byte) any {
	var doc yaml.Node
	require.NoError(t, yaml.Unmarshal(text, &doc))
	return jsonOf(doc.Content[0])
}

func jsonOf(n *yaml.Node) any {
	switch n.Kind {
	case yaml.AliasNode:
		return jsonOf(n.Alias)
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			if n.Content[i].Tag != "!!merge" {
				m[n.Content[i].Value] = jsonOf(n.Content[i+1])
				continue
			}
			merged := []any{jsonOf(n.Content[i+1])}
			if list, ok := merged[0].([]any); ok {
				merged = list
			}
			for _, from := range merged {
				for k, v := range from.(map[string]any) {
					if child(n, k) == nil && m[k] == nil {
						m[k] = v
					}
				}
			}
		}
		return m
	case yaml.SequenceNode:
		list := make([]any, 0, len(n.Content))
		for _, c := range n.Content {
			list = append(list, jsonOf(c))
		}
		return list
	}
	switch n.Tag {
	case "!!int", "!!float":
		if _, err := strconv.ParseFloat(n.Value, 64); err == nil {
			return json.Number(n.Value)
		}
	case "!!bool":
		return strings.EqualFold(n.Value, "true")
	case "!!null":
		return nil
	}
	return n.Value
}

func TestSchemaFitsRecordsThatDecode(t *testing.T) {
	schema := compiled(t)
	require.NoError(t, schema.Validate(instance(t, write(t, everything(t)))), "every key with its example")
	files := []string{filepath.Join("testdata", "bow.yaml")}
	demo, err := filepath.Glob(filepath.Join("..", "..", "testdata", "records", "*", "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, demo)
	for _, file := range append(files, demo...) {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		if _, faults := Decode(file, text); assert.Empty(t, faults, file) {
			assert.NoError(t, schema.Validate(instance(t, text)), file)
		}
	}
}

func TestSchemaRefusesWhatDecodeRefuses(t *testing.T) {
	schema := compiled(t)
	// What no schema can tell.
	unseen := map[string]bool{
		"a length of zero": true, "a day that is not in the calendar": true, "a flag in YAML 1.1": false, "an empty text": false,
		"a control character in a text": true, "a span in the wrong order": true, "a barrel in the wrong order": false,
		"a tag": true, "an id used twice": true, "a key used twice": true, "a merge of what is no mapping": true,
		"a space that is not there": true, "a space where there are none": true, "a segment in a space that is not there": true,
		"a component that is not there": true, "a terminal that the component lacks": true, "a terminal of a controller without links": true,
		"a terminal beside those of the links": true, "a conductor from a terminal to itself": true, "a conductor within one busbar": true,
		"a post that the component lacks": true, "members, passes and loads that are not there": true,
		"an end and its component that name different studs": true, "a bundle that is not listed where some are": true, "an id that stands for a value": true, "an id that is a mapping": true,
	}
	for _, c := range append(valueFaults(), nameFaults()...) {
		if unseen[c.name] {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			assert.Error(t, schema.Validate(instance(t, []byte(c.text))))
		})
	}
}

func TestSchemaAndDecodeAgreeOnWhatMayBeUnknown(t *testing.T) {
	schema := compiled(t)
	root, all := distinct(t)
	for _, l := range all {
		if isEntry(l.path) || strings.HasSuffix(l.path, "]") {
			continue
		}
		old := l.parent.Content[l.at]
		l.parent.Content[l.at] = scalar("unknown")
		text := write(t, root)
		l.parent.Content[l.at] = old
		_, faults := Decode("u.yaml", text)
		if l.path == "waivers[0].at" {
			continue // a path as far as the schema knows
		}
		assert.Equal(t, len(faults) == 0, schema.Validate(instance(t, text)) == nil, "%s: %s", l.path, faults)
	}
}

// Editors show descriptions and offer examples; an example that does not fit
// would be put into a record.
func TestSchemaDescribesEachKeyWithAnExampleThatFits(t *testing.T) {
	var schema struct {
		Defs map[string]map[string]any `json:"$defs"`
	}
	require.NoError(t, json.Unmarshal(Schema(), &schema))
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("record.json", doc))
	n := 0
	for name, def := range schema.Defs {
		assert.NotEmpty(t, def["description"], name)
		properties, _ := def["properties"].(map[string]any)
		for key, p := range properties {
			n++
			at, property := "#/$defs/"+name+"/properties/"+key, p.(map[string]any)
			if ref, ok := property["$ref"].(string); ok && property["description"] == nil {
				at, property = ref, schema.Defs[strings.TrimPrefix(ref, "#/$defs/")]
			}
			assert.NotEmpty(t, property["description"], at)
			examples, _ := property["examples"].([]any)
			require.NotEmpty(t, examples, at)
			own, err := c.Compile("record.json" + at)
			require.NoError(t, err)
			for _, example := range examples {
				assert.NoError(t, own.Validate(example), at)
			}
		}
	}
	assert.Greater(t, n, 300)
}

func TestSchemaIsTheSameEveryTime(t *testing.T) {
	assert.Equal(t, Schema(), Schema())
	assert.True(t, json.Valid(Schema()))
}

func TestSchemaOfAComponentDependsOnItsKind(t *testing.T) {
	schema := compiled(t)
	for text, ok := range map[string]bool{
		"{kind: pump, stall: 38 A}":             true,
		"{kind: lamp, stall: 38 A}":             false,
		"{kind: battery, trip_free: true}":      false,
		"{kind: breaker, trip_free: true}":      true,
		"{kind: heater, resistance: 1.2 ohm}":   true,
		"{kind: fuse, resistance: 0.2 mohm}":    true,
		"{kind: battery, resistance: 0.2 mohm}": false,
		"{rating: 25 A}":                        false,
		"{kind: windmill}":                      false,
	} {
		err := schema.Validate(instance(t, []byte(head+"components: {x: "+text+"}\n")))
		assert.Equal(t, ok, err == nil, "%s: %v", text, err)
	}
}
