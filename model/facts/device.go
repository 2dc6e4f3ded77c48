package facts

import (
	"strings"

	"driploop/model/circuit"
	"driploop/model/record"
)

// Device is the facts of a fuse or breaker.
type Device struct {
	Subject
	Kind       string   `json:"kind"`
	Purpose    string   `json:"purpose"` // the record's "duty"; "normal" unless said
	RatingA    *float64 `json:"rating_a,omitempty"`
	RatedV     *float64 `json:"rated_v,omitempty"`
	NominalV   *float64 `json:"nominal_v,omitempty"` // of the circuit it stands in
	InterruptA *float64 `json:"interrupt_a,omitempty"`
	HolderA    *float64 `json:"holder_a,omitempty"`
	Curve      *string  `json:"curve,omitempty"`
	TripFree   *bool    `json:"trip_free,omitempty"`
	Reset      *string  `json:"reset,omitempty"`
	Poles      *int     `json:"poles,omitempty"`
	Opens      *string  `json:"opens,omitempty"`
	Label      *string  `json:"label,omitempty"`

	Ungrounded *bool `json:"ungrounded,omitempty"` // stands in an ungrounded conductor
	// First: the first device in series with a battery.
	First *bool `json:"first,omitempty"`
	// CrankingA is the sum of the cold-cranking currents of the batteries that
	// feed it; Lithium whether any of them is a lithium battery.
	CrankingA *float64 `json:"cranking_a,omitempty"`
	Lithium   *bool    `json:"lithium,omitempty"`
	Bank
	// FaultA is the greatest prospective current of a bolted fault at its load
	// terminal, FaultLeastA the least.
	FaultA      *float64 `json:"fault_a,omitempty"`
	FaultLeastA *float64 `json:"fault_least_a,omitempty"`
	LoadA       *float64 `json:"load_a,omitempty"`    // greatest continuous current through it
	RunningA    *float64 `json:"running_a,omitempty"` // greatest, starting and stall aside
	Fed
	Charging
	Selectivity
}

func (b *Builder) device(on *part) *Device {
	c, f := on.Component, b.made.devices.take()
	f.Subject, f.Kind, f.Purpose = b.subject(c.Path), c.Kind.V, c.Duty.Or("normal")
	s := &f.Subject
	putMeasure(s, "rating_a", &f.RatingA, &c.Rating, "rating")
	putMeasure(s, "rated_v", &f.RatedV, &c.Voltage, "voltage")
	putMeasure(s, "interrupt_a", &f.InterruptA, &c.Interrupt, "interrupt")
	putMeasure(s, "holder_a", &f.HolderA, &c.Holder, "holder")
	put(s, "curve", &f.Curve, &c.Curve, "curve")
	put(s, "trip_free", &f.TripFree, &c.TripFree, "trip_free")
	put(s, "reset", &f.Reset, &c.Reset, "reset")
	put(s, "poles", &f.Poles, &c.Poles, "poles")
	put(s, "opens", &f.Opens, &c.Opens, "opens")
	put(s, "label", &f.Label, &c.Label, "label")

	result := b.solved.Devices[c.ID]
	if result == nil {
		result = &circuit.DeviceResult{}
	}
	putFigure(s, "nominal_v", &f.NominalV, &result.NominalV)
	putSolved(s, "ungrounded", &f.Ungrounded, &result.Ungrounded)
	putSolved(s, "first", &f.First, &result.First)
	putFigure(s, "cranking_a", &f.CrankingA, &result.CrankingA)
	putFigure(s, "fault_a", &f.FaultA, &result.FaultHighA)
	putFigure(s, "fault_least_a", &f.FaultLeastA, &result.FaultLowA)
	putFigure(s, "load_a", &f.LoadA, &result.LoadA)
	putFigure(s, "running_a", &f.RunningA, &result.RunningA)
	b.lithium(s, f)
	b.bank(s, &f.Bank, on)
	b.fed(s, f, c.ID)
	b.selectivity(s, &f.Selectivity, result)
	return f
}

// lithium tells whether any battery of the record is a lithium one: whichever
// battery feeds the device, tables by cranking current do not hold beside them.
func (b *Builder) lithium(s *Subject, f *Device) {
	known := true
	for _, c := range b.record.Components {
		switch {
		case c.Kind.V != "battery":
		case !c.Chemistry.Is():
			known = false
		case c.Chemistry.V == "lithium":
			f.Lithium = s.flag(true)
			return
		}
	}
	if known {
		f.Lithium = s.flag(false)
		return
	}
	for _, c := range b.record.Components {
		if c.Kind.V == "battery" && !c.Chemistry.Is() {
			s.lacks("lithium", c.Path, "chemistry")
		}
	}
}

// Switch is the facts of a switch, relay or controller.
type Switch struct {
	Subject
	Kind          string   `json:"kind"`
	Purpose       string   `json:"purpose"`
	ContinuousA   *float64 `json:"continuous_a,omitempty"`
	IntermittentA *float64 `json:"intermittent_a,omitempty"`
	CurrentA      *float64 `json:"current_a,omitempty"` // greatest through it, starting and stall aside
	SurgeA        *float64 `json:"surge_a,omitempty"`
	// Deck: a foot or deck switch. One that stands neither on an open deck nor in
	// a cockpit is none unless the record says so.
	Deck        *bool   `json:"deck,omitempty"`
	Guarded     *bool   `json:"guarded,omitempty"`
	Interlocked *bool   `json:"interlocked,omitempty"`
	Label       *string `json:"label,omitempty"`
	// Disconnects: it is the switch that cuts off a battery.
	Disconnects bool `json:"disconnects"`
}

func (b *Builder) switching(c *record.Component, result *circuit.ComponentResult) *Switch {
	f := b.made.switches.take()
	f.Subject, f.Kind, f.Purpose = b.subject(c.Path), c.Kind.V, c.Duty.Or("normal")
	s := &f.Subject
	putMeasure(s, "continuous_a", &f.ContinuousA, &c.Continuous, "continuous")
	putMeasure(s, "intermittent_a", &f.IntermittentA, &c.Intermittent, "intermittent")
	b.deckSwitch(s, f, c)
	put(s, "guarded", &f.Guarded, &c.Guarded, "guarded")
	put(s, "interlocked", &f.Interlocked, &c.Interlocked, "interlocked")
	put(s, "label", &f.Label, &c.Label, "label")
	putFigure(s, "current_a", &f.CurrentA, &result.Through)
	putFigure(s, "surge_a", &f.SurgeA, &result.Surge)
	f.Disconnects = b.disconnects(c.ID)
	return f
}

func (b *Builder) deckSwitch(s *Subject, f *Switch, c *record.Component) {
	space := b.record.Space(c.Space.V)
	if !c.DeckSwitch.Is() && space != nil && space.Kind.Is() && space.Kind.V != "open-deck" && space.Kind.V != "cockpit" {
		f.Deck = s.flag(false)
		return
	}
	put(s, "deck", &f.Deck, &c.DeckSwitch, "deck_switch")
}

// join lists names for a sentence.
func join(names []string) string { return strings.Join(names, ", ") }
