package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const winchParts = `
	bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
	fuse: kind: fuse, rating: 60 A
	box: kind: relay, links: [{between: [supply, a], when: up}, {between: [b, return], when: up}, {between: [supply, b], when: down}, {between: [a, return], when: down}], coils: [{between: [up, return], current: 1 A, when: up}, {between: [down, return], current: 1 A, when: down}]
	rocker: kind: switch, links: [{between: [in, up], when: up}, {between: [in, down], when: down}]
	winch: kind: motor, current: 35 A, stall: 110 A`

const winchWires = `
	P1: bat.pos > fuse.line, 6 AWG, 100 mm
	P2: fuse.load > box.supply, 6 AWG, 1 m
	P3: box.a > winch.pos, 6 AWG, 1 m
	N1: box.b > winch.neg, 6 AWG, 1 m, negative
	N2: box.return > bat.neg, 6 AWG, 1 m, negative
	C1: fuse.load > rocker.in, 14 AWG, 1 m, control
	C2: rocker.up > box.up, 14 AWG, 1 m, control
	C3: rocker.down > box.down, 14 AWG, 1 m, control`

// Each contact of the relay carries the motor, each of the switch one coil.
func TestContactsCarryWhatTheirCommandNeeds(t *testing.T) {
	a := analyse(t, boat, winchParts, winchWires)
	box := a.Components["box"].Contacts
	require.Len(t, box, 4)
	for i, c := range box {
		assert.Equal(t, "components.box.links["+string(rune('0'+i))+"]", c.Path)
		assert.NotNil(t, c.Link)
		assert.InDelta(t, 35, known(t, c.Through), 1e-6)
		assert.InDelta(t, 110, known(t, c.Surge), 1e-6)
		assert.Equal(t, []string{"winch"}, c.Loads)
	}
	rocker := a.Components["rocker"].Contacts
	require.Len(t, rocker, 2)
	for _, c := range rocker {
		assert.InDelta(t, 1, known(t, c.Through), 1e-6, "one coil")
		assert.Empty(t, c.Loads)
	}
	assert.Empty(t, a.Components["fuse"].Contacts)
}

func TestContactWithoutLinksIsItsComponent(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		sw: kind: switch
		lamp: kind: lamp, current: 4 A, starting: 20 A
		fan: kind: blower, current: 3 A`, `
		P1: bat.pos > sw.in, 10 AWG, 100 mm
		P2: sw.out > lamp.pos, 14 AWG, 1 m
		P3: sw.out > fan.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative
		N2: fan.neg > bat.neg, 14 AWG, 1 m, negative`)
	contacts := a.Components["sw"].Contacts
	require.Len(t, contacts, 1)
	assert.Equal(t, "components.sw", contacts[0].Path)
	assert.Nil(t, contacts[0].Link)
	assert.InDelta(t, 7, known(t, contacts[0].Through), 1e-6)
	assert.Equal(t, []string{"lamp", "fan"}, contacts[0].Loads)
	require.False(t, contacts[0].Surge.Known, "the fan may stall")
	assert.Equal(t, "components.fan.stall", contacts[0].Surge.Gaps[0].Field)
}
