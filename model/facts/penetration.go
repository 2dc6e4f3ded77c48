package facts

import (
	"slices"

	"driploop/model/quantity"
	"driploop/model/record"
)

// Penetration is the facts of a hole with what passes and what seals it.
type Penetration struct {
	Subject
	FromExposure *string `json:"from_exposure,omitempty"`
	ToExposure   *string `json:"to_exposure,omitempty"`
	// Exposure is the wetter of both sides.
	Exposure *string `json:"exposure,omitempty"`

	Build      *string `json:"build,omitempty"` // solid, cored, metal, plastic, wood
	Core       *string `json:"core,omitempty"`
	Skin       *string `json:"skin,omitempty"`
	Gelcoat    *bool   `json:"gelcoat,omitempty"`
	Part       *string `json:"part,omitempty"`       // deck, bulkhead, hull, ...
	Watertight *bool   `json:"watertight,omitempty"` // the panel has to stay watertight
	Isolates   *string `json:"isolates,omitempty"`
	// VapourBulkhead: a bulkhead that keeps petrol vapour from what is behind it.
	VapourBulkhead *bool    `json:"vapour_bulkhead,omitempty"`
	BelowWaterline *bool    `json:"below_waterline,omitempty"`
	PanelMM        *float64 `json:"panel_mm,omitempty"` // thickness
	PanelHeightMM  *float64 `json:"panel_height_mm,omitempty"`
	PanelThirdMM   *float64 `json:"panel_third_mm,omitempty"` // a third of its height

	HoleMM       *float64 `json:"hole_mm,omitempty"`
	Edge         *string  `json:"edge,omitempty"`
	CoreEdge     *string  `json:"core_edge,omitempty"`
	HoleHeightMM *float64 `json:"hole_height_mm,omitempty"` // above the foot of the panel
	GapMM        *float64 `json:"gap_mm,omitempty"`         // largest annular gap

	// Passing is the number of conductors through it, Cables that of separate
	// cables: the cores of one sheath are one cable.
	Passing *int `json:"passing,omitempty"`
	Cables  *int `json:"cables,omitempty"`
	// The outside diameter of the thinnest and of the thickest cable, each
	// between a least and a most: equal where it is recorded, else computed.
	// Measured is known, and true, once every one is recorded.
	ThinLeastMM  *float64 `json:"thin_least_mm,omitempty"`
	ThinMostMM   *float64 `json:"thin_most_mm,omitempty"`
	ThickLeastMM *float64 `json:"thick_least_mm,omitempty"`
	ThickMostMM  *float64 `json:"thick_most_mm,omitempty"`
	Measured     *bool    `json:"measured,omitempty"`

	SealKind    *string  `json:"seal_kind,omitempty"`
	Ingress              // of the seal
	GripLeastMM *float64 `json:"grip_least_mm,omitempty"`
	GripMostMM  *float64 `json:"grip_most_mm,omitempty"`
	SealHoles   *int     `json:"seal_holes,omitempty"`

	Compound    *string  `json:"compound,omitempty"`
	Touches     []string `json:"touches"` // materials that the compound touches, the panel's skin among them
	MakerAllows []string `json:"maker_allows"`
	Applied     *string  `json:"applied,omitempty"`
	CureS       *float64 `json:"cure_s,omitempty"`
	Place       *string  `json:"place,omitempty"`

	FastenerCount      *int    `json:"fastener_count,omitempty"`
	FastenerMaterial   *string `json:"fastener_material,omitempty"`
	FastenersBedded    *bool   `json:"fasteners_bedded,omitempty"`
	Countersunk        *bool   `json:"countersunk,omitempty"`
	FastenerCoreSealed *bool   `json:"fastener_core_sealed,omitempty"`
	FastenersIsolated  *bool   `json:"fasteners_isolated,omitempty"`

	LoopSide       *string  `json:"loop_side,omitempty"`
	LoopMM         *float64 `json:"loop_mm,omitempty"`
	CableFalls     *bool    `json:"cable_falls,omitempty"`
	EquipmentBelow *bool    `json:"equipment_below,omitempty"`
	EntersTop      *bool    `json:"enters_top,omitempty"`
	LoadBearing    *bool    `json:"load_bearing,omitempty"`
	Backing        *string  `json:"backing,omitempty"`
	Fitting
}

