package facts_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// two breakers on a bus: one feeds a windlass, the other a lamp and a radio; an
// alternator charges the bus through a fuse of its own.
const small = `
driploop: 1
job: {number: T-1, title: Small circuits}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V, internal_resistance: 5 mohm}
  main: {kind: fuse, rating: 150 A}
  bus: {kind: busbar}
  ground-bus: {kind: busbar}
  winch-breaker: {kind: breaker, rating: 80 A}
  cabin-breaker: {kind: breaker, rating: 15 A}
  winch: {kind: motor, current: 60 A}
  lamp: {kind: lamp, current: 2 A, purpose: cabin-light}
  radio: {kind: electronics, current: 5 A, purpose: radio}
  alternator: {kind: alternator, output: 50 A, output_at: 60 degC, voltage: 14.2 V%s}
  alternator-fuse: {kind: fuse, rating: 70 A}
  lamp-switch: {kind: switch, opens: grounded}
conductors:
  P1: {from: house.pos, to: main.line, role: positive, size: 1/0 AWG, insulation: 105 degC, length: 150 mm}
  P2: {from: main.load, to: bus.a, role: positive, size: 1/0 AWG, insulation: 105 degC, length: 300 mm}
  P3: {from: bus.b, to: winch-breaker.line, role: positive, size: 4 AWG, insulation: 105 degC, length: 200 mm}
  P4: {from: winch-breaker.load, to: winch.pos, role: positive, size: 4 AWG, insulation: 105 degC, length: 4 m, class: type-3, bend_radius: 100 mm, diameter: 10 mm}
  P5: {from: bus.c, to: cabin-breaker.line, role: positive, size: 14 AWG, insulation: 105 degC, length: 200 mm}
  P6: {from: cabin-breaker.load, to: lamp.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 2 m, strands: 1}
  P7: {from: cabin-breaker.load, to: radio.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 2 m}
  P8: {from: alternator.pos, to: alternator-fuse.line, role: positive, size: 6 AWG, insulation: 105 degC, length: 2 m}
  P9: {from: alternator-fuse.load, to: bus.d, role: positive, size: 6 AWG, insulation: 105 degC, length: 500 mm}
  N1: {from: winch.neg, to: ground-bus.a, role: negative, size: 4 AWG, insulation: 105 degC, length: 4 m}
  N2: {from: lamp.neg, to: lamp-switch.in, role: negative, size: 14 AWG, insulation: 105 degC, length: 2 m}
  N3: {from: lamp-switch.out, to: ground-bus.b, role: negative, size: 14 AWG, insulation: 105 degC, length: 2 m}
  N4: {from: radio.neg, to: ground-bus.b, role: negative, size: 14 AWG, insulation: 105 degC, length: 2 m}
  N5: {from: ground-bus.c, to: house.neg, role: negative, size: 6 AWG, insulation: 105 degC, length: 500 mm}
  N6: {from: alternator.neg, to: ground-bus.c, role: negative, size: 6 AWG, insulation: 105 degC, length: 1 m}
`

func TestDeviceKnowsWhatItFeeds(t *testing.T) {
	d := buildf(t, small, ", self_limiting: false").Devices
	assert.Equal(t, []string{"winch"}, d["winch-breaker"].Loads)
	assert.True(t, *d["winch-breaker"].Motor)
	// 80 A against 60 A.
	assert.InDelta(t, 133.333333333, *d["winch-breaker"].MotorPct, 1e-6)
	assert.False(t, *d["main"].Motor, "it feeds more than the winch")
	assert.False(t, *d["cabin-breaker"].Lighting, "a radio hangs on it too")
	assert.False(t, *d["cabin-breaker"].Steering)
}

func TestDeviceKnowsItsMachine(t *testing.T) {
	fuse := buildf(t, small, ", self_limiting: false").Devices["alternator-fuse"]
	assert.Equal(t, "alternator", fuse.Machine)
	assert.InDelta(t, 140, *fuse.MachinePct, 1e-9) // 70 A against 50 A
	assert.InDelta(t, 140, *fuse.MachineHotPct, 1e-9)
	assert.False(t, *fuse.MachineLimits)
	assert.Empty(t, buildf(t, small, "").Devices["winch-breaker"].Machine)
}

