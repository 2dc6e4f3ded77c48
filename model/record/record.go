package record

import "driploop/model/verdict"

// Record is one installation record.
type Record struct {
	Name   string // file name as given, for messages
	SHA256 string // digest of the bytes read

	Version      int
	Job          Job
	Vessel       Vessel
	Practice     Words // default: us-federal, workmanship
	Spaces       []*Space
	Components   []*Component
	Conductors   []*Conductor
	Bundles      []*Bundle
	Penetrations []*Penetration
	Cases        []*Case
	Tests        []*Test
	Waivers      []*Waiver
	SignOff      SignOff

	// Places maps the path of every key of the file to where it stands.
	Places map[string]verdict.Range

	spaces     map[string]*Space
	components map[string]*Component
	conductors map[string]*Conductor
	bundles    map[string]*Bundle
}

// Space returns the space with the id, or nil.
func (r *Record) Space(id string) *Space { return r.spaces[id] }

// Component returns the component with the id, or nil.
func (r *Record) Component(id string) *Component { return r.components[id] }

// Conductor returns the conductor with the id, or nil.
func (r *Record) Conductor(id string) *Conductor { return r.conductors[id] }

// Bundle returns the bundle with the id, or nil.
func (r *Record) Bundle(id string) *Bundle { return r.bundles[id] }

// Job says what was done, for whom, and when.
type Job struct {
	Entry
	Number    Text
	Title     Text
	Kind      Text // windlass, thruster, pump, lights, ...
	Yard      Text
	Started   Date
	Completed Date
}

// Vessel is the boat, as far as rules ask.
type Vessel struct {
	Entry
	Name       Text
	Length     Measure
	Hull       Text    // frp, wood, aluminium, steel
	Propulsion Text    // petrol-inboard, petrol-sterndrive, petrol-outboard, diesel-inboard, electric, none
	Engines    Count   // propulsion engines
	Auxiliary  Text    // none, petrol, diesel: engine for generating or other power, not outboard
	System     Measure // nominal voltage
	Earthing   Text    // negative-ground, positive-ground, insulated
	EarthLinks Count   // connections from DC negative to ground
	Detector   Flag    // ground detector fitted (insulated systems)
	AC         Flag    // alternating current is aboard, from shore or an inverter
	Service    Text    // recreational, small-passenger, fishing, sailing-school, towing, workboat
	Built      Date
}

// Space is a part of the boat: what surrounds the equipment and wiring in it.
type Space struct {
	Entry
	Kind         Text // accommodation, locker, engine, battery, bilge, helm, cockpit, open-deck, tank
	Exposure     Text // dry, damp, wet, washed, immersed
	Ambient      Measure
	FuelVapour   Text  // none, petrol, diesel, gas
	PetrolSource Words // engine, tank, fitting: which petrol sources stand in the space
	Exhaust      Words // dry, wet: which exhaust parts pass through the space
	FuelLine     Flag  // a line of flammable liquid passes through the space
	Machinery    Flag  // machinery that moves stands in the space
	OpenToAir    Flag
	Volume       Measure
	BilgeWater   Measure // normal level above the lowest point
}

// Link is a path inside a component between two of its terminals.
type Link struct {
	Entry
	Between    []string // two terminals
	Rating     Measure
	Resistance Measure
	When       Text // position or command in which it is closed; absent: always
}

