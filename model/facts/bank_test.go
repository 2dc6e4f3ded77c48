package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBankSumsBatteriesInParallel(t *testing.T) {
	d := build(t, `
driploop: 1
job: {number: T-1, title: Two batteries in parallel}
vessel: {system: 12 V, earthing: negative-ground}
components:
  one: {kind: battery, nominal: 12 V, capacity: 100 Ah, internal_resistance: 4 mohm}
  two: {kind: battery, nominal: 12 V, capacity: 80 Ah, internal_resistance: 6 mohm}
  fuse: {kind: fuse}
  lamp: {kind: lamp}
conductors:
  P1: {from: one.pos, to: fuse.line, role: positive}
  P2: {from: two.pos, to: one.pos, role: positive}
  P3: {from: fuse.load, to: lamp.pos, role: positive}
  N1: {from: lamp.neg, to: one.neg, role: negative}
  N2: {from: two.neg, to: one.neg, role: negative}
`)
	fuse := d.Devices["fuse"]
	assert.InDelta(t, 180, *fuse.BankAh, 1e-9)
	// 12.6 V open circuit: 12.6/0.004 + 12.6/0.006 = 3150 + 2100.
	assert.InDelta(t, 5250, *fuse.BankShortA, 1e-6)
}

func TestBankInSeriesDoesNotAddUp(t *testing.T) {
	d := build(t, `
driploop: 1
job: {number: T-1, title: Two batteries in series}
vessel: {system: 24 V, earthing: negative-ground}
components:
  upper: {kind: battery, nominal: 12 V, capacity: 100 Ah, internal_resistance: 4 mohm}
  lower: {kind: battery, nominal: 12 V, capacity: 100 Ah, internal_resistance: 4 mohm}
  fuse: {kind: fuse}
  lamp: {kind: lamp}
conductors:
  P1: {from: upper.pos, to: fuse.line, role: positive}
  B1: {from: lower.pos, to: upper.neg, role: positive}
  P3: {from: fuse.load, to: lamp.pos, role: positive}
  N1: {from: lamp.neg, to: lower.neg, role: negative}
`)
	fuse := d.Devices["fuse"]
	assert.InDelta(t, 100, *fuse.BankAh, 1e-9)
	assert.InDelta(t, 3150, *fuse.BankShortA, 1e-6)
}

func TestBankShortCircuitNeverRestsOnAnEstimate(t *testing.T) {
	d := build(t, `
driploop: 1
job: {number: T-1, title: No resistance recorded}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V, cranking: 800 A}
  fuse: {kind: fuse}
  lamp: {kind: lamp}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive}
  P2: {from: fuse.load, to: lamp.pos, role: positive}
  N1: {from: lamp.neg, to: house.neg, role: negative}
`)
	fuse := d.Devices["fuse"]
	assert.Nil(t, fuse.BankShortA)
	assert.Equal(t, "components.house.internal_resistance", fuse.Open.Of("bank_short_a")[0].Field)
	assert.Nil(t, fuse.BankAh)
	assert.Equal(t, "components.house.capacity", fuse.Open.Of("bank_ah")[0].Field)
}

// The leads between a reversing controller and its motor stand at either pole.
// Whether the negative one feeds a fault depends on the earthing.
func TestBareFromAPoleThatMayBeGroundedIsOpen(t *testing.T) {
	record := `
driploop: 1
job: {number: T-1, title: Reversing motor}
vessel: {system: 12 V%s}
components:
  house: {kind: battery}
  fuse: {kind: fuse}
  box:
    kind: controller
    links:
      - {between: [supply, a], when: up}
      - {between: [b, return], when: up}
      - {between: [supply, b], when: down}
      - {between: [a, return], when: down}
  motor: {kind: motor}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive}
  P2: {from: fuse.load, to: box.supply, role: positive}
  P3: {from: box.a, to: motor.pos, role: positive}
  P4: {from: box.b, to: motor.neg, role: positive}
  N1: {from: box.return, to: house.neg, role: negative}
`
	open := buildf(t, record, "").Conductors["P3"]
	assert.Nil(t, open.Bare)
	assert.Equal(t, "vessel.earthing", open.Open.Of("bare")[0].Field)

	grounded := buildf(t, record, ", earthing: negative-ground").Conductors["P3"]
	assert.False(t, *grounded.Bare)

	insulated := buildf(t, record, ", earthing: insulated").Conductors["P3"]
	assert.True(t, *insulated.Bare)
	assert.Equal(t, "house.neg", insulated.BareFrom)
}

func TestShortedNetworkProvesNoConductorBareOrUngrounded(t *testing.T) {
	c := build(t, `
driploop: 1
job: {number: T-1, title: Negative joined to positive}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V, internal_resistance: 5 mohm}
  fuse: {kind: fuse}
  lamp: {kind: lamp}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, size: 4 AWG, insulation: 105 degC, length: 1 m}
  P2: {from: fuse.load, to: lamp.pos, role: positive, size: 4 AWG, insulation: 105 degC, length: 1 m}
  P3: {from: lamp.pos, to: lamp.neg, role: positive, size: 4 AWG, insulation: 105 degC, length: 1 m}
  N1: {from: lamp.neg, to: house.neg, role: negative, size: 4 AWG, insulation: 105 degC, length: 1 m}
`).Conductors["N1"]
	assert.Nil(t, c.Ungrounded)
	assert.Nil(t, c.Bare)
	assert.Contains(t, c.Open.Of("bare")[0].Why, "short-circuited")
}
