package record

import "driploop/model/verdict"

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

	both [2]End // room for them: a conductor that was read has both
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
