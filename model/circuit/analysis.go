package circuit

import (
	"driploop/model/figure"
	"driploop/model/verdict"
)

// Analysis is what the circuit of one record makes of it: everything that a
// rule compares and a schedule prints. Maps are keyed by the ids of the record.
type Analysis struct {
	Conductors map[string]*ConductorResult
	Devices    map[string]*DeviceResult // fuses and breakers
	Loads      map[string]*LoadResult   // every component that draws current
	Batteries  map[string]*BatteryResult
	Components map[string]*ComponentResult // every component
	Terminals  map[string]*TerminalResult  // by "component.terminal", as far as conductors land there
	Cases      Cases
	Problems   []Problem
}

// Cases gives the operating cases. They are laid out when somebody asks for them;
// the figures above are there without.
type Cases func() []*CaseResult

// All returns every case that was solved, in a fixed order.
func (c Cases) All() []*CaseResult {
	if c == nil {
		return nil
	}
	return c()
}

// Problem is a fault of the network that left a part of it unsolved.
type Problem struct {
	Kind  ProblemKind
	Path  string        // place in the record
	At    verdict.Range // the same, in the file
	Says  string
	Nodes []string // terminals concerned
}

// ProblemKind classifies a Problem.
type ProblemKind string

// The problems.
const (
	Island   ProblemKind = "island"   // no path to a source, or no return
	Shorted  ProblemKind = "shorted"  // a source short-circuited by the wiring
	Singular ProblemKind = "singular" // no unique solution
	Collapse ProblemKind = "collapse" // constant power cannot be delivered
	Mismatch ProblemKind = "mismatch" // recorded role and wiring differ
)

// ConductorResult is what the circuit makes of one conductor.
type ConductorResult struct {
	// Ungrounded tells whether it stands at the potential of an ungrounded
	// pole: positive and control conductors in a negative-ground system, both
	// poles in an insulated one. Bonding conductors never do.
	Ungrounded figure.Truth
	// AlwaysLive tells whether a source feeds it through no switch. A contact that
	// a command closes is no switch: the command may come at any time.
	AlwaysLive figure.Truth
	// Feeds has one entry for each source terminal that can feed the conductor
	// with every switch closed, in the order of the record.
	Feeds []Feed

	AreaMM2      figure.Figure // copper cross-section
	CircularMils figure.Figure
	DiameterMM   figure.Figure // outside, as recorded; copper.Diameter bounds it otherwise
	R20          figure.Figure // mohm, whole conductor at 20 °C
	RHot         figure.Figure // mohm at the conductor's working temperature

	Table5         figure.Figure // A, uncorrected
	InEngineSpace  figure.Truth  // any segment in an engine space
	HottestSpace   string        // id of the space that governs, "" if unknown
	HottestAmbient figure.Figure // degC
	Allowable      figure.Figure // A, corrected for the hottest space crossed
	BundleCount    figure.Figure // greatest number of current-carrying conductors it runs with, itself included
	Bundled        figure.Figure // A, Allowable with the bundling factor

	// Current is the greatest magnitude over all cases except starting and
	// stall; CurrentCase names the case.
	Current     figure.Figure
	CurrentCase string
	// Surge is the same over starting and stall cases; open where a load draws
	// through it whose starting or stall current is not recorded.
	Surge     figure.Figure
	SurgeCase string

	// Guard is the rating that limits what the conductor can carry for long
	// towards either end: of devices in series the least rating, of those side by
	// side, such as the fuses of two batteries on one bus, the sum. For a conductor
	// ahead of its first device it is the sum of the devices that it feeds. Unknown
	// with gaps if a rating is missing or a feed has no device at all.
	Guard   figure.Figure
	GuardBy []string // the devices behind that figure, in record order

	// FaultLowA and FaultHighA bound the prospective current of a bolted fault
	// at the end away from the source, of a conductor that is fed from both ends at
	// the unfavourable one: the least with a way back beside the way
	// out, batteries at their greatest resistance, conductors warm; the
	// greatest to the battery's negative terminal, at the least resistance, cold.
	FaultLowA, FaultHighA figure.Figure
	// Clears tells whether the devices ahead of it surely open at the least of
	// that current, ClearS within which time at most; ClearLeastS is the least
	// time, at the greatest current: they open no sooner.
	Clears              figure.Truth
	ClearLeastS, ClearS figure.Figure
	// LetThroughA2s is the greatest energy that they let through at any fault
	// along it, LetThroughLeastA2s what they let through at some fault however
	// quick they are; WithstandA2s is what its insulation stands: k²·S².
	LetThroughLeastA2s, LetThroughA2s, WithstandA2s figure.Figure
	// ClearByS and LetThroughUpToA2s are ClearS and LetThroughA2s, or where these
	// hang on a device of which not all is known, what they are at most, since
	// another one opens by then.
	ClearByS, LetThroughUpToA2s figure.Figure

	// TemperatureC is the highest that it reaches in normal use, a load that
	// pauses counted for its longest run; StallC the highest when a stalled motor
	// is cut off. Each is capped where copper melts.
	TemperatureC figure.Figure
	StallC       figure.Figure
}

