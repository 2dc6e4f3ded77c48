package record

import (
	"sync"

	q "driploop/model/quantity"
)

// Version is the version of the record format that this package reads.
const Version = 1

// practiceSets are the sets that a record may be judged by.
func practiceSets() []string {
	return []string{"us-federal", "us-inspected", "us-voluntary", "international", "uk", "canada", "eu", "workmanship", "yard"}
}

// DefaultPractice is what a record without "practice" is judged by.
func DefaultPractice() []string { return []string{"us-federal", "workmanship"} }

var rootTable = sync.OnceValue(func() *table[Record] {
	version := field[Record]{spec{
		key: "driploop", says: "Version of the record format.", example: "1", shape: versionShape,
	}, func(r *Record) any { return &r.Version }}
	return newTable("record", "One installation record: one job on one boat.",
		version.must().sure(),
		one("job", "What was done, for whom, and when.", jobTable, func(r *Record) *Job { return &r.Job }).must().sure(),
		one("vessel", "The boat, as far as rules ask.", vesselTable, func(r *Record) *Vessel { return &r.Vessel }).must().sure(),
		words("practice", "Practice sets that the job is judged by. Left out: us-federal and workmanship.", "[us-federal, workmanship]",
			func(r *Record) *Words { return &r.Practice }).of(practiceSets()...).sure(),
		named("spaces", "Parts of the boat that equipment stands in or conductors run through, by id.", "bow-locker", spaceTable,
			func(r *Record) *[]*Space { return &r.Spaces }).sure(),
		named("components", "Equipment, devices, bars and ground points, by id.", "main-fuse", componentTable,
			func(r *Record) *[]*Component { return &r.Components }).sure(),
		named("conductors", "Insulated wires and cable cores, each between two terminals, by id.", "P1", conductorTable,
			func(r *Record) *[]*Conductor { return &r.Conductors }).sure(),
		named("bundles", "Groups of conductors that run together, by id. Segments may name bundles that are not listed if none is.", "B1", bundleTable,
			func(r *Record) *[]*Bundle { return &r.Bundles }).sure(),
		named("penetrations", "Holes in panels with what passes through and what seals them, by id.", "deck-plug", penetrationTable,
			func(r *Record) *[]*Penetration { return &r.Penetrations }).sure(),
		named("cases", "Operating cases to solve beside the usual ones, by name.", "hauling", caseTable,
			func(r *Record) *[]*Case { return &r.Cases }).sure(),
		list("tests", "Measurements and checks that were made.", testTable,
			func(r *Record) *[]*Test { return &r.Tests }).sure(),
		list("waivers", "Breaches that are let stand for a time.", waiverTable,
			func(r *Record) *[]*Waiver { return &r.Waivers }).sure(),
		one("sign_off", "Who closed the job, and when.", signOffTable, func(r *Record) *SignOff { return &r.SignOff }),
	)
})

var jobTable = sync.OnceValue(func() *table[Job] {
	return newTable("job", "The job.",
		text("number", "Number of the job in the yard's books.", "HL-2207", func(j *Job) *Text { return &j.Number }).must(),
		text("title", "What was done, in a few words.", "Bow thruster and deck-wash pump", func(j *Job) *Text { return &j.Title }),
		text("kind", "Kind of job.", "thruster", func(j *Job) *Text { return &j.Kind }).
			of("windlass", "thruster", "pump", "lights", "electronics", "charger", "battery-bank", "solar", "refrigeration",
				"inverter-feed", "accessory", "engine", "rewire", "other"),
		text("yard", "Yard that did the work.", "Saltmarsh Boatworks", func(j *Job) *Text { return &j.Yard }),
		date("started", "Day the work began.", "2026-06-08", func(j *Job) *Date { return &j.Started }),
		date("completed", "Day the work was done.", "2026-06-18", func(j *Job) *Date { return &j.Completed }),
	)
})

