package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// two bilge pumps of 4 A and 5 A share a fuse of 10 A and 16 AWG of 105 °C, whose
// Table 5 value is 25 A (33 CFR 183.425).
const pumped = `
driploop: 1
job: {number: T-1, title: Pumps}
vessel: {system: 12 V, earthing: negative-ground}
spaces:
  cabin: {kind: accommodation, ambient: 30 degC}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse, rating: %s}
  bar: {kind: busbar}
  fore: {kind: pump, purpose: bilge-pump, current: 4 A}
  aft: {kind: pump, current: 5 A%s}
  blower: {kind: blower, current: 20 A}
conductors:
  P1: &wire {from: house.pos, to: fuse.line, role: positive, size: 16 AWG, insulation: 105 degC, length: 2 m, route: [{space: cabin, length: 2 m}]}
  P2: {<<: *wire, from: fuse.load, to: bar.a}
  P3: {<<: *wire, from: bar.b, to: fore.pos}
  P4: {<<: *wire, from: bar.c, to: aft.pos}
  P5: {<<: *wire, from: bar.d, to: blower.pos}
  N1: {<<: *wire, from: fore.neg, to: house.neg, role: negative}
  N2: {<<: *wire, from: aft.neg, to: house.neg, role: negative}
  N3: {<<: *wire, from: blower.neg, to: house.neg, role: negative}
`

func TestPumpsTogetherOnWhatTheyShare(t *testing.T) {
	v := buildf(t, pumped, "10 A", ", purpose: bilge-pump").Vessel
	assert.Equal(t, 2, *v.BilgePumps)
	// 9 A of 10 A; the conductor takes 9 A of 25 A, the blower aside.
	assert.InDelta(t, 90, *v.PumpsSharePct, 1e-6)
	assert.Equal(t, "fuse fuse", *v.PumpsAt)

	v = buildf(t, pumped, "100 A", ", purpose: bilge-pump").Vessel
	assert.InDelta(t, 36, *v.PumpsSharePct, 1e-6)
	assert.Equal(t, "conductor P1", *v.PumpsAt)
}

func TestPumpWithoutPurposeLeavesTheirNumberOpen(t *testing.T) {
	v := buildf(t, pumped, "unknown", "").Vessel
	assert.Nil(t, v.BilgePumps)
	assert.Equal(t, 2, v.BilgePumpsMost)
	assert.Equal(t, "components.aft.purpose", v.Open.Of("bilge_pumps")[0].Field)
	require.Nil(t, v.PumpsSharePct)
	assert.Equal(t, "components.fuse.rating", v.Open.Of("pumps_share_pct")[0].Field)
}
