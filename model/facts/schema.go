package facts

import (
	"encoding/json"

	"github.com/invopop/jsonschema"
)

// Schema returns the JSON Schema of the document. It lets no fact through that
// the Go types do not declare.
func Schema() ([]byte, error) {
	reflector := jsonschema.Reflector{Anonymous: true, DoNotReference: true}
	schema := reflector.Reflect(&Document{})
	schema.Title = "driploop facts"
	schema.Description = "What the rules of driploop read: one document for one installation record. A fact that is not known is left out and stands in the subject's \"open\"."
	text, err := json.MarshalIndent(schema, "", "  ")
	return append(text, '\n'), err
}
