package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/record"
)

// Isolation is how a load can be cut off from its battery.
type Isolation struct {
	// Isolated: a switch on the way to it is recorded as a battery or main switch,
	// or cuts off a battery.
	Isolated bool `json:"isolated"`
	// BehindBattery: the source that feeds it is a battery with a disconnect switch.
	BehindBattery *bool `json:"behind_battery,omitempty"`
}

func (b *Builder) isolators(s *Subject, f *Isolation, result *circuit.LoadResult) {
	f.Isolated = slices.ContainsFunc(result.Switches, b.isolates) || slices.ContainsFunc(result.Devices, b.isolates)
	if result.Source == "" {
		s.because("no source feeds it in the record", "behind_battery")
		return
	}
	battery := b.solved.Batteries[owner(result.Source)]
	f.BehindBattery = s.flag(battery != nil && battery.Disconnect != "")
}

// isolates tells whether a switch or device is recorded as a battery or main
// switch, or cuts off a battery.
func (b *Builder) isolates(id string) bool {
	c := b.record.Component(id)
	if c == nil {
		return false
	}
	main := c.Duty.V == "battery-disconnect" || c.Duty.V == "battery-selector" || c.Duty.V == "main"
	return main && record.KindOf(c.Kind.V).Switching || b.disconnects(id)
}

// disconnects tells whether a component is the disconnect switch of a battery.
func (v *survey) disconnects(id string) bool { return slices.Contains(v.cutOff, id) }