func (b *Builder) penetration(p *record.Penetration) *Penetration {
	f := b.made.penetrations.take()
	f.Subject, f.Touches, f.MakerAllows = b.subject(p.Path), []string{}, []string{}
	s := &f.Subject
	b.sides(s, f, p)
	panel(s, f, &p.Panel)
	b.vapours(s, f, p)
	hole(s, f, &p.Hole)
	b.passing(s, f, p)
	b.seal(s, f, &p.Seal)
	bedding(s, f, &p.Bedding)
	fasteners(s, f, &p.Fasteners)
	put(s, "loop_side", &f.LoopSide, &p.DripLoop.Side, "drip_loop.side")
	putMeasure(s, "loop_mm", &f.LoopMM, &p.DripLoop.Depth, "drip_loop.depth")
	put(s, "cable_falls", &f.CableFalls, &p.DripLoop.CableFalls, "drip_loop.cable_falls")
	put(s, "equipment_below", &f.EquipmentBelow, &p.EquipmentBelow, "equipment_below")
	entersTop(s, f, p)
	put(s, "load_bearing", &f.LoadBearing, &p.LoadBearing, "load_bearing")
	put(s, "backing", &f.Backing, &p.Backing, "backing")
	fitting(s, f, p)
	return f
}

// sides sets what is on both sides of the panel.
func (b *Builder) sides(s *Subject, f *Penetration, p *record.Penetration) {
	b.exposure(s, "from_exposure", &f.FromExposure, &p.From, "from")
	b.exposure(s, "to_exposure", &f.ToExposure, &p.To, "to")
	switch from, to := f.FromExposure, f.ToExposure; {
	case from == nil || to == nil:
		for _, side := range [...]struct {
			fact  string
			known bool
		}{{"from_exposure", from != nil}, {"to_exposure", to != nil}} {
			if !side.known {
				s.follow("exposure", side.fact)
			}
		}
	case wetter(*from, *to):
		f.Exposure = from
	default:
		f.Exposure = to
	}
}

// exposure sets that of the space which an entry names.
func (b *Builder) exposure(s *Subject, fact string, to **string, name *record.Text, entry string) {
	if space := b.record.Space(name.V); space != nil {
		putOf(s, fact, to, &space.Exposure, space.Path, "exposure")
		return
	}
	s.missing(fact, entry)
}

func panel(s *Subject, f *Penetration, p *record.Panel) {
	put(s, "build", &f.Build, &p.Build, "panel.build")
	put(s, "core", &f.Core, &p.Core, "panel.core")
	put(s, "skin", &f.Skin, &p.Skin, "panel.skin")
	gelcoat(s, f, p)
	put(s, "part", &f.Part, &p.Part, "panel.part")
	// Only a bulkhead may have to be watertight without its exposure saying so.
	if part, ok := p.Part.Get(); ok && part != "bulkhead" && !p.Watertight.Is() {
		f.Watertight = s.flag(false)
	} else {
		put(s, "watertight", &f.Watertight, &p.Watertight, "panel.watertight")
	}
	put(s, "below_waterline", &f.BelowWaterline, &p.BelowWaterline, "panel.below_waterline")
	putMeasure(s, "panel_mm", &f.PanelMM, &p.Thickness, "panel.thickness")
	putMeasure(s, "panel_height_mm", &f.PanelHeightMM, &p.Height, "panel.height")
	if s.derivable("panel_third_mm", operand{"panel_height_mm", f.PanelHeightMM}) {
		f.PanelThirdMM = s.number(quantity.Round(*f.PanelHeightMM / 3))
	}
}

