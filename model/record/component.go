package record

// Link is a path inside a component between two of its terminals.
type Link struct {
	Entry
	Between    []string // two terminals
	Rating     Measure
	Resistance Measure
	When       Text // position or command in which it is closed; absent: always
}

// CurvePoint is a point of a maker's time-current curve: at a current the device
// opens between two times.
type CurvePoint struct {
	Entry
	Current         Measure
	Least, Greatest Measure // either may be left out: at once, or never for sure
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
	CurvePoints       []*CurvePoint
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
	BeforeStart     Flag // blower: the engine cannot be started before it runs
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
