package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const bonded = `
driploop: 1
job: {number: T-1, title: Bonding}
vessel: {system: 12 V}
components:
  house: {kind: battery}
  winch: {kind: motor, metal_case: true}
  pump: {kind: pump, metal_case: true, bonded: false}
  lamp: {kind: lamp, metal_case: true, bonded: true}
  plate: {kind: ground}
  cock: {kind: ground}
conductors:
  P1: {from: house.pos, to: winch.pos, role: positive, size: 2/0 AWG}
  N1: {from: winch.neg, to: house.neg, role: negative, size: 1 AWG}
  P2: {from: house.pos, to: pump.pos, role: positive, size: 6 mm2}
  N2: {from: pump.neg, to: house.neg, role: negative}
  G1: {from: winch.case, to: plate.a, role: bonding, size: 8 AWG}
  G2: {from: cock.a, to: plate.b, role: bonding, size: 8 AWG}
  G3: {from: pump.case, to: plate.c, role: bonding, size: 4 mm2}
`

// One size below 2/0 AWG is 1/0 AWG, of 53.48 mm² nominal (ASTM B258).
func TestBondingOfACaseKnowsItsFeed(t *testing.T) {
	d := build(t, bonded).Conductors
	assert.True(t, d["G1"].OnCase)
	assert.InDelta(t, 53.48, *d["G1"].CaseLeastMM2, 1e-9)
	assert.False(t, d["G2"].OnCase)
	assert.Nil(t, d["G2"].CaseLeastMM2)
	assert.Nil(t, d["G3"].CaseLeastMM2, "N2 may be the larger")
	assert.Equal(t, "conductors.N2.size", d["G3"].Open.Of("case_least_mm2")[0].Field)
}

func TestCaseIsBondedByFlagOrConductor(t *testing.T) {
	d := build(t, bonded).Components
	assert.True(t, *d["winch"].CaseBonded)
	assert.True(t, *d["pump"].CaseBonded, "the conductor on it counts")
	assert.True(t, *d["lamp"].CaseBonded)
	assert.Nil(t, d["house"].CaseBonded)
}