// Feed is one source that can feed a conductor.
type Feed struct {
	Source       string       // terminal, such as "house.pos"
	SourceKind   string       // component kind: battery, alternator, charger, ...
	SelfLimiting figure.Truth // of alternators, chargers and the like
	// Device is the first protective device between the source and the
	// conductor, "" if the conductor lies ahead of it.
	Device string
	// Ahead is set if no device lies between source and conductor. Then, over
	// every way on from the conductor:
	//   NextDevices are the first devices reached,
	//   Bare tells whether a way reaches a load or another source, or ends,
	//   without any device; BareVia names that end. A link between the batteries of
	//   a series bank leads on through the next battery.
	Ahead       bool
	NextDevices []string
	Bare        bool
	BareVia     string
	// EndsAtDevice is set if the conductor itself lands on its next device.
	// Length is then the length along the conductors from the source to that
	// device, Via those conductors from the source on, and Enclosed whether
	// each of them runs in a sheath, conduit, trunking or enclosure all the way.
	// Direct tells that the way starts on the battery terminal itself (always
	// so for a battery).
	EndsAtDevice string
	Length       figure.Figure // mm
	Via          []string
	Enclosed     figure.Truth
	// OwnLength and OwnEnclosed tell the same of what of the way is its own, from
	// the terminal OwnFrom on: without the conductors from a battery, first on the
	// way, that feed a cranking motor.
	OwnFrom     string
	OwnLength   figure.Figure // mm
	OwnEnclosed figure.Truth
}

// DeviceResult is what the circuit makes of a fuse or breaker.
type DeviceResult struct {
	// First tells whether it is the first device in series with a battery.
	First      figure.Truth
	Ungrounded figure.Truth // whether it stands in an ungrounded conductor
	// NominalV is the nominal voltage of the circuit it stands in.
	NominalV figure.Figure
	// CrankingA is the sum of the cold-cranking currents of the batteries
	// connected to it in parallel.
	CrankingA figure.Figure
	// FaultLowA and FaultHighA bound the prospective current of a bolted fault
	// at its load terminal.
	FaultLowA, FaultHighA figure.Figure
	// LoadA is the greatest continuous current through it, RunningA that over
	// all cases but starting and stall.
	LoadA    figure.Figure
	RunningA figure.Figure
	Loads    []string // that it feeds
	// Selective tells, for each device between the batteries and this one, whether
	// a fault behind this one leaves that one closed, whatever its current.
	Selective map[string]figure.Truth
}

