package record

import (
	"sync"

	q "driploop/model/quantity"
)

var conductorTable = sync.OnceValue(func() *table[Conductor] {
	return newTable("conductor", "One insulated wire or cable core between two terminals.",
		terminal("from", "Terminal that it leaves, on the side of the source.", "house.pos", func(c *Conductor) *Terminal { return &c.From }),
		terminal("to", "Terminal that it goes to.", "main-fuse.line", func(c *Conductor) *Terminal { return &c.To }),
		text("role", "What it carries.", "positive", func(c *Conductor) *Text { return &c.Role }).must().sure().
			of("positive", "negative", "bonding", "control"),
		wire("size", "Size as marked.", "2/0 AWG", func(c *Conductor) *Wire { return &c.Size }),
		text("colour", "Colour of the insulation; with a stripe, the main colour first.", "red", func(c *Conductor) *Text { return &c.Colour }).like(colourForm()),
		measure("insulation", q.Temperature, "Temperature rating of the insulation, dry.", "105 degC", func(c *Conductor) *Measure { return &c.Insulation }),
		text("compound", "What the insulation is made of.", "pvc", func(c *Conductor) *Text { return &c.Compound }).
			of("pvc", "xlpe", "epr", "silicone", "rubber", "ptfe", "etfe"),
		measure("wet", q.Temperature, "Temperature rating of the insulation, wet.", "75 degC", func(c *Conductor) *Measure { return &c.Wet }),
		flag("oil_resistant", "The insulation is marked as oil resistant.", func(c *Conductor) *Flag { return &c.OilResistant }),
		text("material", "Metal of the conductor.", "copper", func(c *Conductor) *Text { return &c.Material }).of("copper", "aluminium"),
		count("strands", "Number of strands.", "127", func(c *Conductor) *Count { return &c.Strands }),
		text("class", "Class of stranding: of IEC 60228, or type 2 or 3 of boat cable.", "type-3", func(c *Conductor) *Text { return &c.Class }).
			of("solid", "class-2", "class-5", "class-6", "type-2", "type-3"),
		flag("tinned", "The strands are tinned.", func(c *Conductor) *Flag { return &c.Tinned }),
		text("standard", "Standard that is marked on it.", "ul-1426", func(c *Conductor) *Text { return &c.Standard }).like(standardForm()),
		measure("diameter", q.Length, "Diameter over the insulation.", "14.5 mm", func(c *Conductor) *Measure { return &c.Diameter }),
		measure("length", q.Length, "Length from terminal to terminal.", "160 mm", func(c *Conductor) *Measure { return &c.Length }),
		text("sheath", "Id shared by the cores of one sheath; none for a single conductor.", "S1", func(c *Conductor) *Text { return &c.Sheath }).like(idForm()),
		measure("sheath_tail", q.Length, "Longest length out of the sheath.", "200 mm", func(c *Conductor) *Measure { return &c.SheathTail }).orZero(),
		text("duty", "What it serves, where that decides what is asked of it.", "normal", func(c *Conductor) *Text { return &c.Duty }).
			of("cranking", "ignition-secondary", "resistance", "communication", "navigation", "electronic", "instrument", "normal"),
		flag("in_housing", "It lies wholly inside an equipment housing.", func(c *Conductor) *Flag { return &c.InHousing }),
		flag("pigtail", "It is a factory lead of a component.", func(c *Conductor) *Flag { return &c.Pigtail }),
		measure("exposed", q.Length, "Exposed length of a pigtail.", "150 mm", func(c *Conductor) *Measure { return &c.Exposed }).orZero(),
		flag("always_live", "It is meant to stay live with every switch open.", func(c *Conductor) *Flag { return &c.AlwaysLive }),
		flag("twisted", "It is twisted with its return.", func(c *Conductor) *Flag { return &c.Twisted }),
		measure("spacing", q.Length, "Distance from its return, near a compass.", "8 mm", func(c *Conductor) *Measure { return &c.Spacing }).orZero(),
		measure("compass_distance", q.Length, "Distance to the nearest compass.", "1.5 m", func(c *Conductor) *Measure { return &c.CompassDistance }).orZero(),
		measure("bend_radius", q.Length, "Tightest bend, inside radius.", "150 mm", func(c *Conductor) *Measure { return &c.BendRadius }).orZero(),
		count("splices", "Number of splices.", "0", func(c *Conductor) *Count { return &c.Splices }).orZero(),
		measure("splice_from_end", q.Length, "Distance of the nearest splice from an end.", "400 mm", func(c *Conductor) *Measure { return &c.SpliceFromEnd }).orZero(),
		measure("first_support", q.Length, "Distance from its terminal to the first support.", "300 mm", func(c *Conductor) *Measure { return &c.FirstSupport }).orZero(),
		text("labelled", "Ends that carry a label.", "both", func(c *Conductor) *Text { return &c.Labelled }).of("both", "one", "none"),
		flag("cross_set", "It joins the cranking returns of two engines.", func(c *Conductor) *Flag { return &c.CrossSet }),
		list("route", "The spaces that it crosses, in order.", segmentTable, func(c *Conductor) *[]*Segment { return &c.Route }),
		one("ends", "How both ends are landed.", endsTable, func(c *Conductor) *Ends { return &c.Ends }),
	)
})