var vesselTable = sync.OnceValue(func() *table[Vessel] {
	return newTable("vessel", "The boat.",
		text("name", "Name of the boat.", "Marigold", func(v *Vessel) *Text { return &v.Name }),
		measure("length", q.Length, "Length of the hull.", "9.4 m", func(v *Vessel) *Measure { return &v.Length }),
		text("hull", "What the hull is built of.", "frp", func(v *Vessel) *Text { return &v.Hull }).
			of("frp", "wood", "aluminium", "steel"),
		text("propulsion", "Propulsion engine and fuel.", "diesel-inboard", func(v *Vessel) *Text { return &v.Propulsion }).
			of("petrol-inboard", "petrol-sterndrive", "petrol-outboard", "diesel-inboard", "diesel-sterndrive", "diesel-outboard",
				"electric", "none"),
		count("engines", "Number of propulsion engines.", "1", func(v *Vessel) *Count { return &v.Engines }).orZero(),
		text("auxiliary", "Engine for generating or other power that is not an outboard.", "none", func(v *Vessel) *Text { return &v.Auxiliary }).
			of("none", "petrol", "diesel"),
		measure("system", q.Voltage, "Nominal voltage of the installation.", "12 V", func(v *Vessel) *Measure { return &v.System }).must(),
		text("earthing", "Pole that is connected to ground.", "negative-ground", func(v *Vessel) *Text { return &v.Earthing }).
			of("negative-ground", "positive-ground", "insulated"),
		count("earth_links", "Number of connections from DC negative to ground.", "1", func(v *Vessel) *Count { return &v.EarthLinks }).orZero(),
		flag("detector", "A ground detector is fitted (insulated systems).", func(v *Vessel) *Flag { return &v.Detector }),
		flag("ac", "Alternating current is aboard, from shore, a generator or an inverter.", func(v *Vessel) *Flag { return &v.AC }),
		text("service", "What the boat is used for.", "recreational", func(v *Vessel) *Text { return &v.Service }).
			of("recreational", "small-passenger", "fishing", "sailing-school", "towing", "workboat"),
		date("built", "Day the boat was built, or its keel laid.", "1998-04-30", func(v *Vessel) *Date { return &v.Built }),
	)
})

var spaceTable = sync.OnceValue(func() *table[Space] {
	return newTable("space", "A part of the boat and what it is like there.",
		text("kind", "What the space is.", "locker", func(s *Space) *Text { return &s.Kind }).
			of("accommodation", "locker", "engine", "battery", "bilge", "helm", "cockpit", "open-deck", "tank", "mast"),
		text("exposure", "How wet it gets: damp by condensation, wet by drips and spray, washed by seas or a hose.", "damp",
			func(s *Space) *Text { return &s.Exposure }).of("dry", "damp", "wet", "washed", "immersed"),
		measure("ambient", q.Temperature, "Highest air temperature in normal use.", "30 degC", func(s *Space) *Measure { return &s.Ambient }),
		text("fuel_vapour", "Fuel vapour that can gather there.", "none", func(s *Space) *Text { return &s.FuelVapour }).
			of("none", "petrol", "diesel", "gas"),
		words("petrol_source", "Petrol sources that stand in the space; [] if none does.", "[tank, fitting]",
			func(s *Space) *Words { return &s.PetrolSource }).of("engine", "tank", "fitting"),
		words("exhaust", "Exhaust parts that pass through the space; [] if none does.", "[dry, wet]",
			func(s *Space) *Words { return &s.Exhaust }).of("dry", "wet"),
		flag("fuel_line", "A line of petrol, diesel or other flammable liquid passes through the space.", func(s *Space) *Flag { return &s.FuelLine }),
		flag("machinery", "Machinery that moves stands in the space.", func(s *Space) *Flag { return &s.Machinery }),
		flag("open_to_air", "The space is open to the atmosphere.", func(s *Space) *Flag { return &s.OpenToAir }),
		measure("volume", q.Volume, "Net volume of air.", "400 L", func(s *Space) *Measure { return &s.Volume }),
		measure("bilge_water", q.Length, "Normal level of bilge water above the lowest point.", "40 mm",
			func(s *Space) *Measure { return &s.BilgeWater }).orZero(),
	)
})

var bundleTable = sync.OnceValue(func() *table[Bundle] {
	return newTable("bundle", "Conductors that run together.",
		words("members", "Conductors in the bundle.", "[P1, N1]", func(b *Bundle) *Words { return &b.Members }).to(toConductor),
		count("carrying", "Conductors in it that carry current, those that the record does not name included.", "4",
			func(b *Bundle) *Count { return &b.Carrying }).orZero(),
		text("note", "Anything worth knowing about it.", "AC cable clipped apart", func(b *Bundle) *Text { return &b.Note }),
	)
})

