package record

import (
	"slices"
	"sync"

	q "driploop/model/quantity"
)

// metals are the metals of studs, terminals and fasteners; plated ones by their
// surface first.
func metals() []string {
	return []string{
		"copper", "tin-plated-copper", "nickel-plated-copper", "brass", "tin-plated-brass", "nickel-plated-brass", "chrome-plated-brass",
		"bronze", "stainless-304", "stainless-316", "steel", "zinc-plated-steel", "galvanised-steel", "aluminium", "nickel", "titanium", "lead",
	}
}

// skins are what panels are made of.
func skins() []string {
	return []string{"frp", "gelcoat", "wood", "aluminium", "steel", "acrylic", "polycarbonate", "abs", "pvc", "glass"}
}

// touched are the materials that a bedding compound can lie on.
func touched() []string {
	all := append(skins(), metals()...)
	all = append(all, "nylon", "acetal", "rubber", "teak")
	var once []string
	for _, m := range all {
		if !slices.Contains(once, m) {
			once = append(once, m)
		}
	}
	return once
}

var penetrationTable = sync.OnceValue(func() *table[Penetration] {
	return newTable("penetration", "A hole in a panel.",
		text("from", "Space on one side.", "bow-locker", func(p *Penetration) *Text { return &p.From }).to(toSpace),
		text("to", "Space on the other side.", "foredeck", func(p *Penetration) *Text { return &p.To }).to(toSpace),
		one("panel", "What the hole goes through.", panelTable, func(p *Penetration) *Panel { return &p.Panel }),
		one("hole", "The hole.", holeTable, func(p *Penetration) *Hole { return &p.Hole }),
		words("passes", "Conductors that pass.", "[P7, N7]", func(p *Penetration) *Words { return &p.Passes }).to(toConductor),
		one("seal", "What closes the hole around the cable.", sealTable, func(p *Penetration) *Seal { return &p.Seal }),
		one("bedding", "The compound under the fitting.", beddingTable, func(p *Penetration) *Bedding { return &p.Bedding }),
		one("fasteners", "What holds the fitting.", fastenersTable, func(p *Penetration) *Fasteners { return &p.Fasteners }),
		one("drip_loop", "The loop of the cable.", dripLoopTable, func(p *Penetration) *DripLoop { return &p.DripLoop }),
		flag("load_bearing", "The fitting carries load.", func(p *Penetration) *Flag { return &p.LoadBearing }),
		text("backing", "What backs a fitting that carries load.", "plate", func(p *Penetration) *Text { return &p.Backing }).of("none", "plate", "core-plug"),
		flag("enters_top", "It enters the top of an enclosure.", func(p *Penetration) *Flag { return &p.EntersTop }),
		flag("equipment_below", "Equipment stands below it.", func(p *Penetration) *Flag { return &p.EquipmentBelow }),
	)
})

var panelTable = sync.OnceValue(func() *table[Panel] {
	return newTable("panel", "The panel around a hole.",
		text("build", "How it is built.", "cored", func(p *Panel) *Text { return &p.Build }).of("solid", "cored", "metal", "plastic", "wood"),
		text("core", "What its core is.", "balsa", func(p *Panel) *Text { return &p.Core }).of("balsa", "foam", "ply", "honeycomb", "none"),
		text("skin", "What its skin is.", "frp", func(p *Panel) *Text { return &p.Skin }).of(skins()...),
		flag("gelcoat", "The skin has a gelcoat.", func(p *Panel) *Flag { return &p.Gelcoat }),
		measure("thickness", q.Length, "Thickness, core included.", "28 mm", func(p *Panel) *Measure { return &p.Thickness }),
		text("part", "Part of the boat.", "deck", func(p *Panel) *Text { return &p.Part }).
			of("deck", "bulkhead", "hull", "coaming", "liner", "enclosure", "cabin-top"),
		flag("watertight", "It has to stay watertight.", func(p *Panel) *Flag { return &p.Watertight }),
		text("isolates", "What it keeps out of the other side.", "petrol", func(p *Panel) *Text { return &p.Isolates }).of("petrol", "none"),
		measure("height", q.Length, "Height, of a bulkhead.", "900 mm", func(p *Panel) *Measure { return &p.Height }),
		flag("below_waterline", "It lies below the waterline.", func(p *Panel) *Flag { return &p.BelowWaterline }),
	)
})

