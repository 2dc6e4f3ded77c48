package record

import (
	"slices"
	"sync"

	q "driploop/model/quantity"
)

var componentTable = sync.OnceValue(func() *table[Component] {
	t := newTable("component", "A piece of equipment. Which keys it may carry depends on its kind.",
		slices.Concat(anyComponent(), battery(), sources(), devices(), switching(), loads())...)
	t.kind = func(c *Component) int { return kindIndex(c.Kind.V) }
	return t
})

func anyComponent() []field[Component] {
	names := make([]string, len(kindTable()))
	for i, k := range kindTable() {
		names[i] = k.Name
	}
	return []field[Component]{
		text("kind", "What it is.", "fuse", func(c *Component) *Text { return &c.Kind }).must().sure().of(names...),
		text("space", "Space that it stands in.", "battery-locker", func(c *Component) *Text { return &c.Space }).to(toSpace),
		text("label", "What is marked on it or beside it; none if nothing is.", "Bow thruster", func(c *Component) *Text { return &c.Label }),
		measure("nominal", q.Voltage, "Rated supply voltage.", "12 V", func(c *Component) *Measure { return &c.Nominal }),
		text("ip", "Ingress protection code (IEC 60529).", "IP67", func(c *Component) *Text { return &c.IP }).like(ipForm()),
		flag("ignition_protected", "Marked or certified as ignition protected.", func(c *Component) *Flag { return &c.IgnitionProtected }),
		one("isolation", "How it is kept apart from a petrol source, if it can spark.", isolationTable, func(c *Component) *Isolation { return &c.Isolation }),
		flag("metal_case", "Its case is of metal that can be touched.", func(c *Component) *Flag { return &c.MetalCase }),
		flag("bonded", "Its case is bonded or grounded.", func(c *Component) *Flag { return &c.Bonded }),
		flag("marked", "Voltage and current are marked on it.", func(c *Component) *Flag { return &c.Marked }),
		text("enclosure", "What its connections are enclosed in.", "fire-retardant", func(c *Component) *Text { return &c.Enclosure }).
			of("none", "open", "fire-retardant", "watertight"),
		text("entry", "Where cables enter it.", "below", func(c *Component) *Text { return &c.EntrySide }).of("below", "side", "top"),
		measure("factory_lead", q.Length, "Exposed length of its own leads.", "150 mm", func(c *Component) *Measure { return &c.FactoryLead }).orZero(),
		named("posts", "Its studs and screws, by terminal.", "pos", postTable, func(c *Component) *[]*Post { return &c.Posts }),
		text("stud", "Size of its studs.", "M8", func(c *Component) *Text { return &c.Stud }).like(studForm()),
		text("stud_material", "What its studs are made of.", "tin-plated-brass", func(c *Component) *Text { return &c.StudMaterial }).of(metals()...),
	}
}

func battery() []field[Component] {
	return on(kindsOf("battery"),
		text("chemistry", "Kind of cells.", "agm", func(c *Component) *Text { return &c.Chemistry }).of("flooded", "agm", "gel", "lithium"),
		measure("capacity", q.Charge, "Rated capacity of the bank.", "220 Ah", func(c *Component) *Measure { return &c.Capacity }),
		measure("cranking", q.Current, "Cold-cranking current of the bank.", "1150 A", func(c *Component) *Measure { return &c.Cranking }),
		count("units", "Number of batteries in the bank.", "2", func(c *Component) *Count { return &c.Units }),
		flag("units_match", "All of them are of one type, make and age.", func(c *Component) *Flag { return &c.UnitsMatch }),
		measure("weight", q.Mass, "Weight of one battery.", "31 kg", func(c *Component) *Measure { return &c.Weight }),
		measure("movement", q.Length, "Largest movement seen in the restraint test.", "5 mm", func(c *Component) *Measure { return &c.Movement }).orZero(),
		measure("test_force", q.Force, "Pull of the restraint test.", "90 lbf", func(c *Component) *Measure { return &c.TestForce }),
		measure("test_time", q.Duration, "How long each pull was held.", "60 s", func(c *Component) *Measure { return &c.TestTime }),
		count("pulls", "Number of directions pulled.", "5", func(c *Component) *Count { return &c.Pulls }).orZero(),
		flag("terminals_covered", "Every terminal is covered against contact.", func(c *Component) *Flag { return &c.TerminalsCovered }),
		flag("ungrounded_covered", "Every ungrounded terminal is covered against contact.", func(c *Component) *Flag { return &c.UngroundedCovered }),
		text("vented_to", "Where its gas goes.", "outside", func(c *Component) *Text { return &c.VentedTo }).of("outside", "space", "none"),
		measure("vent_opening", q.Area, "Free area of the inlet, and of the outlet.", "12 cm2", func(c *Component) *Measure { return &c.VentOpening }).orZero(),
		text("tray", "Tray that it stands in.", "liquid-tight", func(c *Component) *Text { return &c.Tray }).
			of("none", "plain", "resistant", "liquid-tight"),
		measure("above_bilge", q.Length, "Height of its foot above normal bilge water; negative if below.", "300 mm",
			func(c *Component) *Measure { return &c.AboveBilge }).orNegative(),
		flag("in_splash", "Bilge water can splash on it.", func(c *Component) *Flag { return &c.InSplash }),
		text("fuel_above", "Petrol equipment directly above or below it.", "none", func(c *Component) *Text { return &c.FuelAbove }).
			of("none", "tank", "filter", "fitting"),
		measure("fuel_metal_near", q.Length, "Distance from its top to the nearest metallic fuel part.", "16 in",
			func(c *Component) *Measure { return &c.FuelMetalNear }).orZero(),
		flag("fuel_shield", "A dielectric shield stands between.", func(c *Component) *Flag { return &c.FuelShield }),
		flag("managed", "A battery management system guards it.", func(c *Component) *Flag { return &c.Managed }),
	)
}