// Component is a piece of equipment. Which fields it may carry depends on Kind;
// the decoder refuses the others.
type Component struct {
	Entry
	Kind  Text
	Space Text
	Label Text // as marked on it or beside it

	// any component
	Nominal           Measure // nominal or rated supply voltage
	IP                Text    // such as IP67
	IgnitionProtected Flag
	Isolation         Isolation
	MetalCase         Flag
	Bonded            Flag
	Marked            Flag    // voltage and current marked on it
	Enclosure         Text    // none, open, fire-retardant, watertight
	EntrySide         Text    // "entry": where cables enter: below, side, top
	Resistance        Measure // terminal to terminal, or internal (battery)
	FactoryLead       Measure // exposed length of its own leads

	// battery
	Chemistry         Text // flooded, agm, gel, lithium
	Capacity          Measure
	Cranking          Measure // cold-cranking current
	Units             Count   // batteries in the bank
	UnitsMatch        Flag
	Weight            Measure
	Movement          Measure // largest movement seen in the restraint test
	TestForce         Measure
	TestTime          Measure // of each pull
	Pulls             Count   // directions pulled
	TerminalsCovered  Flag    // every terminal; ungrounded_covered for only those
	UngroundedCovered Flag
	VentedTo          Text    // outside, space, none
	VentOpening       Measure // area, inlet and outlet each
	Tray              Text    // none, plain, resistant, liquid-tight
	AboveBilge        Measure // height of its foot above normal bilge water
	InSplash          Flag
	FuelAbove         Text    // none, tank, filter, fitting: directly above or below
	FuelMetalNear     Measure // distance to the nearest metallic fuel part above its top plane
	FuelShield        Flag
	Managed           Flag // lithium: management system

	// alternator, charger, solar
	Output       Measure // greatest output current
	OutputAt     Measure // temperature of that rating
	Voltage      Measure // regulated voltage (sources), rated voltage (devices)
	Regulated    Flag
	SelfLimiting Flag

	// fuse, breaker, switch, busbar, relay
	Rating            Measure
	Interrupt         Measure // interrupting capacity
	Curve             Text    // blade-c, blade-e, mini, bolt-in, thermal, thermal-magnetic
	Holder            Measure // rating of the fuse's holder
	TripFree          Flag
	Reset             Text // manual, automatic
	Poles             Count
	Continuous        Measure
	Intermittent      Measure
	Opens             Text // ungrounded, grounded, both
	Duty              Text // what a switch or device is for: battery-disconnect, main, branch, motor, ...
	Guarded           Flag // deck or foot switch: against accidental operation
	DeckSwitch        Flag
	Reach             Measure // distance of a battery switch from its battery
	ReadilyAccessible Flag
	Interlocked       Flag
	Posts             []*Post // studs of a busbar, or of any component by terminal
	Stud              Text
	StudMaterial      Text
	Links             []*Link
	Coils             []*Coil

	// loads
	Current         Measure
	Power           Measure
	LoadOhms        Measure // resistance of a resistive load
	LoadKind        Text    // constant-current, constant-power, resistance
	Stall           Measure
	Starting        Measure
	StartTime       Measure
	RunTime         Measure
	MotorLimit      Measure // time that the motor stands locked rotor
	Protector       Text    // none, thermal-auto, thermal-manual: built into the motor
	Continuously    Flag    // runs without pause in normal use
	DropClass       Text    // critical, other
	Purpose         Text    // navigation-light, cabin-light, bilge-pump, blower, windlass, thruster, radio, steering, alarm, cranking, ...
	MinVoltage      Measure
	LocalDisconnect Text // in-sight, lockable, none
	Reversible      Flag
}

// Post is a stud or screw of a component, with what rules ask of it.
type Post struct {
	Entry
	Terminal string
	Stud     Text
	Material Text
	Cover    Text // none, boot, cap, shield
}

// Coil is a control input: a small load between two terminals.
type Coil struct {
	Entry
	Between []string
	Current Measure
	When    Text // the command that energises it
}

// Isolation is how a component that can spark is kept from a petrol source.
type Isolation struct {
	Entry
	Means          Text    // bulkhead, deck, enclosure, lower-with-means, distance, none
	Distance       Measure // to the nearest petrol source
	OpenToAir      Flag
	Height         Text    // above, below, level: against the source
	WaterHeld      Measure // height of water that the bulkhead holds
	BulkheadHeight Measure
	Seepage        Measure // volume per hour
}

