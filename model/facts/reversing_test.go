package facts_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// a winch on a reversing box, commanded from helm and bow; the fuse and the plug
// of the control circuit pass the command on.
const reversed = `
driploop: 1
job: {number: T-1, title: Winch}
vessel: {system: 12 V}
components:
  house: {kind: battery}
  bus: {kind: busbar}
  helm: {kind: switch, links: [{between: [supply, up], when: up}, {between: [supply, down], when: down}]}
  foot-up: {kind: switch}
  plug: {kind: connector}
  box:
    kind: relay
    interlocked: true
    links:
      - {between: [supply, a], when: up}
      - {between: [b, return], when: up}
      - {between: [supply, b], when: down}
      - {between: [a, return], when: down}
    coils: [{between: [up, return], when: up}, {between: [down, return], when: down}]
  winch: {kind: motor}
  pump: {kind: pump}
conductors:
  P1: {from: bus.a, to: box.supply, role: positive}
  N1: {from: box.return, to: house.neg, role: negative}
  M1: {from: box.a, to: plug.in, role: positive}
  M3: {from: plug.out, to: winch.pos, role: positive}
  M2: {from: box.b, to: winch.neg, role: negative}
  C1: {from: bus.b, to: helm.supply, role: control}
  C2: {from: helm.up, to: box.up, role: control}
  C3: {from: helm.down, to: box.down, role: control}
  C4: {from: bus.c, to: foot-up.in, role: control}
  C5: {from: foot-up.out, to: box.up, role: control}
`

func TestReversingCountsTheSwitchesThatCommand(t *testing.T) {
	winch := build(t, strings.Replace(reversed, "winch: {kind: motor}", "winch: {kind: motor, reversible: true}", 1)).Loads["winch"]
	require.NotNil(t, winch.Stations)
	assert.Equal(t, 2, *winch.Stations, "helm and foot-up")
	assert.True(t, *winch.Interlocked)
	assert.True(t, *winch.Reversible)
}

func TestOnlyMotorsAreAskedWhetherTheyReverse(t *testing.T) {
	loads := build(t, reversed).Loads
	assert.Nil(t, loads["winch"].Reversible)
	assert.Equal(t, "components.winch.reversible", loads["winch"].Open.Of("reversible")[0].Field)
	assert.False(t, *loads["pump"].Reversible)
	assert.Nil(t, loads["pump"].Stations, "nothing reverses it")
}

func TestReversingWithoutCoilsOrFlagIsOpen(t *testing.T) {
	text := strings.Replace(reversed, "    coils: [{between: [up, return], when: up}, {between: [down, return], when: down}]\n", "", 1)
	text = strings.NewReplacer("    interlocked: true\n", "", "to: box.up", "to: bus.d", "to: box.down", "to: bus.d").Replace(text)
	winch := build(t, text).Loads["winch"]
	assert.Nil(t, winch.Stations)
	assert.Equal(t, "components.box.coils", winch.Open.Of("stations")[0].Field)
	assert.Nil(t, winch.Interlocked)
	assert.Equal(t, "components.box.interlocked", winch.Open.Of("interlocked")[0].Field)
}

func TestHandSwitchIsItsOwnStation(t *testing.T) {
	winch := build(t, `
driploop: 1
job: {number: T-1, title: Winch}
vessel: {system: 12 V}
components:
  house: {kind: battery}
  lever:
    kind: switch
    interlocked: false
    links: [{between: [supply, a], when: in}, {between: [b, return], when: in}, {between: [supply, b], when: out}, {between: [a, return], when: out}]
  winch: {kind: motor, reversible: true}
conductors:
  P1: {from: house.pos, to: lever.supply, role: positive}
  N1: {from: lever.return, to: house.neg, role: negative}
  M1: {from: lever.a, to: winch.pos, role: positive}
  M2: {from: lever.b, to: winch.neg, role: negative}
`).Loads["winch"]
	assert.Equal(t, 1, *winch.Stations)
	assert.False(t, *winch.Interlocked)
}