func sources() []field[Component] {
	all := kindsWhere(func(k Kind) bool { return k.Source })
	machines := all &^ kindsOf("battery")
	return slices.Concat(
		on(all,
			measure("internal_resistance", q.Resistance, "Internal resistance.", "3.2 mohm", func(c *Component) *Measure { return &c.Resistance }),
		),
		on(machines,
			measure("output", q.Current, "Greatest output current.", "90 A", func(c *Component) *Measure { return &c.Output }),
			measure("output_at", q.Temperature, "Temperature that this current is rated at.", "25 degC", func(c *Component) *Measure { return &c.OutputAt }),
			flag("regulated", "Its voltage is regulated, so that it cannot overcharge.", func(c *Component) *Flag { return &c.Regulated }),
			flag("self_limiting", "It cannot give more than its output current.", func(c *Component) *Flag { return &c.SelfLimiting }),
			measure("voltage", q.Voltage, "Voltage that it regulates to.", "14.2 V", func(c *Component) *Measure { return &c.Voltage }),
		),
	)
}

func devices() []field[Component] {
	carriers := kindsOf("switch", "fuse", "breaker", "busbar", "relay", "controller", "connector")
	return slices.Concat(
		on(carriers,
			measure("voltage", q.Voltage, "Rated direct voltage.", "32 V", func(c *Component) *Measure { return &c.Voltage }),
			measure("resistance", q.Resistance, "Resistance from terminal to terminal.", "0.2 mohm", func(c *Component) *Measure { return &c.Resistance }).orZero(),
		),
		on(carriers&^kindsOf("switch"),
			measure("rating", q.Current, "Rated current.", "250 A", func(c *Component) *Measure { return &c.Rating }),
		),
		on(kindsOf("fuse", "breaker"),
			measure("interrupt", q.Current, "Current that it can interrupt at that voltage.", "6 kA", func(c *Component) *Measure { return &c.Interrupt }),
			text("curve", "Family of time-current curve.", "bolt-in", func(c *Component) *Text { return &c.Curve }).
				of("blade-c", "blade-e", "mini", "bolt-in", "class-t", "cartridge", "thermal", "thermal-magnetic", "magnetic"),
			list("curve_points", "Points of the maker's time-current curve; they count before the family.", curvePointTable,
				func(c *Component) *[]*CurvePoint { return &c.CurvePoints }).sure(),
		),
		on(kindsOf("fuse"),
			measure("holder", q.Current, "Rating of its holder.", "300 A", func(c *Component) *Measure { return &c.Holder }),
		),
		on(kindsOf("breaker"),
			flag("trip_free", "It trips even with the handle held.", func(c *Component) *Flag { return &c.TripFree }),
			text("reset", "How it comes back on after a trip.", "manual", func(c *Component) *Text { return &c.Reset }).of("manual", "automatic"),
		),
		on(kindsOf("switch", "fuse", "breaker", "relay", "controller"),
			text("opens", "Conductors of the circuit that it opens.", "ungrounded", func(c *Component) *Text { return &c.Opens }).
				of("ungrounded", "grounded", "both"),
			text("duty", "What it is for.", "battery-disconnect", func(c *Component) *Text { return &c.Duty }).
				of("battery-disconnect", "battery-selector", "battery-parallel", "main", "branch", "motor", "motor-control", "remote-control",
					"lighting", "charging", "cranking", "float", "alarm", "other"),
			flag("readily_accessible", "It can be reached at once, without tools.", func(c *Component) *Flag { return &c.ReadilyAccessible }),
		),
		on(kindsOf("switch", "breaker", "relay", "controller"),
			count("poles", "Number of poles that it opens together.", "2", func(c *Component) *Count { return &c.Poles }),
		),
	)
}