var holeTable = sync.OnceValue(func() *table[Hole] {
	return newTable("hole", "The hole.",
		measure("diameter", q.Length, "Diameter.", "14 mm", func(h *Hole) *Measure { return &h.Diameter }),
		text("edge", "How its edge is finished or guarded.", "chamfered", func(h *Hole) *Text { return &h.Edge }).
			of("raw", "chamfered", "rounded", "grommet", "bush", "edge-strip"),
		text("core_edge", "How the core is closed in it.", "epoxy-annulus", func(h *Hole) *Text { return &h.CoreEdge }).
			of("raw", "epoxy-annulus", "core-plug", "tube", "sealed", "solid"),
		measure("height", q.Length, "Height above the foot of the bulkhead.", "400 mm", func(h *Hole) *Measure { return &h.Height }).orZero(),
		measure("gap", q.Length, "Largest gap around the cable.", "2 mm", func(h *Hole) *Measure { return &h.Gap }).orZero(),
	)
})

var sealTable = sync.OnceValue(func() *table[Seal] {
	return newTable("seal", "What closes a hole.",
		text("kind", "What it is.", "gland", func(s *Seal) *Text { return &s.Kind }).
			of("gland", "grommet", "bush", "connector", "compound", "boot", "none"),
		text("rating", "Ingress protection code (IEC 60529).", "IP67", func(s *Seal) *Text { return &s.Rating }).like(ipForm()),
		span("grips", q.Length, "Least and greatest cable diameter that it seals on.", "[6 mm, 12 mm]", func(s *Seal) *Span { return &s.Grips }),
		count("holes", "Wire holes in it.", "1", func(s *Seal) *Count { return &s.Holes }).orZero(),
	)
})

var beddingTable = sync.OnceValue(func() *table[Bedding] {
	return newTable("bedding", "Bedding compound.",
		text("compound", "Family of the compound.", "polysulphide", func(b *Bedding) *Text { return &b.Compound }).
			of("polysulphide", "polyurethane", "silicone-acid", "silicone-neutral", "hybrid", "butyl", "none"),
		words("on", "Materials that it touches.", "[frp, stainless-316]", func(b *Bedding) *Words { return &b.On }).of(touched()...),
		words("maker_allows", "Materials that its maker allows.", "[acrylic]", func(b *Bedding) *Words { return &b.MakerAllows }).of(touched()...),
		date("applied", "Day it was applied.", "2026-06-11", func(b *Bedding) *Date { return &b.Applied }),
		measure("cure", q.Duration, "Cure time that its maker asks for.", "3 d", func(b *Bedding) *Measure { return &b.Cure }).orZero(),
		date("in_service", "Day it first had to hold.", "2026-06-18", func(b *Bedding) *Date { return &b.InService }),
		text("squeeze_out", "How much squeezed out on tightening.", "little", func(b *Bedding) *Text { return &b.SqueezeOut }).of("little", "none", "much"),
		text("at", "What it has to stand there.", "deck", func(b *Bedding) *Text { return &b.Place }).
			of("fuel", "heat", "electrical", "below-water", "deck"),
	)
})

var fastenersTable = sync.OnceValue(func() *table[Fasteners] {
	return newTable("fasteners", "Fasteners of a fitting.",
		count("count", "How many there are.", "3", func(f *Fasteners) *Count { return &f.Count }).orZero(),
		text("material", "What they are made of.", "stainless-316", func(f *Fasteners) *Text { return &f.Material }).of(metals()...),
		flag("bedded", "Each is bedded.", func(f *Fasteners) *Flag { return &f.Bedded }),
		flag("countersunk", "Each hole is countersunk or chamfered.", func(f *Fasteners) *Flag { return &f.Countersunk }),
		flag("core_sealed", "The core is sealed in each hole.", func(f *Fasteners) *Flag { return &f.CoreSealed }),
		flag("isolated", "They are isolated from a metal panel.", func(f *Fasteners) *Flag { return &f.Isolated }),
	)
})

var dripLoopTable = sync.OnceValue(func() *table[DripLoop] {
	return newTable("drip_loop", "The drip loop at a penetration.",
		text("side", "Side that has the loop.", "from", func(d *DripLoop) *Text { return &d.Side }).of("from", "to", "both", "none"),
		measure("depth", q.Length, "Depth of the loop below the hole.", "60 mm", func(d *DripLoop) *Measure { return &d.Depth }).orZero(),
		flag("cable_falls", "The cable comes down to the hole.", func(d *DripLoop) *Flag { return &d.CableFalls }),
	)
})
