package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const digested = `driploop: 1
job: {number: D-1, title: Cabin fan, completed: 2026-06-16}
vessel: {system: 12 V, length: 24 ft}
spaces:
  cabin: {kind: accommodation, exposure: dry}
components:
  house: {kind: battery, space: cabin}
  fan: {kind: blower, space: cabin, current: unknown}
conductors:
  P1: {from: house.pos, to: fan.pos, role: positive, size: 14 AWG, length: 2 m, route: [{space: cabin, length: 2 m}], ends: {from: {terminal: ring, torque_range: [2 N.m, 3 N.m]}}}
  N1: {from: fan.neg, to: house.neg, role: negative}
tests:
  - {kind: function, load: fan, result: pass, on: 2026-06-17}
sign_off: {by: bench-2, on: 2026-06-18}
`

func digestOf(t *testing.T, text string) string {
	t.Helper()
	r, faults := Decode("digest.yaml", []byte(text))
	require.Empty(t, faults, text)
	return Digest(r)
}

func changed(t *testing.T, pairs ...string) string {
	t.Helper()
	require.Contains(t, digested, pairs[0])
	return strings.NewReplacer(pairs...).Replace(digested)
}

func TestDigestStaysWithWhatIsSaid(t *testing.T) {
	want := digestOf(t, digested)
	assert.Regexp(t, `^sha256:[0-9a-f]{64}$`, want)
	for name, text := range map[string]string{
		"comment and blank line": changed(t, "spaces:\n", "# a remark\n\nspaces:\n"),
		"another unit":           changed(t, "length: 24 ft", "length: 288 in"),
		"order of entries": changed(t, "  house: {kind: battery, space: cabin}\n  fan: {kind: blower, space: cabin, current: unknown}\n",
			"  fan: {current: unknown, kind: blower, space: cabin}\n  house: {kind: battery, space: cabin}\n"),
		"anchor and alias": changed(t, "space: cabin, length: 2 m", "space: &here cabin, length: 2 m", "kind: blower, space: cabin", "kind: blower, space: cabin"),
		"sign-off":         changed(t, "on: 2026-06-18}", "on: 2026-06-19, digest: sha256:00}"),
		"waiver":           digested + "waivers: [{rule: routing/ties-as-support, at: conductors.P1, reason: sheathed, by: foreman, until: 2027-01-01}]\n",
	} {
		assert.Equal(t, want, digestOf(t, text), name)
	}
}

func TestDigestChangesWithEachValue(t *testing.T) {
	seen := map[string]string{digestOf(t, digested): "the record itself"}
	for name, text := range map[string]string{
		"text":             changed(t, "title: Cabin fan", "title: Cabin fans"),
		"date":             changed(t, "completed: 2026-06-16", "completed: 2026-06-15"),
		"quantity":         changed(t, "length: 24 ft", "length: 25 ft"),
		"unknown left out": changed(t, ", current: unknown", ""),
		"unknown filled":   changed(t, "current: unknown", "current: 2 A"),
		"size":             changed(t, "14 AWG", "16 AWG"),
		"terminal":         changed(t, "N1: {from: fan.neg", "N1: {from: fan.case"),
		"segment":          changed(t, "route: [{space: cabin, length: 2 m}]", "route: [{space: cabin, length: 1 m}]"),
		"end":              changed(t, "terminal: ring", "terminal: spade"),
		"span":             changed(t, "[2 N.m, 3 N.m]", "[2 N.m, 4 N.m]"),
		"test":             changed(t, "result: pass", "result: fail"),
		"empty entry":      changed(t, "components:\n", "  locker: {}\ncomponents:\n"),
		"id":               changed(t, "N1: {from", "N2: {from"),
		"practice":         digested + "practice: [workmanship]\n",
	} {
		digest := digestOf(t, text)
		assert.Empty(t, seen[digest], "%s gives the digest of %s", name, seen[digest])
		seen[digest] = name
	}
}