// gelcoat tells whether the panel wears gelcoat: one of metal, wood or plastic
// does not, unless the record says so.
func gelcoat(s *Subject, f *Penetration, p *record.Panel) {
	plain := slices.Contains([]string{"metal", "wood", "plastic"}, p.Build.V) && p.Build.Is()
	switch {
	case p.Gelcoat.Is() || !plain && p.Skin.V != "gelcoat":
		put(s, "gelcoat", &f.Gelcoat, &p.Gelcoat, "panel.gelcoat")
	default:
		f.Gelcoat = s.flag(p.Skin.V == "gelcoat")
	}
}

// vapours tells what the panel keeps apart: nothing, unless the record says so,
// if petrol vapour can gather on neither side.
func (b *Builder) vapours(s *Subject, f *Penetration, p *record.Penetration) {
	isClear := func(id string) bool {
		space := b.record.Space(id)
		return space != nil && space.FuelVapour.Is() && space.FuelVapour.V != "petrol"
	}
	if !p.Panel.Isolates.Is() && isClear(p.From.V) && isClear(p.To.V) {
		f.Isolates = s.word("none")
	} else {
		put(s, "isolates", &f.Isolates, &p.Panel.Isolates, "panel.isolates")
	}
	petrol := truth{because: s.why("isolates")}
	if f.Isolates != nil {
		petrol = settled(*f.Isolates == "petrol")
	}
	putTruth(s, "vapour_bulkhead", &f.VapourBulkhead, s.allOf(petrol, s.among(&p.Panel.Part, s.own("panel.part"), "bulkhead")))
}

// entersTop tells whether the hole is in the top of an enclosure: of another
// part only if the record says so.
func entersTop(s *Subject, f *Penetration, p *record.Penetration) {
	if part, ok := p.Panel.Part.Get(); ok && part != "enclosure" && !p.EntersTop.Is() {
		f.EntersTop = s.flag(false)
		return
	}
	put(s, "enters_top", &f.EntersTop, &p.EntersTop, "enters_top")
}

func hole(s *Subject, f *Penetration, h *record.Hole) {
	putMeasure(s, "hole_mm", &f.HoleMM, &h.Diameter, "hole.diameter")
	put(s, "edge", &f.Edge, &h.Edge, "hole.edge")
	put(s, "core_edge", &f.CoreEdge, &h.CoreEdge, "hole.core_edge")
	putMeasure(s, "hole_height_mm", &f.HoleHeightMM, &h.Height, "hole.height")
	putMeasure(s, "gap_mm", &f.GapMM, &h.Gap, "hole.gap")
}

func (b *Builder) seal(s *Subject, f *Penetration, from *record.Seal) {
	put(s, "seal_kind", &f.SealKind, &from.Kind, "seal.kind")
	b.ingress(s, &f.Ingress, &from.Rating, s.Path, "seal.rating")
	putSpan(s, "grip_least_mm", "grip_most_mm", &f.GripLeastMM, &f.GripMostMM, &from.Grips, "seal.grips")
	put(s, "seal_holes", &f.SealHoles, &from.Holes, "seal.holes")
}

func bedding(s *Subject, f *Penetration, from *record.Bedding) {
	put(s, "compound", &f.Compound, &from.Compound, "bedding.compound")
	f.Touches = append(f.Touches, from.On.V...)
	f.MakerAllows = append(f.MakerAllows, from.MakerAllows.V...)
	putDate(s, "applied", &f.Applied, &from.Applied, "bedding.applied")
	putMeasure(s, "cure_s", &f.CureS, &from.Cure, "bedding.cure")
	put(s, "place", &f.Place, &from.Place, "bedding.at")
}

func fasteners(s *Subject, f *Penetration, from *record.Fasteners) {
	put(s, "fastener_count", &f.FastenerCount, &from.Count, "fasteners.count")
	put(s, "fastener_material", &f.FastenerMaterial, &from.Material, "fasteners.material")
	put(s, "fasteners_bedded", &f.FastenersBedded, &from.Bedded, "fasteners.bedded")
	put(s, "countersunk", &f.Countersunk, &from.Countersunk, "fasteners.countersunk")
	put(s, "fastener_core_sealed", &f.FastenerCoreSealed, &from.CoreSealed, "fasteners.core_sealed")
	put(s, "fasteners_isolated", &f.FastenersIsolated, &from.Isolated, "fasteners.isolated")
}
