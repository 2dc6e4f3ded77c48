package yard

import (
	"bytes"
	"encoding/json"

	"go.yaml.in/yaml/v3"

	"driploop/model/record"
)

type object = map[string]any

// Schema returns the JSON Schema (2020-12) of a yard's settings, made from the
// rows that read them.
func Schema() []byte {
	properties := object{}
	for _, k := range settings() {
		p := k.shape(&k)
		p["description"] = k.says
		var example any
		if err := yaml.Unmarshal([]byte(k.example), &example); err != nil {
			panic(err) // an example of our own
		}
		p["examples"] = []any{example}
		properties[k.key] = p
	}
	root := object{
		"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "urn:driploop:settings",
		"title": "driploop settings", "description": "How a yard has its records judged.",
		"type": "object", "properties": properties, "additionalProperties": false,
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(root); err != nil {
		panic(err) // maps of strings and lists always encode
	}
	return out.Bytes()
}

// oneText is a text; what is written like a number is one, too.
func oneText(*setting) object   { return object{"type": []string{"string", "number", "boolean"}} }
func yesOrNo(*setting) object   { return object{"type": "boolean"} }
func oneWord(k *setting) object { return object{"enum": k.words} }

func someTexts(k *setting) object { return some(oneText(k)) }
func someWords(k *setting) object { return some(oneWord(k)) }

// some is a list, or one item alone.
func some(item object) object {
	return object{"anyOf": []object{{"type": "array", "minItems": 1, "items": item}, item}}
}

func changesOfSeverity(*setting) object {
	return object{"type": "object", "additionalProperties": object{
		"type": "object", "required": []string{"to", "reason"}, "additionalProperties": false,
		"properties": object{
			"to":     object{"enum": Severities(), "description": "Severity that a breach of the rule gets."},
			"reason": object{"type": []string{"string", "number", "boolean"}, "minLength": 1, "description": "Why; shown with each breach."},
		},
	}}
}

func requirements(k *setting) object {
	kinds, _ := record.Describe("job.kind", func(string) string { return "" })
	return object{
		"type": "object", "propertyNames": object{"enum": append([]string{AnyKind}, kinds.Words...)},
		"additionalProperties": object{
			"type": "object", "additionalProperties": false,
			"properties": object{"entries": someTexts(k), "files": someTexts(k)},
		},
	}
}
