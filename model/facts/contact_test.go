package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// one switch feeds a lamp with an inrush, one without, a fan and a heater; a rocker
// works a coil.
const contacts = `
driploop: 1
job: {number: T-1, title: Contacts}
vessel: {system: 12 V, earthing: negative-ground}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse}
  switch: {kind: switch, continuous: 40 A, duty: motor}
  rocker: {kind: switch, duty: motor-control, continuous: 10 A, links: [{between: [in, out], rating: 6 A, when: "on"}, {between: [in, spare], when: "off"}]}
  relay: {kind: relay, continuous: 30 A, links: [{between: [in, out], rating: 50 A, when: "on"}], coils: [{between: [coil, ground], current: 0.5 A, when: "on"}]}
  old-lamp: {kind: lamp, current: 2 A, starting: 20 A}
  new-lamp: {kind: lamp, current: 1 A, starting: 1 A}
  fan: {kind: blower, current: 3 A, stall: 9 A}
  heater: {kind: heater, current: 8 A}
  pump: {kind: pump, current: 12 A, stall: 40 A}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, size: 6 AWG, insulation: 105 degC, length: 150 mm}
  P2: {from: fuse.load, to: switch.in, role: positive, size: 10 AWG, insulation: 105 degC, length: 1 m}
  P3: {from: switch.out, to: old-lamp.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 1 m}
  P4: {from: switch.out, to: new-lamp.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 1 m}
  P5: {from: switch.out, to: fan.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 1 m}
  P6: {from: switch.out, to: heater.pos, role: positive, size: 14 AWG, insulation: 105 degC, length: 1 m}
  P7: {from: fuse.load, to: relay.in, role: positive, size: 10 AWG, insulation: 105 degC, length: 1 m}
  P8: {from: relay.out, to: pump.pos, role: positive, size: 10 AWG, insulation: 105 degC, length: 1 m}
  C1: {from: fuse.load, to: rocker.in, role: control, size: 16 AWG, insulation: 105 degC, length: 1 m}
  C2: {from: rocker.out, to: relay.coil, role: control, size: 16 AWG, insulation: 105 degC, length: 1 m}
  N1: {from: old-lamp.neg, to: house.neg, role: negative, size: 14 AWG, insulation: 105 degC, length: 1 m}
  N2: {from: new-lamp.neg, to: house.neg, role: negative, size: 14 AWG, insulation: 105 degC, length: 1 m}
  N3: {from: fan.neg, to: house.neg, role: negative, size: 14 AWG, insulation: 105 degC, length: 1 m}
  N4: {from: heater.neg, to: house.neg, role: negative, size: 14 AWG, insulation: 105 degC, length: 1 m}
  N5: {from: pump.neg, to: house.neg, role: negative, size: 10 AWG, insulation: 105 degC, length: 1 m}
  N6: {from: relay.ground, to: house.neg, role: negative, size: 16 AWG, insulation: 105 degC, length: 1 m}
`

func TestContactSumsWhatItSwitchesByKind(t *testing.T) {
	all := build(t, contacts).Contacts
	require.Contains(t, all, "switch")
	s := all["switch"]
	assert.Equal(t, "components.switch", s.Path)
	assert.InDelta(t, 14, *s.CurrentA, 1e-6)
	assert.InDelta(t, 2, *s.LampsA, 1e-6, "the lamp with a cold filament")
	assert.InDelta(t, 3, *s.MotorsA, 1e-6)
	assert.InDelta(t, 9, *s.PlainA, 1e-6, "the heater and the lamp without an inrush")
	assert.Zero(t, *s.CoilsA)
	assert.InDelta(t, 40, *s.RatingA, 1e-6)
	assert.InDelta(t, 12, *s.NominalV, 1e-6)
}

func TestContactOfALinkIsRatedByTheLesser(t *testing.T) {
	all := build(t, contacts).Contacts
	relay := all["relay.links[0]"]
	require.NotNil(t, relay)
	assert.Equal(t, "components.relay.links[0]", relay.Path)
	assert.InDelta(t, 30, *relay.RatingA, 1e-6, "the relay's own, not the 50 A of its link")
	assert.InDelta(t, 12, *relay.MotorsA, 1e-6)

	work := all["rocker.links[0]"]
	assert.InDelta(t, 6, *work.RatingA, 1e-6)
	assert.InDelta(t, 0.5, *work.CoilsA, 1e-6, "nothing but the coil")
	spare := all["rocker.links[1]"]
	assert.Nil(t, spare.RatingA)
	assert.Equal(t, "components.rocker.links[1].rating", spare.Open.Of("rating_a")[0].Field)
}
