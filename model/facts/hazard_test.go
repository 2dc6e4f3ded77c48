package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/figure"
)

// built returns the facts of a record whose head is left out.
func built(t *testing.T, body string) *facts.Document {
	t.Helper()
	return build(t, "driploop: 1\njob: {number: T-1}\n"+body)
}

// segment returns the facts of the one segment of P1, given its entries and
// those of its space.
func segment(t *testing.T, space, entries string) *facts.Segment {
	t.Helper()
	d := built(t, `
vessel: {system: 12 V}
spaces:
  place: {`+space+`}
components:
  fuse: {kind: fuse}
  lamp: {kind: lamp}
conductors:
  P1: {from: fuse.load, to: lamp.pos, role: positive, route: [{`+entries+`}]}
`)
	return d.Segments["P1[0]"]
}

func gaps(fields ...string) []figure.Gap {
	var all []figure.Gap
	for _, f := range fields {
		all = append(all, figure.Missing(f))
	}
	return all
}

func TestSegmentBelowBilgeWater(t *testing.T) {
	for name, c := range map[string]struct {
		space, entries string
		want           any // true, false, or the entry to fill in
	}{
		"as recorded":                     {"kind: bilge", "space: place, bilge: below", true},
		"recorded against a dry space":    {"kind: bilge, exposure: dry", "space: place, bilge: below", true},
		"a dry space holds no water":      {"kind: bilge, exposure: dry", "space: place", false},
		"nor does a mast":                 {"kind: mast, exposure: wet", "space: place", false},
		"a wet locker may":                {"kind: locker, exposure: wet", "space: place", "conductors.P1.route[0].bilge"},
		"a space of unknown exposure may": {"kind: locker", "space: place", "conductors.P1.route[0].bilge"},
	} {
		t.Run(name, func(t *testing.T) {
			f := segment(t, c.space, c.entries)
			if field, open := c.want.(string); open {
				assert.Nil(t, f.BelowBilge)
				assert.Equal(t, gaps(field), f.Open.Of("below_bilge"))
				return
			}
			require.NotNil(t, f.BelowBilge)
			assert.Equal(t, c.want, *f.BelowBilge)
		})
	}
}

func TestSegmentBesideFuelAndExhaust(t *testing.T) {
	t.Run("a distance says that there is one", func(t *testing.T) {
		f := segment(t, "kind: engine", "space: place, exhaust_dry: 300 mm, fuel_line: 200 mm")
		assert.True(t, *f.DryExhaust)
		assert.True(t, *f.FuelLine)
		assert.Equal(t, gaps("spaces.place.exhaust"), f.Open.Of("wet_exhaust"))
	})
	t.Run("the space says what passes through it", func(t *testing.T) {
		f := segment(t, "kind: engine, exhaust: [wet], fuel_line: false", "space: place")
		assert.False(t, *f.DryExhaust)
		assert.True(t, *f.WetExhaust)
		assert.False(t, *f.FuelLine)
	})
	t.Run("tied to the line is no distance from it", func(t *testing.T) {
		f := segment(t, "kind: engine", "space: place, fuel_line: 900 mm, fuel_line_side: tied")
		assert.Zero(t, *f.FuelLineMM)
	})
	t.Run("nothing said", func(t *testing.T) {
		f := segment(t, "kind: engine", "space: place")
		assert.Equal(t, gaps("spaces.place.fuel_line"), f.Open.Of("fuel_line"))
	})
}

func TestSegmentOpenToHarmIsSettledByWhatIsKnown(t *testing.T) {
	f := segment(t, "kind: engine", "space: place, protected: true")
	assert.False(t, *f.OpenWalkway, "protected, whatever it crosses")
	f = segment(t, "kind: engine", "space: place, walkway: false")
	assert.False(t, *f.OpenWalkway, "no walkway, protected or not")
	f = segment(t, "kind: engine", "space: place, walkway: true, protected: false")
	assert.True(t, *f.OpenWalkway)
	f = segment(t, "kind: engine", "space: place, walkway: true")
	assert.Equal(t, gaps("conductors.P1.route[0].protected"), f.Open.Of("open_walkway"))
}

func TestSegmentWithAlternatingCurrentAboard(t *testing.T) {
	const body = `
spaces: {place: {kind: locker}}
components: {fuse: {kind: fuse}, lamp: {kind: lamp}}
conductors:
  P1: {from: fuse.load, to: lamp.pos, role: positive, route: [{space: place}]}
`
	assert.Equal(t, "none", *built(t, "vessel: {system: 12 V, ac: false}"+body).Segments["P1[0]"].WithAC)
	assert.Equal(t, gaps("vessel.ac"), built(t, "vessel: {system: 12 V}"+body).Segments["P1[0]"].Open.Of("with_ac"))
	assert.Equal(t, gaps("conductors.P1.route[0].with_ac"), built(t, "vessel: {system: 12 V, ac: true}"+body).Segments["P1[0]"].Open.Of("with_ac"))
}

