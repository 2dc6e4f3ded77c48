package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const loom = `
driploop: 1
job: {number: T-1, title: Leads in a loom}
vessel: {system: 12 V, earthing: negative-ground}
spaces:
  cabin: {kind: accommodation, ambient: 30 degC}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse}
  fan: {kind: blower, current: 4 A, load_kind: constant-current%s}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, size: 14 AWG, length: 200 mm}
  P2: {from: fuse.load, to: fan.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 2 m, sheath: none, route: [{space: cabin, length: 2 m, bundle: loom}]}
  N1: {from: fan.neg, to: house.neg, role: negative, size: 14 AWG, length: 2 m, sheath: none, route: [{space: cabin, length: 2 m, bundle: loom}]}
bundles:
  loom: {members: [P2, N1]%s}
`

func TestBundleIsUncountedUntilItSaysHowManyItHas(t *testing.T) {
	open := buildf(t, loom, "", "").Conductors["P2"]
	assert.Nil(t, open.BundleSize)
	assert.Nil(t, open.BundledA)
	require.Len(t, open.Open.Of("bundled_a"), 1)
	assert.Equal(t, "bundles.loom.carrying", open.Open.Of("bundled_a")[0].Field)

	counted := buildf(t, loom, "", ", carrying: 7").Conductors["P2"]
	assert.InDelta(t, 7, *counted.BundleSize, 0)
	// 33 CFR 183.425 Table 5: 14 AWG at 105 °C 35 A; note 2: 7 to 24 conductors 0.50.
	assert.InDelta(t, 17.5, *counted.BundledA, 1e-9)
}

func TestServiceIsDecidedByTheLoadsBehind(t *testing.T) {
	open := buildf(t, loom, "", "").Conductors["P2"]
	assert.Nil(t, open.ForBlower)
	assert.Equal(t, "components.fan.purpose", open.Open.Of("for_blower")[0].Field)

	assert.True(t, *buildf(t, loom, ", purpose: blower", "").Conductors["N1"].ForBlower)
	assert.False(t, *buildf(t, loom, ", purpose: ventilation", "").Conductors["P1"].ForBlower)
}
