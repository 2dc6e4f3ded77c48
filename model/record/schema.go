package record

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"

	"go.yaml.in/yaml/v3"

	"driploop/model/quantity"
)

// Schema returns the JSON Schema (2020-12) of the record format, made from the
// same tables as decoding: what each key is, an example of it, the words and
// units it takes. It cannot say what only a whole record tells, such as a
// reference to nothing; Decode does.
func Schema() []byte {
	b := schemaBuilder{defs: object{}}
	root := rootTable().object(&b, -1)
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = "urn:driploop:record:" + strconv.Itoa(Version)
	root["title"] = "driploop installation record"
	root["$defs"] = b.defs
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(root); err != nil {
		panic(err) // maps of strings, numbers and lists always encode
	}
	return out.Bytes()
}

type object = map[string]any

// schemaBuilder gathers the definitions that a schema refers to.
type schemaBuilder struct{ defs object }

// define adds a definition once and returns a reference to it.
func (b *schemaBuilder) define(name string, build func() object) object {
	if _, done := b.defs[name]; !done {
		b.defs[name] = build()
	}
	return object{"$ref": "#/$defs/" + name}
}

func (p single[P]) schema(b *schemaBuilder) object  { return p.of().schema(b) }
func (p several[P]) schema(b *schemaBuilder) object { return p.of().schema(b) }
func (p byID[P]) schema(b *schemaBuilder) object    { return p.of().schema(b) }

// schema returns a reference to the definition of the mapping.
func (t *table[T]) schema(b *schemaBuilder) object {
	if t.kind == nil {
		return b.define(t.name, func() object { return t.object(b, -1) })
	}
	return b.define(t.name, func() object { return t.byKind(b) })
}

// byKind chooses the keys by the kind of component.
func (t *table[T]) byKind(b *schemaBuilder) object {
	choices := make([]any, len(kindTable()))
	for i, k := range kindTable() {
		choices[i] = object{
			"if":   object{"properties": object{"kind": object{"const": k.Name}}, "required": []string{"kind"}},
			"then": b.define(t.name+":"+k.Name, func() object { return t.object(b, i) }),
		}
	}
	kind := t.named("kind", -1)
	return object{
		"description": t.says, "type": "object", "required": []string{"kind"},
		"properties": object{"kind": kind.schema(b)}, "allOf": choices,
	}
}

// object is the schema of the mapping, for a kind of component if not -1.
func (t *table[T]) object(b *schemaBuilder, kind int) object {
	properties, required := object{}, []string{}
	for i := range t.fields {
		f := &t.fields[i]
		if kind >= 0 && !f.kinds.has(kind) {
			continue
		}
		properties[f.key] = f.schema(b)
		if t.kind != nil {
			name := t.name + "." + f.key
			if len(t.all(f.key)) > 1 {
				name += "." + strconv.Itoa(slices.Index(t.all(f.key), i)+1)
			}
			properties[f.key] = b.define(name, func() object { return f.schema(b) })
		}
		if f.required {
			required = append(required, f.key)
		}
	}
	o := object{"description": t.says, "type": "object", "properties": properties, "additionalProperties": false}
	if kind >= 0 {
		o["description"] = "A component of this kind: " + kindTable()[kind].Says + "."
	}
	if len(required) > 0 {
		o["required"] = required
	}
	return o
}

const unknownPattern = "^" + unknownWord + "$"

// schema is the schema of the values of a key.
func (s *spec) schema(b *schemaBuilder) object {
	o := s.shapeSchema(b)
	o["description"] = s.says
	o["examples"] = []any{s.exampleValue()}
	return o
}

func (s *spec) shapeSchema(b *schemaBuilder) object {
	switch s.shape {
	case flagShape:
		return object{"enum": []any{true, false, unknownWord}}
	case countShape:
		return object{"type": []string{"integer", "string"}, "minimum": least(s.zero), "pattern": unknownPattern}
	case versionShape:
		return object{"const": Version}
	case terminalShape:
		return object{"type": "string", "pattern": terminalPattern}
	case pairShape:
		name := object{"type": "string", "pattern": idPattern, "not": object{"const": unknownWord}}
		return object{"type": "array", "items": name, "minItems": 2, "maxItems": 2, "uniqueItems": true}
	case wordsShape:
		return s.orUnknown(object{"type": "array", "items": s.one(), "uniqueItems": true})
	case barrelShape:
		return s.orUnknown(object{"type": "array", "items": s.one(), "minItems": 1, "maxItems": 2})
	case spanShape:
		return s.orUnknown(object{"type": "array", "items": s.one(), "minItems": 2, "maxItems": 2})
	case listShape:
		return s.orUnknown(object{"type": "array", "items": s.part.schema(b)})
	case mapShape:
		return s.orUnknown(object{
			"type": "object", "additionalProperties": s.part.schema(b),
			"propertyNames": object{"pattern": idPattern, "maxLength": maxID, "not": object{"enum": []string{unknownWord, noneWord}}},
		})
	case partShape:
		if s.certain {
			return s.part.schema(b)
		}
		return object{"anyOf": []any{s.part.schema(b), object{"const": unknownWord}}}
	}
	return s.one()
}

// orUnknown lets a list or mapping be unknown, where the key does.
func (s *spec) orUnknown(o object) object {
	if !s.certain {
		o["type"] = []any{o["type"], "string"}
		o["pattern"] = unknownPattern
	}
	return o
}

// one is the schema of one plain value.
func (s *spec) one() object {
	var pattern string
	switch {
	case s.shape == measureShape || s.shape == spanShape:
		pattern = quantity.Pattern(s.dim, s.signed || s.dim == quantity.Temperature)
	case s.shape == wireShape || s.shape == barrelShape:
		pattern = quantity.WirePattern
	case s.shape == dateShape:
		pattern = `^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$`
	case s.words != nil:
		all := make([]any, 0, len(s.words)+1)
		for _, w := range s.words {
			all = append(all, w)
		}
		if !s.certain {
			all = append(all, unknownWord)
		}
		return object{"enum": all}
	case s.form != nil:
		pattern = s.form.pattern
	default:
		// YAML reads a job's number, say, as a number; it is a text all the same.
		return object{"type": []string{"string", "number", "boolean"}, "pattern": `\S`}
	}
	if s.certain {
		return object{"type": "string", "pattern": pattern, "not": object{"const": unknownWord}}
	}
	return object{"type": "string", "pattern": unknownPattern + "|" + pattern}
}

// exampleValue is the example as the file would hold it.
func (s *spec) exampleValue() any {
	var v any
	switch s.shape {
	case flagShape, countShape, versionShape, wordsShape, barrelShape, spanShape, pairShape:
		if err := yaml.Unmarshal([]byte(s.example), &v); err != nil {
			panic("record: example of " + s.key + ": " + err.Error())
		}
		return v
	case partShape:
		return s.part.sample()
	case listShape:
		return []any{s.part.sample()}
	case mapShape:
		return object{s.example: s.part.sample()}
	}
	return s.example
}

func (p single[P]) sample() object  { return p.of().example() }
func (p several[P]) sample() object { return p.of().example() }
func (p byID[P]) sample() object    { return p.of().example() }

// example is a short example of the mapping: what it needs, and its first keys.
func (t *table[T]) example() object {
	o := object{}
	kind := -1
	if t.kind != nil {
		f := t.named("kind", -1)
		kind = kindIndex(f.example)
	}
	for i := range t.fields {
		f := &t.fields[i]
		if f.kinds.has(kind) && (f.required || len(o) < 3) && f.part == nil {
			o[f.key] = f.exampleValue()
		}
	}
	return o
}