// LoadResult is what the circuit makes of a load.
type LoadResult struct {
	Fed      figure.Truth  // there is a way from a source and back
	Current  figure.Figure // A, running alone
	NominalV figure.Figure
	// Out and Back are the conductors from the source to the load and back,
	// when it runs alone, largest current first where ways divide.
	Out, Back []string
	Source    string // source terminal that feeds it
	// DropFormulaV is the drop out and back by the standards' formula
	// E = K·I·L/CM with K = 10.75, summed over the conductors.
	DropFormulaV figure.Figure
	// DropNetworkV is the source's terminal voltage less the load's in the
	// solved network, running alone.
	DropNetworkV figure.Figure
	VoltageV     figure.Figure // at its terminals, running alone
	LowVoltageV  figure.Figure // the same with a low battery
	Devices      []string      // protective devices on the way out, from the source on
	InSeries     []string      // those of them that carry all of its current
	Switches     []string      // switches on the way out

	// StallA is the current with its rotor locked. StallOpens tells whether a
	// device on its way out surely opens at that, StallOpenS within which time
	// at most, StallBy which one does; StallOpenLeastS is the least time, open
	// with a reason where none opens. StallHeatS is the least time in which a
	// conductor on its way passes the temperature rating of its insulation,
	// StallAt that conductor; open with a reason where none ever does, which
	// StallHeats tells.
	StallA     figure.Figure
	StallOpens figure.Truth

	StallOpenLeastS, StallOpenS figure.Figure

	StallBy    string
	StallHeats figure.Truth
	StallHeatS figure.Figure
	StallAt    string
}

// BatteryResult is what the circuit makes of a battery.
type BatteryResult struct {
	// Switched tells whether a switch opens the battery's ungrounded conductors.
	// It is open while the duty of the switch that would is not recorded.
	Switched figure.Truth
	// Disconnect names that switch, recorded as such or not; Bypass the
	// conductors on its ungrounded terminal that no switch opens (cranking feeds
	// included).
	Disconnect string
	Bypass     []string
	// SwitchLength is the length along the conductors from its ungrounded
	// terminal to that switch.
	SwitchLength                  figure.Figure // mm
	OpenV                         figure.Figure // open-circuit voltage taken
	ResistanceLow, ResistanceHigh figure.Figure // mohm, internal
}

// ComponentResult is what the circuit makes of any component.
type ComponentResult struct {
	Through  figure.Figure // A, greatest through it over all cases but starting and stall
	Surge    figure.Figure // A, the same over starting and stall
	NominalV figure.Figure // of the circuit it stands in
	// Contacts lists the contacts inside a switch, relay, controller or connector,
	// in order of the record.
	Contacts []*ContactResult
}

// TerminalResult is what lands on one terminal or stud.
type TerminalResult struct {
	Component  string
	Terminal   string
	Landed     []string // conductor ends, such as "P1.from", in order of the record
	Ungrounded figure.Truth
	AlwaysLive figure.Truth
	Protected  figure.Truth // every source reaches it through a device
}

// CaseResult is one solved operating case. A case about one load (alone,
// starting, stalled) lists only what is on the way of that load's current; all
// else is as without load, or as in the continuous case that it stands on.
type CaseResult struct {
	Name     string
	Kind     CaseKind
	Load     string             // the load alone, starting or stalled
	Voltages map[string]float64 // V by terminal, against the lowest negative terminal of a source
	Currents map[string]float64 // A by conductor, positive from "from" to "to"
	Sources  map[string]float64 // A out of the positive terminal by source
	// Temperatures are those that the currents lead to in the end, °C by
	// conductor, where known; none in cases that do not last (starting, stalled).
	Temperatures map[string]float64
	Problem      *Problem     // set if it could not be solved
	Gaps         []figure.Gap // what the record lacks to solve it
}

// CaseKind classifies an operating case.
type CaseKind string

// The kinds of operating case.
const (
	Alone      CaseKind = "alone"
	Continuous CaseKind = "continuous" // all loads that run without pause
	All        CaseKind = "all"        // all loads running at once
	Starting   CaseKind = "starting"
	Stalled    CaseKind = "stalled"
	Charging   CaseKind = "charging"
	Low        CaseKind = "low"
	Declared   CaseKind = "declared"
)
