package rules

import (
	"encoding/json"
	"os/exec"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ofAYard are rules that a yard could have: one that compares by a helper and a
// limit of its own, one that says what it applies to.
const (
	lineLong = `# METADATA
# title: Line long
# description: Something could happen.
# schemas:
#   - input: schema.facts
# custom:
#   id: stowage/line-long
#   severity: caution
#   subject: conductors
#   applies: every conductor
#   needs: [length_mm]
#   says: "{length} long"
#   remedy: "Shorten it."
#   sources: [{set: yard, source: common-practice, clause: "", asks: "short lines", trust: practice}]
#   since: 0.1.0
package driploop.yard.stowage.line_long

limits := {"yard": {"length_mm": 3000}}

breach contains {"set": "yard", "subject": id, "figures": {"length_mm": c.length_mm}, "limit": {"length_mm": limits.yard.length_mm}} if {
	some id, c in input.conductors
	long(c.length_mm)
}

long(mm) if mm > limits.yard.length_mm
`
	deviceKind = `# METADATA
# title: Device of a kind that is not in store
# description: Nobody can replace it at sea.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-not-in-store
#   severity: notice
#   subject: devices
#   applies: every fuse
#   needs: []
#   says: "a {kind}"
#   remedy: "Fit a breaker."
#   sources: [{set: yard, source: common-practice, clause: "", asks: "breakers", trust: practice}]
#   since: 0.1.0
package driploop.yard.protection.device_not_in_store

applies contains {"subject": id} if {
	some id, device in input.devices
	device.kind == "fuse"
}

breach contains {"subject": id, "figures": {"kind": device.kind}, "limit": {}} if {
	some id, device in input.devices
	device.kind == "fuse"
}
`
)

func withYard(t *testing.T) *Engine {
	t.Helper()
	folders := []*Folder{
		{Path: "house-rules", Files: fstest.MapFS{"stowage/line_long.rego": {Data: []byte(lineLong)}}},
		{Path: "more", Files: fstest.MapFS{"protection/device_not_in_store.rego": {Data: []byte(deviceKind)}}},
	}
	e, err := NewWith(folders...)
	require.NoError(t, err)
	require.NoError(t, e.load(e.rules))
	return e
}

// TestStockOPAFindsTheSameByTheRulesOfAYard has the program opa evaluate a bundle
// with the rules of a yard, ours beside them.
func TestStockOPAFindsTheSameByTheRulesOfAYard(t *testing.T) {
	opa, engine := stockOPA(t), withYard(t)
	path := bundleOf(t, engine)
	docs, texts := someFacts(t)
	found := 0
	for name, doc := range docs {
		value := byBundle(t, opa, path, name, texts[name])
		sameFindings(t, name, engine, engine.input(engine.list(doc)), value)
		yards := value["yard"].(map[string]any)
		found += len(yards["stowage"].(map[string]any)["line_long"].(map[string]any)["breach"].([]any))
		found += len(yards["protection"].(map[string]any)["device_not_in_store"].(map[string]any)["breach"].([]any))
	}
	assert.NotZero(t, found, "no record shows the rules at work")
}

func TestTheBundleOfAYardHasANamespaceOfItsOwn(t *testing.T) {
	opa, engine := stockOPA(t), withYard(t)
	out, err := exec.Command(opa, "inspect", "--format", "json", bundleOf(t, engine)).CombinedOutput()
	require.NoError(t, err, "%s", out)
	var told struct {
		Manifest struct {
			Revision string
			Roots    []string
		}
		Namespaces map[string][]string
	}
	require.NoError(t, json.Unmarshal(out, &told))
	assert.Equal(t, engine.Digest(), told.Manifest.Revision)
	assert.ElementsMatch(t, []string{"driploop/binding", "driploop/rules", "driploop/yard"}, told.Manifest.Roots)
	assert.Equal(t, []string{"/yard/stowage/line_long.rego"}, told.Namespaces["data.driploop.yard.stowage.line_long"])
	for _, r := range readEngine(t).rules {
		assert.Len(t, told.Namespaces["data."+r.pkg], 1, "%s is ours alone", r.pkg)
	}
}
