package facts

import (
	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Battery is the facts of a battery or bank.
type Battery struct {
	Subject
	Chemistry  *string  `json:"chemistry,omitempty"`
	NominalV   *float64 `json:"nominal_v,omitempty"`
	CapacityAh *float64 `json:"capacity_ah,omitempty"`
	CrankingA  *float64 `json:"cranking_a,omitempty"`
	Units      *int     `json:"units,omitempty"`
	UnitsMatch *bool    `json:"units_match,omitempty"`

	WeightKG *float64 `json:"weight_kg,omitempty"`
	// TwiceWeightN is the force of twice its weight.
	TwiceWeightN *float64 `json:"twice_weight_n,omitempty"`
	MovementMM   *float64 `json:"movement_mm,omitempty"`
	TestForceN   *float64 `json:"test_force_n,omitempty"`
	TestTimeS    *float64 `json:"test_time_s,omitempty"`
	Pulls        *int     `json:"pulls,omitempty"`

	// TerminalsCovered: every terminal; UngroundedCovered: at least the
	// ungrounded ones.
	TerminalsCovered  *bool    `json:"terminals_covered,omitempty"`
	UngroundedCovered *bool    `json:"ungrounded_covered,omitempty"`
	VentedTo          *string  `json:"vented_to,omitempty"`
	VentCM2           *float64 `json:"vent_cm2,omitempty"`
	Tray              *string  `json:"tray,omitempty"`
	AboveBilgeMM      *float64 `json:"above_bilge_mm,omitempty"`
	InSplash          *bool    `json:"in_splash,omitempty"`
	FuelAbove         *string  `json:"fuel_above,omitempty"` // what stands directly above or below it
	FuelMetalMM       *float64 `json:"fuel_metal_mm,omitempty"`
	FuelShield        *bool    `json:"fuel_shield,omitempty"`
	Managed           *bool    `json:"managed,omitempty"`
	SpaceKind         *string  `json:"space_kind,omitempty"`
	Exposure          *string  `json:"exposure,omitempty"`
	FuelVapour        *string  `json:"fuel_vapour,omitempty"`

	// Switched: a switch opens all of its ungrounded conductors but those named
	// in Bypass.
	Switched *bool    `json:"switched,omitempty"`
	Switch   *string  `json:"switch,omitempty"`
	SwitchMM *float64 `json:"switch_mm,omitempty"` // along the conductors to it
	// SwitchAccessible: that switch can be reached at once, without tools.
	SwitchAccessible *bool    `json:"switch_accessible,omitempty"`
	Bypass           []string `json:"bypass"`
	Stowage
}

// standardGravity turns a mass into its weight, m/s². Source: CGPM 1901,
// resolution 3.
const standardGravity = 9.80665

func (b *Builder) battery(c *record.Component) *Battery {
	f := b.made.batteries.take()
	f.Subject, f.Bypass = b.subject(c.Path), []string{}
	s := &f.Subject
	put(s, "chemistry", &f.Chemistry, &c.Chemistry, "chemistry")
	putMeasure(s, "nominal_v", &f.NominalV, &c.Nominal, "nominal")
	putMeasure(s, "capacity_ah", &f.CapacityAh, &c.Capacity, "capacity")
	putMeasure(s, "cranking_a", &f.CrankingA, &c.Cranking, "cranking")
	put(s, "units", &f.Units, &c.Units, "units")
	put(s, "units_match", &f.UnitsMatch, &c.UnitsMatch, "units_match")
	restraint(s, f, c)
	put(s, "terminals_covered", &f.TerminalsCovered, &c.TerminalsCovered, "terminals_covered")
	if f.TerminalsCovered != nil && *f.TerminalsCovered {
		f.UngroundedCovered = f.TerminalsCovered
	} else {
		put(s, "ungrounded_covered", &f.UngroundedCovered, &c.UngroundedCovered, "ungrounded_covered")
	}
	put(s, "vented_to", &f.VentedTo, &c.VentedTo, "vented_to")
	if c.VentOpening.Is() {
		f.VentCM2 = s.number(c.VentOpening.V.In("cm2"))
	} else {
		s.missing("vent_cm2", "vent_opening")
	}
	put(s, "tray", &f.Tray, &c.Tray, "tray")
	putMeasure(s, "above_bilge_mm", &f.AboveBilgeMM, &c.AboveBilge, "above_bilge")
	put(s, "in_splash", &f.InSplash, &c.InSplash, "in_splash")
	put(s, "fuel_above", &f.FuelAbove, &c.FuelAbove, "fuel_above")
	putMeasure(s, "fuel_metal_mm", &f.FuelMetalMM, &c.FuelMetalNear, "fuel_metal_near")
	put(s, "fuel_shield", &f.FuelShield, &c.FuelShield, "fuel_shield")
	put(s, "managed", &f.Managed, &c.Managed, "managed")
	b.surroundings(s, &c.Space, &f.SpaceKind, &f.Exposure, &f.FuelVapour)
	b.stowage(s, f, c)
	b.disconnect(s, f, b.solved.Batteries[c.ID])
	return f
}

// restraint sets what the pull test of the battery's hold-down showed.
func restraint(s *Subject, f *Battery, c *record.Component) {
	putMeasure(s, "weight_kg", &f.WeightKG, &c.Weight, "weight")
	if s.derivable("twice_weight_n", operand{"weight_kg", f.WeightKG}) {
		f.TwiceWeightN = s.number(quantity.Round(2 * *f.WeightKG * standardGravity))
	}
	putMeasure(s, "movement_mm", &f.MovementMM, &c.Movement, "movement")
	putMeasure(s, "test_force_n", &f.TestForceN, &c.TestForce, "test_force")
	putMeasure(s, "test_time_s", &f.TestTimeS, &c.TestTime, "test_time")
	put(s, "pulls", &f.Pulls, &c.Pulls, "pulls")
}

func (b *Builder) disconnect(s *Subject, f *Battery, result *circuit.BatteryResult) {
	if result == nil {
		s.because("nothing is wired to the battery in the record", "switched", "switch", "switch_mm", "switch_accessible")
		return
	}
	f.Bypass = append(f.Bypass, result.Bypass...)
	putSolved(s, "switched", &f.Switched, &result.Switched)
	if result.Disconnect == "" {
		s.because("no switch stands in its ungrounded conductors", "switch", "switch_mm", "switch_accessible")
		return
	}
	f.Switch = &result.Disconnect
	putFigure(s, "switch_mm", &f.SwitchMM, &result.SwitchLength)
	by := b.record.Component(result.Disconnect)
	putOf(s, "switch_accessible", &f.SwitchAccessible, &by.ReadilyAccessible, by.Path, "readily_accessible")
}

// Charger is the facts of what charges a battery: charger, alternator, solar
// array or generator.
type Charger struct {
	Subject
	Kind         string   `json:"kind"`
	OutputA      *float64 `json:"output_a,omitempty"`
	RegulatedV   *float64 `json:"regulated_v,omitempty"`
	PowerW       *float64 `json:"power_w,omitempty"` // greatest current times battery voltage
	Regulated    *bool    `json:"regulated,omitempty"`
	SelfLimiting *bool    `json:"self_limiting,omitempty"`
	SpaceKind    *string  `json:"space_kind,omitempty"`
	Reach
}

func (b *Builder) charger(c *record.Component) *Charger {
	f := b.made.chargers.take()
	f.Subject, f.Kind = b.subject(c.Path), c.Kind.V
	s := &f.Subject
	putMeasure(s, "output_a", &f.OutputA, &c.Output, "output")
	putMeasure(s, "regulated_v", &f.RegulatedV, &c.Voltage, "voltage")
	if s.derivable("power_w", operand{"output_a", f.OutputA}) {
		f.PowerW = s.number(quantity.Round(*f.OutputA * b.record.Vessel.System.V.Base))
	}
	put(s, "regulated", &f.Regulated, &c.Regulated, "regulated")
	put(s, "self_limiting", &f.SelfLimiting, &c.SelfLimiting, "self_limiting")
	b.surroundings(s, &c.Space, &f.SpaceKind, nil, nil)
	b.reach(s, &f.Reach, c.ID)
	return f
}