var segmentTable = sync.OnceValue(func() *table[Segment] {
	return newTable("segment", "The part of a route within one space.",
		text("space", "Space that it crosses.", "bow-locker", func(s *Segment) *Text { return &s.Space }).to(toSpace),
		measure("length", q.Length, "Length in this space.", "2.4 m", func(s *Segment) *Measure { return &s.Length }),
		text("in", "What it runs in.", "conduit", func(s *Segment) *Text { return &s.In }).
			of("open", "loom", "conduit", "trunking", "tray", "sheath", "enclosure"),
		text("bundle", "Bundle that it runs in; none if alone.", "B1", func(s *Segment) *Text { return &s.Bundle }).to(toBundle),
		measure("support", q.Length, "Largest distance between supports.", "400 mm", func(s *Segment) *Measure { return &s.Support }).orZero(),
		text("support_kind", "What supports it.", "cushioned-clamp", func(s *Segment) *Text { return &s.SupportKind }).
			of("clamp", "cushioned-clamp", "metal-clamp", "tie", "tape", "saddle", "none"),
		text("bilge", "Where it runs against normal bilge water.", "above", func(s *Segment) *Text { return &s.Bilge }).of("above", "below"),
		flag("made_for_water", "The cable is made to lie in water.", func(s *Segment) *Flag { return &s.MadeForWater }),
		measure("exhaust_dry", q.Length, "Distance to a dry exhaust.", "300 mm", func(s *Segment) *Measure { return &s.ExhaustDry }).orZero(),
		measure("exhaust_wet", q.Length, "Distance to a wet exhaust.", "100 mm", func(s *Segment) *Measure { return &s.ExhaustWet }).orZero(),
		measure("fuel_line", q.Length, "Distance to a fuel line.", "200 mm", func(s *Segment) *Measure { return &s.FuelLine }).orZero(),
		text("fuel_line_side", "Where it runs against that line.", "above", func(s *Segment) *Text { return &s.FuelLineSide }).
			of("above", "below", "beside", "tied"),
		flag("rigid_support", "It is rigidly supported beside that line.", func(s *Segment) *Flag { return &s.RigidSupport }),
		text("with_ac", "How it runs with AC conductors.", "none", func(s *Segment) *Text { return &s.WithAC }).
			of("none", "separated", "bundled", "one-sheath"),
		flag("walkway", "It crosses a walkway.", func(s *Segment) *Flag { return &s.Walkway }),
		measure("moving_parts", q.Length, "Distance to moving machinery.", "700 mm", func(s *Segment) *Measure { return &s.MovingParts }).orZero(),
		flag("protected", "It is protected against mechanical harm.", func(s *Segment) *Flag { return &s.Protected }),
		text("loom_rating", "Flame rating of the loom.", "ul-94-v-2", func(s *Segment) *Text { return &s.LoomRating }).
			of("ul-94-v-0", "ul-94-v-1", "ul-94-v-2", "ul-94-hb", "none"),
		flag("drains", "The conduit has drain holes at its low points.", func(s *Segment) *Flag { return &s.Drains }),
		flag("horizontal", "The conduit runs level.", func(s *Segment) *Flag { return &s.Horizontal }),
		measure("conduit_bore", q.Length, "Inside diameter of the conduit.", "25 mm", func(s *Segment) *Measure { return &s.ConduitBore }),
	)
})

var endsTable = sync.OnceValue(func() *table[Ends] {
	return newTable("ends", "Both ends of a conductor.",
		end("from", "The end at \"from\".", func(e *Ends) (**End, *End) { return &e.From, &e.both[0] }),
		end("to", "The end at \"to\".", func(e *Ends) (**End, *End) { return &e.To, &e.both[1] }),
	)
})