var caseTable = sync.OnceValue(func() *table[Case] {
	return newTable("case", "An operating case: what runs, and how switches stand.",
		words("loads", "Loads that draw current.", "[thruster]", func(c *Case) *Words { return &c.Loads }).to(toLoad),
		words("closed", "Switches and breakers that are closed.", "[isolator]", func(c *Case) *Words { return &c.Closed }).to(toSwitch),
		words("open", "Switches and breakers that are open.", "[parallel-switch]", func(c *Case) *Words { return &c.Open }).to(toSwitch),
		words("when", "Commands of relays and controllers that are given, as their links name them.", "[up]",
			func(c *Case) *Words { return &c.When }).to(toCommand),
		text("state", "State of the motors among the loads.", "running", func(c *Case) *Text { return &c.State }).
			of("running", "starting", "stalled"),
		text("source", "State of the batteries.", "normal", func(c *Case) *Text { return &c.Source }).of("normal", "low", "charging"),
	)
})

var testTable = sync.OnceValue(func() *table[Test] {
	return newTable("test", "One measurement or check.",
		text("kind", "What was tested.", "voltage-drop", func(t *Test) *Text { return &t.Kind }).must().
			of("voltage-drop", "polarity", "function", "insulation", "current", "pull", "hose", "continuity"),
		text("load", "Load that was tested.", "thruster", func(t *Test) *Text { return &t.Load }).to(toLoad),
		text("conductor", "Conductor that was tested.", "P1", func(t *Test) *Text { return &t.Conductor }).to(toConductor),
		text("penetration", "Penetration that was tested.", "deck-plug", func(t *Test) *Text { return &t.Penetration }).to(toPenetration),
		measure("current", q.Current, "Current that flowed.", "188 A", func(t *Test) *Measure { return &t.Current }).orNegative(),
		measure("at_source", q.Voltage, "Voltage at the source while it flowed.", "12.42 V", func(t *Test) *Measure { return &t.AtSource }).orNegative(),
		measure("at_load", q.Voltage, "Voltage at the load while it flowed.", "11.63 V", func(t *Test) *Measure { return &t.AtLoad }).orNegative(),
		measure("tolerance", q.Voltage, "Tolerance of the drop, that of both readings together.", "0.1 V", func(t *Test) *Measure { return &t.Tolerance }).orZero(),
		measure("resistance", q.Resistance, "Resistance that was read.", "20 Mohm", func(t *Test) *Measure { return &t.Resistance }).orZero(),
		measure("test_voltage", q.Voltage, "Voltage that the insulation was tested with.", "500 V", func(t *Test) *Measure { return &t.TestVoltage }),
		text("result", "Whether it passed.", "pass", func(t *Test) *Text { return &t.Result }).of("pass", "fail"),
		text("polarity", "Polarity that was found.", "correct", func(t *Test) *Text { return &t.Polarity }).of("correct", "reversed"),
		date("on", "Day of the test.", "2026-06-17", func(t *Test) *Date { return &t.On }),
		text("by", "Who tested.", "bench-2", func(t *Test) *Text { return &t.By }),
	)
})

var waiverTable = sync.OnceValue(func() *table[Waiver] {
	return newTable("waiver", "A breach that is let stand.",
		text("rule", "Rule that is waived.", "routing/support-too-far", func(w *Waiver) *Text { return &w.Rule }).must().sure().like(ruleForm()),
		text("at", "Part of the record that it is waived for.", "conductors.P4", func(w *Waiver) *Text { return &w.Subject }).must().sure().to(toSubject),
		text("reason", "Why it may stand.", "moulded liner, photographed", func(w *Waiver) *Text { return &w.Reason }),
		text("by", "Who decided.", "foreman", func(w *Waiver) *Text { return &w.By }),
		date("until", "Last day that it holds.", "2027-06-01", func(w *Waiver) *Date { return &w.Until }),
	)
})

var signOffTable = sync.OnceValue(func() *table[SignOff] {
	return newTable("sign_off", "The end of the job.",
		text("by", "Who signed.", "bench-2", func(s *SignOff) *Text { return &s.By }),
		text("licence", "Licence of the signer.", "on-file", func(s *SignOff) *Text { return &s.Licence }),
		date("on", "Day of signing.", "2026-06-18", func(s *SignOff) *Date { return &s.On }),
		text("digest", "Digest of the record as it was signed; if it differs, check shows the one of now.", "sha256:8f0c3b", func(s *SignOff) *Text { return &s.Digest }),
	)
})