// Conductor is one insulated wire or cable core between two terminals.
type Conductor struct {
	Entry
	From, To        Terminal
	Role            Text // positive, negative, bonding, control
	Size            Wire
	Colour          Text    // such as red, or green/yellow
	Insulation      Measure // temperature rating, dry
	Compound        Text    // pvc, xlpe, epr, silicone
	Wet             Measure // temperature rating, wet
	OilResistant    Flag
	Material        Text // copper, aluminium
	Strands         Count
	Class           Text // solid, class-2, class-5, class-6, type-2, type-3
	Tinned          Flag
	Standard        Text    // as marked: ul-1426, sae-j1127, sae-j1128, iso-6722, ...
	Diameter        Measure // outside
	Length          Measure
	Sheath          Text    // id shared by the cores of one sheath
	SheathTail      Measure // longest length out of the sheath
	Duty            Text    // cranking, ignition-secondary, resistance, communication, navigation, electronic, instrument, normal
	InHousing       Flag    // wholly inside an equipment housing
	Pigtail         Flag    // factory lead of a component
	Exposed         Measure // exposed length of a pigtail
	AlwaysLive      Flag
	Twisted         Flag    // with its return
	Spacing         Measure // from its return, near a compass
	CompassDistance Measure
	BendRadius      Measure
	Splices         Count
	SpliceFromEnd   Measure
	FirstSupport    Measure
	Labelled        Text // both, one, none
	CrossSet        Flag
	Route           []*Segment
	Ends            Ends
}

// Terminal is one end of a conductor: component.terminal.
type Terminal struct {
	Component string
	Name      string
	At        verdict.Range
}

// String returns the terminal as a record writes it.
func (t Terminal) String() string { return t.Component + "." + t.Name }

// Segment is a part of a conductor's route within one space.
type Segment struct {
	Entry
	Space        Text
	Length       Measure
	In           Text // open, loom, conduit, trunking, tray, sheath, enclosure
	Bundle       Text
	Support      Measure // largest distance between supports
	SupportKind  Text    // clamp, cushioned-clamp, metal-clamp, tie, tape, saddle
	Bilge        Text    // above, below: against normal bilge water
	MadeForWater Flag
	ExhaustDry   Measure // distance to a dry exhaust
	ExhaustWet   Measure
	FuelLine     Measure // distance to a fuel line
	FuelLineSide Text    // above, below, tied: where the conductor runs against it
	RigidSupport Flag
	WithAC       Text // none, separated, bundled, one-sheath
	Walkway      Flag
	MovingParts  Measure
	Protected    Flag // against mechanical harm
	LoomRating   Text // ul-94-v-2, ul-94-v-0, none
	Drains       Flag
	Horizontal   Flag
	ConduitBore  Measure
}

// Ends holds both ends of a conductor.
type Ends struct {
	Entry
	From, To *End
}

// End is how a conductor is landed.
type End struct {
	Entry
	Terminal       Text // ring, captive-spade, flanged-spade, spade, blade, bullet, butt, bare, ferrule, solder-lug, twist-on, spring-clip, plug
	Hole           Text // ring hole as marked: M8, 5/16 in, 10 mm
	Stud           Text
	Order          Count // on the stud, 1 next to it
	Barrel         Words // sizes that the barrel takes: [least, most]
	Crimp          Crimp
	Soldered       Text // none, only, also, battery-lug
	SolderLength   Measure
	Torque         Measure
	TorqueRange    Span // maker's
	Cover          Text // none, boot, cap, shield, heat-shrink, heat-shrink-adhesive, sealant
	Plating        Text // tin, nickel, none, ...
	Metal          Text // copper, brass, ...
	WasherInPath   Flag
	Nut            Text // nut, lock-nut, wing-nut, screw, set-screw
	DripLoop       Flag
	Falls          Flag // the cable comes down to this end
	Slack          Text // two, one, none: re-terminations left
	DamagedStrands Count
	BrokenStrands  Count
	PullHeld       Measure // friction terminals: force held for a minute
}