func switching() []field[Component] {
	return slices.Concat(
		on(kindsOf("switch", "relay", "controller"),
			measure("continuous", q.Current, "Current that it carries without pause.", "300 A", func(c *Component) *Measure { return &c.Continuous }),
			measure("intermittent", q.Current, "Current that it carries for a short time.", "500 A", func(c *Component) *Measure { return &c.Intermittent }),
			flag("interlocked", "Opposite commands, or commands from two stations, cannot act together.", func(c *Component) *Flag { return &c.Interlocked }),
		),
		on(kindsOf("switch"),
			measure("reach", q.Length, "Distance of a battery switch from its battery.", "600 mm", func(c *Component) *Measure { return &c.Reach }).orZero(),
			flag("deck_switch", "It is a foot or deck switch.", func(c *Component) *Flag { return &c.DeckSwitch }),
			flag("guarded", "It is guarded against being worked by accident.", func(c *Component) *Flag { return &c.Guarded }),
		),
		on(kindsWhere(func(k Kind) bool { return k.ByLinks }),
			list("links", "Paths inside it, each between two of its terminals.", linkTable, func(c *Component) *[]*Link { return &c.Links }).sure(),
		),
		on(kindsOf("relay", "controller"),
			list("coils", "Its control inputs.", coilTable, func(c *Component) *[]*Coil { return &c.Coils }).sure(),
		),
	)
}

func loads() []field[Component] {
	all := kindsWhere(func(k Kind) bool { return k.Load })
	return slices.Concat(
		on(all,
			measure("current", q.Current, "Rated current, running.", "15 A", func(c *Component) *Measure { return &c.Current }),
			measure("power", q.Power, "Rated power, running.", "180 W", func(c *Component) *Measure { return &c.Power }),
			measure("resistance", q.Resistance, "Resistance, of a resistive load.", "1.2 ohm", func(c *Component) *Measure { return &c.LoadOhms }),
			text("load_kind", "What it holds constant when its voltage changes.", "constant-power", func(c *Component) *Text { return &c.LoadKind }).
				of("constant-current", "constant-power", "resistance"),
			measure("starting", q.Current, "Current on starting or switching on.", "60 A", func(c *Component) *Measure { return &c.Starting }),
			measure("start_time", q.Duration, "How long that lasts.", "300 ms", func(c *Component) *Measure { return &c.StartTime }).orZero(),
			measure("run_time", q.Duration, "Longest run in normal use.", "3 min", func(c *Component) *Measure { return &c.RunTime }),
			flag("continuously", "It runs without pause in normal use.", func(c *Component) *Flag { return &c.Continuously }),
			text("drop_class", "Class of voltage drop: critical for safety, or other.", "other", func(c *Component) *Text { return &c.DropClass }).
				of("critical", "other"),
			text("purpose", "What it does.", "bilge-pump", func(c *Component) *Text { return &c.Purpose }).of(purposes()...),
			measure("min_voltage", q.Voltage, "Least voltage that its maker allows.", "10.5 V", func(c *Component) *Measure { return &c.MinVoltage }),
			text("local_disconnect", "How it can be cut off where it stands.", "in-sight", func(c *Component) *Text { return &c.LocalDisconnect }).
				of("in-sight", "lockable", "none"),
			flag("reversible", "It runs both ways.", func(c *Component) *Flag { return &c.Reversible }),
		),
		on(kindsOf("motor", "pump", "blower", "refrigerator"),
			measure("stall", q.Current, "Current with the rotor locked.", "38 A", func(c *Component) *Measure { return &c.Stall }),
			measure("motor_limit", q.Duration, "How long the motor stands a locked rotor.", "20 s", func(c *Component) *Measure { return &c.MotorLimit }).orZero(),
			text("protector", "Thermal protector built into the motor.", "thermal-auto", func(c *Component) *Text { return &c.Protector }).
				of("none", "thermal-auto", "thermal-manual"),
		),
		on(kindsOf("blower"),
			flag("before_start", "The engine cannot be started before it runs.", func(c *Component) *Flag { return &c.BeforeStart }),
		),
	)
}

