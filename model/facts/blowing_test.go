package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const blown = `
driploop: 1
job: {number: T-1, title: Blower}
vessel: {system: 12 V}
spaces:
  bay: {kind: engine, fuel_vapour: petrol}
  helm: {kind: helm}
components:
  house: {kind: battery}
  breaker: {kind: breaker, space: bay}
  switch: {kind: switch%s}
  blower: {kind: blower, space: bay, current: 3 A}
conductors:
  P1: {from: house.pos, to: breaker.line, role: positive}
  P2: {from: breaker.load, to: %s, role: positive}
  P3: {from: switch.out, to: blower.pos, role: positive}
  N1: {from: blower.neg, to: house.neg, role: negative}
`

func TestSwitchOfABlower(t *testing.T) {
	assert.False(t, *buildf(t, blown, ", space: helm", "switch.in").Loads["blower"].SwitchInside)
	assert.True(t, *buildf(t, blown, ", space: bay", "switch.in").Loads["blower"].SwitchInside)
	open := buildf(t, blown, "", "switch.in").Loads["blower"]
	assert.Nil(t, open.SwitchInside)
	assert.Equal(t, "components.switch.space", open.Open.Of("switch_inside")[0].Field)
	assert.True(t, *buildf(t, blown, "", "blower.pos").Loads["blower"].SwitchInside, "without a switch the breaker is one")
	assert.True(t, *open.PetrolNear)
}
