package facts

import (
	"math"
	"time"

	"driploop/model/figure"
	"driploop/model/physics"
	"driploop/model/record"
)

// Fitting is how a fitting lies in its compound and on its panel.
type Fitting struct {
	// TouchesKnown is known, and true, once the record tells the panel's skin and
	// lists what the compound touches beside it.
	TouchesKnown *bool `json:"touches_known,omitempty"`
	// UnderWater: the compound has to hold below water. Of panels only the hull can
	// lie below the waterline without the record saying so.
	UnderWater *bool `json:"under_water,omitempty"`
	// ReadyOn is the first day by which the compound has had its cure time, counted
	// in whole days; open where days are too coarse to tell.
	ReadyOn   *string `json:"ready_on,omitempty"`
	InService *string `json:"in_service,omitempty"`

	// MetalPanel: the panel, or its skin, is of metal.
	MetalPanel *bool `json:"metal_panel,omitempty"`
	// FastenerGapV is how far the fasteners and that metal are apart on the anodic
	// index; FastenerPair names both surfaces.
	FastenerGapV *float64 `json:"fastener_gap_v,omitempty"`
	FastenerPair *string  `json:"fastener_pair,omitempty"`
}

// fitting sets how a fitting lies; exposure is set before.
func fitting(s *Subject, f *Penetration, p *record.Penetration) {
	if p.Panel.Skin.Is() && p.Bedding.Compound.V != "none" && p.Panel.Skin.V != "gelcoat" {
		f.Touches = append(f.Touches, p.Panel.Skin.V)
	}
	if !p.Bedding.On.Is() {
		s.missing("touches_known", "bedding.on")
	}
	if !p.Panel.Skin.Is() {
		s.missing("touches_known", "panel.skin")
	}
	if p.Bedding.On.Is() && p.Panel.Skin.Is() {
		f.TouchesKnown = s.flag(true)
	}
	submerged := s.truthOf(&p.Panel.BelowWaterline, s.own("panel.below_waterline"))
	if part, ok := p.Panel.Part.Get(); ok && part != "hull" && !submerged.known {
		submerged = settled(false)
	}
	immersed := truth{because: s.why("exposure")}
	if f.Exposure != nil {
		immersed = settled(*f.Exposure == "immersed")
	}
	putTruth(s, "under_water", &f.UnderWater, s.anyOf(s.among(&p.Bedding.Place, s.own("bedding.at"), "below-water"), submerged, immersed))
	putDate(s, "in_service", &f.InService, &p.Bedding.InService, "bedding.in_service")
	readyOn(s, f, &p.Bedding)
	metals(s, f, p)
}

const secondsADay = 24 * 60 * 60

// readyOn sets the day by which the compound has cured. Days do not tell how
// late on them it was applied and had to hold: if a part of a day decides, the
// fact stays open.
func readyOn(s *Subject, f *Penetration, b *record.Bedding) {
	var gaps []figure.Gap
	applied, dated := b.Applied.Get()
	if !dated {
		gaps = append(gaps, figure.Missing(s.field("bedding.applied")))
	}
	cure, given := b.Cure.Get()
	if !given {
		gaps = append(gaps, figure.Missing(s.field("bedding.cure")))
	}
	if len(gaps) > 0 {
		s.open("ready_on", gaps...)
		return
	}
	days := cure.Base / secondsADay
	sure := applied.AddDate(0, 0, int(math.Ceil(days))).Format(time.DateOnly)
	maybe := applied.AddDate(0, 0, int(math.Floor(days))).Format(time.DateOnly)
	if f.InService != nil && *f.InService >= maybe && *f.InService < sure {
		s.open("ready_on", figure.Gap{Field: s.field("bedding.in_service"), Why: "days are too coarse to tell whether " + cure.String() + " had passed"})
		return
	}
	f.ReadyOn = s.word(sure)
}

// metals sets which metals touch where fasteners go through a metal panel.
func metals(s *Subject, f *Penetration, p *record.Penetration) {
	skin := s.among(&p.Panel.Skin, s.own("panel.skin"), "aluminium", "steel")
	putTruth(s, "metal_panel", &f.MetalPanel, s.anyOf(skin, s.among(&p.Panel.Build, s.own("panel.build"), "metal")))
	var gaps []figure.Gap
	if !skin.value {
		gaps = append(gaps, figure.Missing(s.field("panel.skin")))
	}
	material, ok := p.Fasteners.Material.Get()
	if !ok {
		gaps = append(gaps, figure.Missing(s.field("fasteners.material")))
	}
	if len(gaps) > 0 {
		s.open("fastener_gap_v", gaps...)
		s.open("fastener_pair", gaps...)
		return
	}
	fastener := physics.Surface(material, "")
	putComputed(s, "fastener_gap_v", &f.FastenerGapV, physics.AnodicGap(fastener, p.Panel.Skin.V))
	f.FastenerPair = s.word(fastener + " in " + p.Panel.Skin.V)
}