// Crimp is how a terminal was crimped and proven.
type Crimp struct {
	Entry
	Tool       Text // ratchet, plain, hammer, hydraulic
	Calibrated Flag
	Matching   Flag // die and terminal belong together
	Pull       Measure
	PullTime   Measure
}

// Bundle is a group of conductors that run together.
type Bundle struct {
	Entry
	Members  Words
	Carrying Count // current-carrying conductors, if more than the record names
	Note     Text
}

// Penetration is a hole in a panel with what passes through and what seals it.
type Penetration struct {
	Entry
	From, To       Text // spaces
	Panel          Panel
	Hole           Hole
	Passes         Words // conductors
	Seal           Seal
	Bedding        Bedding
	Fasteners      Fasteners
	DripLoop       DripLoop
	LoadBearing    Flag
	Backing        Text // none, plate, core-plug
	EntersTop      Flag // entry on top of an enclosure
	EquipmentBelow Flag
}

// Panel is what the hole goes through.
type Panel struct {
	Entry
	Build          Text // solid, cored, metal, plastic, wood
	Core           Text // balsa, foam, ply, honeycomb, none
	Skin           Text // frp, wood, aluminium, steel, acrylic, polycarbonate, abs, pvc
	Gelcoat        Flag
	Thickness      Measure
	Part           Text    // deck, bulkhead, hull, coaming, liner, enclosure
	Watertight     Flag    // has to stay watertight
	Isolates       Text    // petrol, none
	Height         Measure // of a bulkhead
	BelowWaterline Flag
}

// Hole is the hole itself.
type Hole struct {
	Entry
	Diameter Measure
	Edge     Text    // raw, chamfered, rounded, grommet, bush, edge-strip
	CoreEdge Text    // raw, epoxy-annulus, core-plug, tube, sealed, solid
	Height   Measure // above the foot of the bulkhead
	Gap      Measure // largest annular gap
}

// Seal is what closes the hole around the cable.
type Seal struct {
	Entry
	Kind   Text // gland, grommet, bush, connector, compound, boot, none
	Rating Text // IP code
	Grips  Span
	Holes  Count // wire holes in it
}

// Bedding is the compound under a fitting.
type Bedding struct {
	Entry
	Compound    Text  // polysulphide, polyurethane, silicone-acid, silicone-neutral, hybrid, butyl, none
	On          Words // materials that it touches
	MakerAllows Words
	Applied     Date
	Cure        Measure // time that the maker asks for
	InService   Date
	SqueezeOut  Text // little, none, much
	Place       Text // "at": fuel, heat, electrical, below-water, deck
}

// Fasteners hold the fitting.
type Fasteners struct {
	Entry
	Count       Count
	Material    Text
	Bedded      Flag
	Countersunk Flag // or chamfered
	CoreSealed  Flag
	Isolated    Flag // from a metal panel
}

// DripLoop is the loop of the cable at a penetration.
type DripLoop struct {
	Entry
	Side       Text // from, to, both, none
	Depth      Measure
	CableFalls Flag // the cable comes down to the hole
}

// Case is an operating case that the record declares.
type Case struct {
	Entry
	Loads  Words
	Closed Words // switches
	Open   Words
	When   Words // commands of relays and controllers
	State  Text  // running, starting, stalled
	Source Text  // normal, low, charging
}

// Test is one measurement or check that was made.
type Test struct {
	Entry
	Kind        Text // voltage-drop, polarity, function, insulation, current, pull, hose, continuity
	Load        Text
	Conductor   Text
	Penetration Text
	Current     Measure
	AtSource    Measure
	AtLoad      Measure
	Tolerance   Measure
	Resistance  Measure
	TestVoltage Measure
	Result      Text // pass, fail
	Polarity    Text // correct, reversed
	On          Date
	By          Text
}

// Waiver lets a breach stand for a time.
type Waiver struct {
	Entry
	Rule    Text
	Subject Text // written "at"
	Reason  Text
	By      Text
	Until   Date
}

// SignOff closes the job.
type SignOff struct {
	Entry
	By      Text
	Licence Text
	On      Date
	Digest  Text
}
