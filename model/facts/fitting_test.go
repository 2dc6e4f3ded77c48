package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
)

// plug builds the facts of one penetration between two spaces.
func plug(t *testing.T, hole string) *facts.Penetration {
	t.Helper()
	return buildf(t, `
driploop: 1
job: {number: T-1, title: Plug}
vessel: {system: 12 V}
spaces:
  dry: {kind: locker, exposure: dry, fuel_vapour: none}
  deck: {kind: open-deck, exposure: washed, fuel_vapour: none}
  sea: {kind: open-deck, exposure: immersed}
  bay: {kind: engine, exposure: damp, fuel_vapour: petrol}
penetrations:
  plug: {%s}
`, hole).Penetrations["plug"]
}

// Seven days from the first are over on the eighth. Whether hours were over on
// the days between cannot be told from days.
func TestReadyOnCountsWholeDays(t *testing.T) {
	for _, c := range []struct{ bedding, want string }{
		{"applied: 2026-06-01, cure: 7 d, in_service: 2026-06-07", "2026-06-08"},
		{"applied: 2026-06-01, cure: 7 d, in_service: 2026-06-08", "2026-06-08"},
		{"applied: 2026-05-28, cure: 168 h", "2026-06-04"},
		{"applied: 2026-06-01, cure: 30 h, in_service: 2026-06-01", "2026-06-03"},
		{"applied: 2026-06-01, cure: 30 h, in_service: 2026-06-02", ""},
		{"applied: 2026-06-01, cure: 30 h, in_service: 2026-06-03", "2026-06-03"},
		{"applied: 2026-06-01, cure: 4 h, in_service: 2026-06-01", ""},
		{"applied: 2026-06-01, cure: 4 h, in_service: 2026-05-31", "2026-06-02"},
	} {
		p := plug(t, "bedding: {"+c.bedding+"}")
		if c.want == "" {
			assert.Nil(t, p.ReadyOn, c.bedding)
			assert.Contains(t, p.Open.Of("ready_on")[0].Why, "too coarse", c.bedding)
			continue
		}
		require.NotNil(t, p.ReadyOn, c.bedding)
		assert.Equal(t, c.want, *p.ReadyOn, c.bedding)
	}
}

func TestUnderWaterByPlacePanelOrSide(t *testing.T) {
	for hole, want := range map[string]string{
		"from: dry, to: deck, panel: {part: deck}, bedding: {at: deck}":                               "no",
		"from: dry, to: deck, panel: {part: hull, below_waterline: true}, bedding: {at: deck}":        "yes",
		"from: dry, to: sea, panel: {part: bulkhead}, bedding: {at: deck}":                            "yes",
		"from: dry, to: deck, bedding: {at: below-water}":                                             "yes",
		"from: dry, to: deck, panel: {part: hull}, bedding: {at: deck}":                               "panel.below_waterline",
		"from: dry, to: deck, panel: {part: hull, below_waterline: false}":                            "bedding.at",
		"from: dry, to: deck, panel: {part: hull, below_waterline: false}, bedding: {at: electrical}": "no",
	} {
		p := plug(t, hole)
		switch want {
		case "yes", "no":
			require.NotNil(t, p.UnderWater, hole)
			assert.Equal(t, want == "yes", *p.UnderWater, hole)
		default:
			require.Nil(t, p.UnderWater, hole)
			assert.Equal(t, "penetrations.plug."+want, p.Open.Of("under_water")[0].Field, hole)
		}
	}
}

func TestMetalPanelAndItsFasteners(t *testing.T) {
	p := plug(t, "panel: {build: metal, skin: aluminium}, fasteners: {material: stainless-316}")
	assert.True(t, *p.MetalPanel)
	// Anodic index 0.90 V less 0.50 V.
	assert.InDelta(t, 0.4, *p.FastenerGapV, 1e-9)
	assert.Equal(t, "stainless-316 in aluminium", *p.FastenerPair)

	p = plug(t, "panel: {build: solid, skin: frp}, fasteners: {material: stainless-316}")
	assert.False(t, *p.MetalPanel)
	assert.Nil(t, p.FastenerGapV)

	p = plug(t, "panel: {skin: steel}, fasteners: {material: zinc-plated-steel}")
	assert.True(t, *p.MetalPanel)
	// Its plating counts: 1.25 V less 0.85 V.
	assert.InDelta(t, 0.4, *p.FastenerGapV, 1e-9)
}

func TestCompoundTouchesThePanelToo(t *testing.T) {
	assert.ElementsMatch(t, []string{"nylon", "acrylic"}, plug(t, "panel: {skin: acrylic}, bedding: {compound: polysulphide, on: [nylon]}").Touches)
	assert.Empty(t, plug(t, "panel: {skin: acrylic}, bedding: {compound: none}").Touches)
}

func TestPanelBetweenSpacesWithoutPetrolIsolatesNone(t *testing.T) {
	assert.Equal(t, "none", *plug(t, "from: dry, to: deck").Isolates)
	assert.Nil(t, plug(t, "from: dry, to: bay").Isolates)
	assert.Nil(t, plug(t, "from: dry, to: sea").Isolates, "nothing is recorded of vapour there")
	assert.Equal(t, "petrol", *plug(t, "from: dry, to: bay, panel: {isolates: petrol}").Isolates)
}

func TestGelcoatByBuildAndSkin(t *testing.T) {
	assert.False(t, *plug(t, "panel: {build: wood}").Gelcoat)
	assert.True(t, *plug(t, "panel: {build: solid, skin: gelcoat}").Gelcoat)
	assert.True(t, *plug(t, "panel: {build: wood, gelcoat: true}").Gelcoat)
	assert.Nil(t, plug(t, "panel: {build: cored, skin: frp}").Gelcoat)
}

func TestOnlyEnclosuresHaveATop(t *testing.T) {
	assert.False(t, *plug(t, "panel: {part: deck}").EntersTop)
	assert.Nil(t, plug(t, "panel: {part: enclosure}").EntersTop)
	assert.Nil(t, plug(t, "from: dry").EntersTop)
	assert.True(t, *plug(t, "panel: {part: enclosure}, enters_top: true").EntersTop)
}