func TestOutputOfAChargingSource(t *testing.T) {
	c := buildf(t, small, ", self_limiting: false").Conductors
	assert.Equal(t, "alternator", c["P8"].OutputOf)
	assert.False(t, *c["P8"].OutputBare)
	assert.InDelta(t, 2000, *c["P8"].OutputMM, 1e-9)
	assert.False(t, *c["P8"].OutputLimits)
	assert.Empty(t, c["P9"].OutputOf)
	open := buildf(t, small, "").Conductors["P8"]
	assert.Equal(t, "components.alternator.self_limiting", open.Open.Of("output_limits")[0].Field)
}

func TestReturnIsBoundByTheDevicesOfItsCircuits(t *testing.T) {
	c := buildf(t, small, ", self_limiting: false").Conductors
	assert.InDelta(t, 80, *c["N1"].ReturnsA, 1e-9)
	assert.InDelta(t, 15, *c["N4"].ReturnsA, 1e-9)
	// 80 A of the winch and 15 A of the cabin, together under the main fuse of 150 A.
	assert.InDelta(t, 95, *c["N5"].ReturnsA, 1e-9)
	// 6 AWG at 105 °C may carry 120 A: 33 CFR 183.425 Table 5.
	assert.InDelta(t, 100*95/120.0, *c["N5"].ReturnsTable5Pct, 1e-6)
	assert.Nil(t, c["P2"].ReturnsA)
	// Of the feeds P5 stands worst: 14 AWG, 35 A by Table 5, behind the fuses of
	// battery and alternator side by side, 150 + 70 A.
	assert.InDelta(t, 100*220/35.0, *c["N5"].FeedsTable5Pct, 1e-6)
	assert.True(t, *c["N5"].Returns)
	assert.False(t, *c["N6"].Returns, "the alternator is no load")
}

func TestLoadKnowsWhatSharesItsDevice(t *testing.T) {
	l := buildf(t, small, "").Loads
	assert.Equal(t, "cabin-breaker", *l["radio"].OwnDevice)
	assert.Equal(t, "lamp", l["radio"].SharedWith)
	assert.True(t, *l["radio"].Mixed)
	assert.Empty(t, l["winch"].SharedWith)
	assert.True(t, *l["radio"].PosProtected)
	assert.True(t, *l["radio"].NegProtected, "a grounded pole feeds no fault")
	insulated := build(t, strings.Replace(strings.Replace(small, "%s", "", 1), "negative-ground", "insulated", 1)).Loads
	assert.False(t, *insulated["radio"].NegProtected)
}

func TestOpenerOnTheGroundedSide(t *testing.T) {
	c := buildf(t, small, "").Components
	assert.True(t, *c["lamp-switch"].OnGrounded)
	assert.False(t, *c["winch-breaker"].OnGrounded)
	assert.False(t, c["bus"].Opener)
}

func TestConductorKnowsHowItIsMade(t *testing.T) {
	c := buildf(t, small, "").Conductors
	assert.True(t, *c["P4"].Stranded)
	assert.InDelta(t, 10, *c["P4"].BendDiameters, 1e-9)
	assert.False(t, *c["P6"].Stranded)
	require.NotEmpty(t, c["P1"].Open.Of("stranded"))
	assert.Equal(t, "conductors.P1.class", c["P1"].Open.Of("stranded")[0].Field)
}