// A bore of 20 mm: 100·d²/D² is 25 % for one cable of 10 mm.
func TestConduitFill(t *testing.T) {
	d := built(t, `
vessel: {system: 12 V}
spaces: {place: {kind: locker}}
components: {fuse: {kind: fuse}, lamp: {kind: lamp}, bar: {kind: busbar}}
conductors:
  P1: {from: fuse.load, to: lamp.pos, role: positive, sheath: none, diameter: 10 mm, route: [{space: place, in: conduit, bundle: B, conduit_bore: 20 mm}]}
  P2: {from: bar.a, to: fuse.line, role: positive, sheath: S, diameter: 5 mm, route: [{space: place, in: conduit, bundle: B, conduit_bore: 20 mm}]}
  N2: {from: lamp.neg, to: bar.b, role: negative, sheath: S, diameter: 5 mm, route: [{space: place, in: conduit, bundle: B, conduit_bore: 20 mm}]}
`)
	first, second := d.Segments["P1[0]"], d.Segments["P2[0]"]
	assert.Equal(t, 2, *first.Holds, "the cores of one sheath are one cable")
	assert.InDelta(t, 25+6.25, *first.FillLeastPct, 1e-9)
	assert.InDelta(t, 25+6.25, *first.FillMostPct, 1e-9)
	assert.True(t, *first.FillMeasured)
	assert.True(t, first.Lead)
	assert.False(t, second.Lead)
}

func TestConduitThatHoldsMoreThanTheRecordLists(t *testing.T) {
	d := built(t, `
vessel: {system: 12 V}
spaces: {place: {kind: locker}}
components: {fuse: {kind: fuse}, lamp: {kind: lamp}}
conductors:
  P1: {from: fuse.load, to: lamp.pos, role: positive, diameter: 10 mm, route: [{space: place, in: conduit, bundle: B, conduit_bore: 20 mm}]}
bundles: {B: {members: [P1], carrying: 4}}
`)
	f := d.Segments["P1[0]"]
	assert.Nil(t, f.FillLeastPct)
	assert.Nil(t, f.Holds)
	require.Len(t, f.Open.Of("conduit_holds"), 1)
	assert.Contains(t, f.Open.Of("conduit_holds")[0].Why, "does not list")
}

func TestCablesOnTheWayToTheBatterySwitch(t *testing.T) {
	d := built(t, `
vessel: {system: 12 V, earthing: negative-ground}
spaces: {place: {kind: locker}}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse}
  isolator: {kind: switch, duty: battery-disconnect}
  bar: {kind: busbar}
  heater: {kind: heater}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, route: [{space: place}]}
  P2: {from: fuse.load, to: isolator.in, role: positive, route: [{space: place}]}
  P3: {from: isolator.out, to: bar.a, role: positive, route: [{space: place}]}
  P4: {from: bar.b, to: heater.pos, role: positive, route: [{space: place}]}
  N1: {from: heater.neg, to: house.neg, role: negative, route: [{space: place}]}
`)
	for id, want := range map[string]bool{"P1": true, "P2": true, "P3": false, "P4": false, "N1": false} {
		assert.Equal(t, want, d.Segments[id+"[0]"].ToDisconnect, id)
	}
	assert.True(t, d.Switches["isolator"].Disconnects)
	assert.True(t, d.Loads["heater"].Isolated)
	assert.True(t, *d.Loads["heater"].BehindBattery)
}

func TestUnfusedUpToTheFirstDevice(t *testing.T) {
	d := built(t, `
vessel: {system: 12 V, earthing: negative-ground}
spaces: {place: {kind: bilge}}
components: {house: {kind: battery}, fuse: {kind: fuse}, lamp: {kind: lamp}}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, route: [{space: place}]}
  P2: {from: fuse.load, to: lamp.pos, role: positive, route: [{space: place}]}
  N1: {from: lamp.neg, to: house.neg, role: negative, route: [{space: place}]}
`)
	assert.True(t, *d.Segments["P1[0]"].Unfused)
	assert.False(t, *d.Segments["P2[0]"].Unfused)
	assert.False(t, *d.Segments["N1[0]"].Unfused, "a grounded return needs no fuse")
}
