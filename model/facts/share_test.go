package facts_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

const pair = `
driploop: 1
job: {number: T-1, title: Leads in parallel}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse}
  lamp: {kind: lamp, current: 3 A, load_kind: constant-current}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, size: 4 AWG, length: 150 mm}
  P2: {from: fuse.load, to: lamp.pos, role: positive, size: 10 AWG, length: 1 m}
  P3: {from: lamp.pos, to: fuse.load, role: positive, size: 10 AWG, length: 1.5 m}
  N1: {from: lamp.neg, to: house.neg, role: negative, size: 10 AWG, length: 1 m, twisted: false, spacing: 100 mm, compass_distance: 400 mm}
`

func TestParallelConductorsShareByTheirResistance(t *testing.T) {
	c := build(t, pair).Conductors
	assert.Equal(t, "P3", c["P2"].ParallelWith)
	// Of lengths 1 and 1.5 the shorter takes 0.6 of the current: 20 % off a half.
	assert.InDelta(t, 20, *c["P2"].ShareOffPct, 1e-9)
	assert.InDelta(t, 20, *c["P3"].ShareOffPct, 1e-9)
	assert.Empty(t, c["P1"].ParallelWith)
}

func TestCompassTurnOfAPair(t *testing.T) {
	// B = 200·3·100/(400² − 100²/4) = 0.38095 µT in a horizontal field of 18 µT.
	want := math.Asin(200*3*100/(400.0*400-100*100/4)/18) * 180 / math.Pi
	assert.InDelta(t, want, *build(t, pair).Conductors["N1"].CompassTurnDeg, 1e-9)
	assert.Nil(t, build(t, pair).Conductors["P1"].CompassTurnDeg)
}
