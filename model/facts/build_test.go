package facts_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// build returns the facts of a record in YAML.
func build(t *testing.T, text string) *facts.Document {
	t.Helper()
	r, faults := record.Decode("test.yaml", []byte(text))
	require.Empty(t, faults)
	return facts.Build(r, circuit.Analyse(r))
}

// buildf is build with places of the text filled in.
func buildf(t *testing.T, text string, with ...any) *facts.Document {
	t.Helper()
	return build(t, fmt.Sprintf(text, with...))
}
