package facts_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const windlass = `
driploop: 1
job: {number: T-1, title: Windlass}
vessel: {system: 12 V, earthing: negative-ground}
spaces:
  cabin: {kind: accommodation, ambient: 30 degC}
components:
  house: {kind: battery, nominal: 12 V, internal_resistance: 3 mohm}
  main: {kind: fuse, rating: 300 A, curve: bolt-in}
  fuse: {kind: fuse, rating: 60 A, curve: blade-e}
  windlass: {kind: motor, current: 40 A, stall: 120 A, run_time: 3 min, load_kind: constant-current%s}
  lamp: {kind: lamp}
conductors:
  P1: {from: house.pos, to: main.line, role: positive, size: 2 AWG, insulation: 105 degC, length: 150 mm, route: [{space: cabin, length: 150 mm}]}
  P2: {from: main.load, to: fuse.line, role: positive, size: 2 AWG, insulation: 105 degC, length: 150 mm, route: [{space: cabin, length: 150 mm}]}
  P3: {from: fuse.load, to: windlass.pos, role: positive, size: 2 AWG, insulation: 105 degC, length: 4 m, route: [{space: cabin, length: 4 m}]}
  N1: {from: windlass.neg, to: house.neg, role: negative, size: 2 AWG, insulation: 105 degC, length: 4 m, route: [{space: cabin, length: 4 m}]}
`

func TestStallIsCutByTheDeviceOrByTheProtector(t *testing.T) {
	// 120 A is twice 60 A: a fuse of type E opens there within 50 s.
	none := buildf(t, windlass, ", protector: none").Loads["windlass"]
	assert.True(t, *none.StallCut)
	assert.InDelta(t, 50, *none.StallCutS, 1e-9)
	assert.Equal(t, "components.windlass.motor_limit", none.Open.Of("motor_limit_s")[0].Field)

	thermal := buildf(t, windlass, ", protector: thermal-auto, motor_limit: 20 s").Loads["windlass"]
	assert.InDelta(t, 20, *thermal.StallCutS, 1e-9)

	open := buildf(t, windlass, "").Loads["windlass"]
	assert.True(t, *open.StallCut, "the fuse alone cuts it")
	require.Nil(t, open.StallCutS)
	assert.Equal(t, "components.windlass.protector", open.Open.Of("stall_cut_s")[0].Field)

	assert.False(t, buildf(t, windlass, "").Loads["lamp"].Rotor)
}

func TestFaultIsJoinedToTheConductorsBehindADevice(t *testing.T) {
	c := buildf(t, windlass, ", protector: none").Conductors
	assert.False(t, *c["P1"].BehindDevice)
	assert.True(t, *c["P3"].BehindDevice)
	assert.True(t, *c["P3"].GuardFused)
	assert.True(t, *c["P3"].Clears)
	assert.Greater(t, *c["P3"].FaultA, *c["P3"].FaultLeastA)
	require.NotNil(t, c["P3"].LetThroughA2s)
	// k = 79.6 from 105 to 150 °C, for a compound that is not recorded; 2 AWG is
	// 33.62 mm².
	assert.InEpsilon(t, 79.6*79.6*33.62*33.62, *c["P3"].WithstandA2s, 0.005)
}

func TestDiscriminationWithTheDevicesAhead(t *testing.T) {
	d := buildf(t, windlass, ", protector: none").Devices
	assert.Equal(t, "alone", *d["main"].Discrimination)
	assert.Contains(t, []string{"sure", "either"}, *d["fuse"].Discrimination)
	assert.Empty(t, d["fuse"].OpensToo)
}

func TestHeatOfAStallIsOpenWithoutItsCurrent(t *testing.T) {
	record := strings.Replace(fmt.Sprintf(windlass, ""), "stall: 120 A, ", "", 1)
	c := build(t, record).Conductors["P3"]
	assert.Nil(t, c.StallC)
	assert.Equal(t, "components.windlass.stall", c.Open.Of("stall_degc")[0].Field)
}
