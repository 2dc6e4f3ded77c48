package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const readings = `
driploop: 1
job: {number: T-1, title: Readings}
vessel: {system: 24 V}
components:
  fuse: {kind: fuse}
  fan: {kind: blower, current: 4 A}
  heater: {kind: heater, power: 240 W, nominal: 24 V}
conductors:
  P1: {from: fuse.load, to: fan.pos, role: positive}
tests:
  - {kind: voltage-drop, load: fan, current: 5 A, at_source: 25.2 V, at_load: 25.8 V}
  - {kind: current, load: heater, current: 12 A}
  - {kind: insulation, conductor: P1, resistance: 1 Mohm}
  - {kind: current, current: 12 A}
`

func TestReadingAgainstNameplateAndSystem(t *testing.T) {
	d := build(t, readings).Tests
	drop := d["0000"]
	assert.Equal(t, "load", drop.About)
	assert.InDelta(t, 125, *drop.RatedPct, 1e-9)
	assert.InDelta(t, 0.6, *drop.GainV, 1e-9)
	assert.InDelta(t, 105, *drop.SourcePct, 1e-9)
	assert.InDelta(t, 107.5, *drop.LoadPct, 1e-9)
	// 240 W at 24 V are 10 A.
	assert.InDelta(t, 120, *d["0001"].RatedPct, 1e-9)
	assert.Equal(t, "conductor", d["0002"].About)
	assert.Equal(t, "nothing", d["0003"].About)
	assert.Equal(t, "tests[3].load", d["0003"].Open.Of("rated_pct")[0].Field)
}