// end is one End within Ends.
func end(key, says string, at func(*Ends) (at **End, room *End)) field[Ends] {
	return field[Ends]{spec{key: key, says: says, shape: partShape, part: single[End]{endTable}}, func(e *Ends) any {
		p, room := at(e)
		if *p == nil {
			*p = room
		}
		return *p
	}}
}

var endTable = sync.OnceValue(func() *table[End] {
	return newTable("end", "How one end is landed.",
		text("terminal", "What is fitted to the conductor.", "ring", func(e *End) *Text { return &e.Terminal }).
			of("ring", "captive-spade", "flanged-spade", "spade", "blade", "bullet", "butt", "bare", "ferrule", "solder-lug",
				"twist-on", "spring-clip", "plug", "clamp"),
		text("hole", "Hole of the ring, as marked.", "M8", func(e *End) *Text { return &e.Hole }).like(studForm()),
		text("stud", "Stud that it sits on.", "M8", func(e *End) *Text { return &e.Stud }).like(studForm()),
		count("order", "Place on the stud; 1 is next to its foot.", "1", func(e *End) *Count { return &e.Order }),
		barrel("barrel", "Smallest and largest conductor that its barrel takes.", "[16 AWG, 14 AWG]", func(e *End) *Words { return &e.Barrel }),
		one("crimp", "How it was crimped and proven.", crimpTable, func(e *End) *Crimp { return &e.Crimp }),
		text("soldered", "Solder: none, the only hold, beside a crimp, or in a battery lug.", "none", func(e *End) *Text { return &e.Soldered }).
			of("none", "only", "also", "battery-lug"),
		measure("solder_length", q.Length, "Length of contact in a soldered lug.", "20 mm", func(e *End) *Measure { return &e.SolderLength }).orZero(),
		measure("torque", q.Torque, "Torque that it was tightened to.", "9 N.m", func(e *End) *Measure { return &e.Torque }),
		span("torque_range", q.Torque, "Least and greatest torque that the maker asks for.", "[8 N.m, 10 N.m]", func(e *End) *Span { return &e.TorqueRange }),
		text("cover", "What covers it.", "heat-shrink-adhesive", func(e *End) *Text { return &e.Cover }).
			of("none", "boot", "cap", "shield", "heat-shrink", "heat-shrink-adhesive", "sealant"),
		text("plating", "Plating of the terminal.", "tin", func(e *End) *Text { return &e.Plating }).of("tin", "nickel", "silver", "gold", "chrome", "zinc", "none"),
		text("metal", "Metal of the terminal.", "copper", func(e *End) *Text { return &e.Metal }).of(metals()...),
		flag("washer_in_path", "A washer lies between the faces that carry current.", func(e *End) *Flag { return &e.WasherInPath }),
		text("nut", "What holds it down.", "lock-nut", func(e *End) *Text { return &e.Nut }).
			of("nut", "lock-nut", "wing-nut", "screw", "set-screw", "none"),
		flag("drip_loop", "The cable has a drip loop before it.", func(e *End) *Flag { return &e.DripLoop }),
		flag("falls", "The cable comes down to it.", func(e *End) *Flag { return &e.Falls }),
		text("slack", "Re-terminations that the slack allows.", "two", func(e *End) *Text { return &e.Slack }).of("two", "one", "none"),
		count("damaged_strands", "Strands nicked.", "0", func(e *End) *Count { return &e.DamagedStrands }).orZero(),
		count("broken_strands", "Strands broken.", "0", func(e *End) *Count { return &e.BrokenStrands }).orZero(),
		measure("pull_held", q.Force, "Pull that a friction terminal held for a minute.", "6 lbf", func(e *End) *Measure { return &e.PullHeld }).orZero(),
	)
})

var crimpTable = sync.OnceValue(func() *table[Crimp] {
	return newTable("crimp", "A crimp and its proof.",
		text("tool", "Tool that it was made with.", "ratchet", func(c *Crimp) *Text { return &c.Tool }).of("ratchet", "plain", "hammer", "hydraulic"),
		flag("calibrated", "The tool is in calibration.", func(c *Crimp) *Flag { return &c.Calibrated }),
		flag("matching", "Die and terminal belong together.", func(c *Crimp) *Flag { return &c.Matching }),
		measure("pull", q.Force, "Pull that a sample of it held.", "1.5 kN", func(c *Crimp) *Measure { return &c.Pull }).orZero(),
		measure("pull_time", q.Duration, "How long it held.", "60 s", func(c *Crimp) *Measure { return &c.PullTime }).orZero(),
	)
})
