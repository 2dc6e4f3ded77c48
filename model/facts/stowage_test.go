package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/facts"
	"driploop/model/figure"
)

func TestBatteryStowage(t *testing.T) {
	battery := func(vessel, entries string) *facts.Battery {
		return built(t, "vessel: {system: 12 V"+vessel+"}\nspaces: {locker: {kind: battery}}\ncomponents: {house: {kind: battery, space: locker"+entries+"}}\n").Batteries["house"]
	}
	// IEC 62485-2: Q = 0.05·6·8·100/1000 = 0.24 m³/h for a valve-regulated battery of
	// 100 Ah on boost charge, A = 28·Q = 6.72 cm².
	assert.InDelta(t, 6.72, *battery("", ", chemistry: agm, nominal: 12 V, capacity: 100 Ah").VentNeededCM2, 1e-9)
	assert.Nil(t, battery("", ", chemistry: lithium, nominal: 12 V, capacity: 100 Ah").VentNeededCM2)
	assert.False(t, *battery(", propulsion: diesel-inboard, auxiliary: none", "").PetrolNear, "no petrol aboard")
	assert.Equal(t, gaps("spaces.locker.petrol_source"), battery(", propulsion: petrol-outboard, auxiliary: none", "").Open.Of("petrol_near"))
}

func TestChargerReachesItsBatteries(t *testing.T) {
	d := built(t, `
vessel: {system: 12 V, earthing: negative-ground}
spaces: {aft: {kind: battery}, fore: {kind: locker}}
components:
  house: {kind: battery, space: aft}
  bow: {kind: battery, space: fore}
  charger: {kind: charger}
conductors:
  P1: {from: charger.pos, to: house.pos, role: positive}
  N1: {from: charger.neg, to: house.neg, role: negative}
`)
	f := d.Chargers["charger"]
	assert.Equal(t, []string{"battery"}, f.BatterySpaces, "the bow battery is wired to nothing")
	assert.True(t, *f.SpacesKnown)
}

func TestCrankingReturnsOfTwoEngines(t *testing.T) {
	vessel := func(head, conductors string) *facts.Vessel {
		return built(t, "vessel: {system: 12 V, "+head+`}
components:
  one: {kind: motor, purpose: cranking}
  two: {kind: motor, purpose: cranking}
  house: {kind: battery}
  start: {kind: battery}
conductors:
  P1: {from: house.pos, to: one.pos, role: positive, size: 1/0 AWG}
`+conductors).Vessel
	}
	v := vessel("propulsion: petrol-inboard, engines: 2, auxiliary: petrol", "  N1: {from: one.neg, to: two.neg, role: negative, size: 2 AWG, cross_set: true}\n")
	assert.Equal(t, 3, *v.PetrolEngines)
	assert.True(t, *v.CrankingJoined)
	assert.InDelta(t, 33.63, *v.CrankingLinkMM2, 1e-9)
	assert.InDelta(t, 53.48, *v.CrankingCableMM2, 1e-9)
	v = vessel("propulsion: diesel-inboard, engines: 2, auxiliary: none", "  N1: {from: one.neg, to: house.neg, role: negative}\n")
	assert.Zero(t, *v.PetrolEngines)
	assert.Contains(t, v.Open.Of("cranking_joined"), figure.Missing("conductors.N1.cross_set"))
	v = vessel("propulsion: petrol-inboard, auxiliary: none", "  N1: {from: one.neg, to: house.neg, role: negative, cross_set: false}\n")
	assert.False(t, *v.CrankingJoined)
	for _, said := range []string{"from: house.neg, to: one.neg, role: bonding, cross_set: unknown", "from: house.neg, to: start.neg, role: negative"} {
		v = vessel("propulsion: petrol-inboard, auxiliary: none", "  N2: {"+said+"}\n")
		assert.Contains(t, v.Open.Of("cranking_joined"), figure.Missing("conductors.N2.cross_set"), "what may join them")
	}
	v = vessel("propulsion: petrol-inboard, auxiliary: none", "  N1: {from: one.neg, to: house.neg, role: negative, cross_set: false}\n")
	assert.Equal(t, gaps("vessel.engines"), v.Open.Of("petrol_engines"))
}
