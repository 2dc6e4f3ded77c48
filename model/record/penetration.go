package record

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