func TestDevicesInParallel(t *testing.T) {
	d := build(t, `
driploop: 1
job: {number: T-1, title: Heater on two breakers}
vessel: {system: 12 V}
components:
  house: {kind: battery}
  left: {kind: breaker}
  right: {kind: breaker}
  other: {kind: breaker}
  heater: {kind: heater}
  lamp: {kind: lamp}
conductors:
  P1: {from: house.pos, to: left.line, role: positive}
  P2: {from: left.line, to: right.line, role: positive}
  P3: {from: left.load, to: heater.pos, role: positive}
  P4: {from: heater.pos, to: right.load, role: positive}
  P5: {from: right.line, to: other.line, role: positive}
  P6: {from: other.load, to: lamp.pos, role: positive}
`).Devices
	assert.Equal(t, "right", d["left"].Parallel)
	assert.Equal(t, "left", d["right"].Parallel)
	assert.Empty(t, d["other"].Parallel)
}

// Two batteries on one bus, each with a fuse: what hangs on no device of its own is
// limited by both together, and the negative of each battery by its own fuse.
func TestReturnOfParallelSources(t *testing.T) {
	c := build(t, `
driploop: 1
job: {number: T-1, title: Two batteries}
vessel: {system: 12 V, earthing: negative-ground}
components:
  b1: {kind: battery, nominal: 12 V, internal_resistance: 5 mohm}
  b2: {kind: battery, nominal: 12 V, internal_resistance: 5 mohm}
  f1: {kind: fuse, rating: 100 A}
  f2: {kind: fuse, rating: 80 A}
  cb: {kind: breaker, rating: 20 A}
  bus: {kind: busbar}
  neg: {kind: busbar}
  lamp: {kind: lamp, current: 2 A}
  heater: {kind: heater, current: 30 A}
conductors:
  P1: {from: b1.pos, to: f1.line, role: positive, size: 4 AWG, length: 150 mm}
  P2: {from: f1.load, to: bus.a, role: positive, size: 4 AWG, length: 1 m}
  P3: {from: b2.pos, to: f2.line, role: positive, size: 4 AWG, length: 150 mm}
  P4: {from: f2.load, to: bus.b, role: positive, size: 4 AWG, length: 2 m}
  P5: {from: bus.c, to: cb.line, role: positive, size: 10 AWG, length: 1 m}
  P6: {from: cb.load, to: lamp.pos, role: positive, size: 14 AWG, length: 1 m}
  P7: {from: bus.d, to: heater.pos, role: positive, size: 6 AWG, length: 1 m}
  N1: {from: b1.neg, to: neg.a, role: negative, size: 4 AWG, length: 1 m}
  N2: {from: b2.neg, to: neg.b, role: negative, size: 4 AWG, length: 1 m}
  N6: {from: lamp.neg, to: neg.c, role: negative, size: 14 AWG, length: 1 m}
  N7: {from: heater.neg, to: neg.d, role: negative, size: 6 AWG, length: 1 m}
`).Conductors
	assert.InDelta(t, 180, *c["P7"].GuardA, 1e-9)
	assert.InDelta(t, 180, *c["N7"].ReturnsA, 1e-9)
	assert.InDelta(t, 20, *c["N6"].ReturnsA, 1e-9)
	assert.InDelta(t, 100, *c["N1"].ReturnsA, 1e-9)
}

// A device that the record says is for charging, and no load behind it, feeds
// neither lights nor steering; of one without that word nothing is known.
func TestDeviceOfAChargingSourceFeedsNoLoad(t *testing.T) {
	charging := `
driploop: 1
job: {number: T-1}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V}
  main: {kind: fuse, rating: 60 A%s}
  charger: {kind: charger, nominal: 12 V, output: 50 A}
conductors:
  P1: {from: charger.pos, to: main.line, role: positive, size: 6 AWG, length: 1 m}
  P2: {from: main.load, to: house.pos, role: positive, size: 6 AWG, length: 1 m}
  N1: {from: charger.neg, to: house.neg, role: negative, size: 6 AWG, length: 1 m}
`
	stated := buildf(t, charging, ", duty: charging").Devices["main"]
	assert.False(t, *stated.Lighting)
	assert.False(t, *stated.Steering)
	assert.Nil(t, buildf(t, charging, "").Devices["main"].Lighting)
}
