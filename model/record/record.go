package record

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

	Places Places // where the keys of the file stand

	spaces     map[string]*Space
	components map[string]*Component
	conductors map[string]*Conductor
	bundles    map[string]*Bundle
}

// Space returns the space with the id, or nil.
func (r *Record) Space(id string) *Space { return r.spaces[id] }

// Component returns the component with the id, or nil.
func (r *Record) Component(id string) *Component { return r.components[id] }

// ComponentKind is the kind of the component with an id; empty if there is none,
// or it is not known.
func (r *Record) ComponentKind(id string) string {
	if c := r.Component(id); c != nil {
		return c.Kind.V
	}
	return ""
}

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
