package yard

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// TestSchemaAgreesWithReading: what the schema lets through is read, and what it
// refuses is a fault.
func TestSchemaAgreesWithReading(t *testing.T) {
	schema := settingsSchema(t)
	texts := map[string]bool{
		"gat: danger\n": false, "exclude: b\n": true, "exclude: [2024]\n": true, "exclude: []\n": false, "complete: \"true\"\n": false, "baseline: 5\n": true, "gate: high\n": false, "complete: maybe\n": false, "units: feet\n": false, "practice: [mars]\n": false,
		"severity: {routing/no-slack: {to: notice}}\n": false, "severity: {routing/no-slack: {to: low, reason: x}}\n": false,
		"documents: {yacht: {entries: [job.number]}}\n": false, "documents: {any: {papers: [x]}}\n": false, "baseline: [a]\n": false, "rules: {a: b}\n": false,
	}
	for _, k := range settings() {
		texts[k.key+": "+k.example+"\n"] = true
	}
	for text, good := range texts {
		var value any
		require.NoError(t, yaml.Unmarshal([]byte(text), &value))
		assert.Equal(t, good, schema.Validate(value) == nil, "the schema on %s", text)
		_, faults := Read("driploop.yaml", []byte(text))
		assert.Equal(t, good, len(faults) == 0, "reading %s: %v", text, faults)
	}
}