func purposes() []string {
	return []string{
		"navigation-light", "anchor-light", "cabin-light", "deck-light", "bilge-pump", "deck-wash", "fresh-water", "sanitation", "blower",
		"windlass", "thruster", "winch", "cranking", "steering", "radio", "navigation", "instrument", "alarm", "horn", "wiper",
		"fuel-pump", "refrigeration", "heating", "ventilation", "inverter", "entertainment", "other",
	}
}

var postTable = sync.OnceValue(func() *table[Post] {
	t := newTable("post", "A stud or screw of a component.",
		text("stud", "Size of the stud.", "M10", func(p *Post) *Text { return &p.Stud }).like(studForm()),
		text("material", "What it is made of.", "tin-plated-brass", func(p *Post) *Text { return &p.Material }).of(metals()...),
		text("cover", "What covers it.", "boot", func(p *Post) *Text { return &p.Cover }).of("none", "boot", "cap", "shield"),
	)
	t.done = func(p *Post) { p.Terminal = p.ID }
	return t
})

var linkTable = sync.OnceValue(func() *table[Link] {
	return newTable("link", "A path inside a component.",
		pair("between", "The two terminals that it joins.", "[supply, motor-a]", func(l *Link) *[]string { return &l.Between }),
		measure("rating", q.Current, "Current that it carries.", "150 A", func(l *Link) *Measure { return &l.Rating }),
		measure("resistance", q.Resistance, "Its resistance when closed.", "0.5 mohm", func(l *Link) *Measure { return &l.Resistance }).orZero(),
		text("when", "Position or command in which it is closed; left out: always.", "up", func(l *Link) *Text { return &l.When }).sure().like(idForm()),
	)
})

var curvePointTable = sync.OnceValue(func() *table[CurvePoint] {
	return newTable("curve point", "A point of a maker's time-current curve.",
		measure("current", q.Current, "Current at this point.", "750 A", func(p *CurvePoint) *Measure { return &p.Current }).must(),
		measure("least", q.Duration, "Time in which it opens no sooner; left out: it may open at once.", "300 ms", func(p *CurvePoint) *Measure { return &p.Least }).orZero(),
		measure("greatest", q.Duration, "Time in which it surely opens; left out: it need not open.", "5 s", func(p *CurvePoint) *Measure { return &p.Greatest }),
	)
})

var coilTable = sync.OnceValue(func() *table[Coil] {
	return newTable("coil", "A control input: a small load between two terminals.",
		pair("between", "Its two terminals.", "[up, neg]", func(c *Coil) *[]string { return &c.Between }),
		measure("current", q.Current, "Current that it draws.", "1.2 A", func(c *Coil) *Measure { return &c.Current }),
		text("when", "Command that energises it.", "up", func(c *Coil) *Text { return &c.When }).sure().like(idForm()),
	)
})

var isolationTable = sync.OnceValue(func() *table[Isolation] {
	return newTable("isolation", "How a component is kept apart from a petrol source.",
		text("means", "What keeps them apart.", "bulkhead", func(i *Isolation) *Text { return &i.Means }).
			of("bulkhead", "deck", "enclosure", "lower-with-means", "distance", "none"),
		measure("distance", q.Length, "Distance to the nearest petrol source.", "900 mm", func(i *Isolation) *Measure { return &i.Distance }).orZero(),
		flag("open_to_air", "The space between is open to the atmosphere.", func(i *Isolation) *Flag { return &i.OpenToAir }),
		text("height", "Where it stands against the source.", "above", func(i *Isolation) *Text { return &i.Height }).of("above", "below", "level"),
		measure("water_held", q.Length, "Height of water that the bulkhead holds.", "12 in", func(i *Isolation) *Measure { return &i.WaterHeld }).orZero(),
		measure("bulkhead_height", q.Length, "Height of the bulkhead.", "900 mm", func(i *Isolation) *Measure { return &i.BulkheadHeight }),
		measure("seepage", q.Volume, "Water that seeps through in an hour.", "0 L", func(i *Isolation) *Measure { return &i.Seepage }).orZero(),
	)
})
