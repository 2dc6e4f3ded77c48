package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
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

func isolators(s *Subject, f *Isolation, r *record.Record, a *circuit.Analysis, result *circuit.LoadResult) {
	for _, id := range slices.Concat(result.Switches, result.Devices) {
		c := r.Component(id)
		if c == nil {
			continue
		}
		main := slices.Contains([]string{"battery-disconnect", "battery-selector", "main"}, c.Duty.V)
		if main && record.KindOf(c.Kind.V).Switching || disconnects(a, id) {
			f.Isolated = true
		}
	}
	if result.Source == "" {
		s.open("behind_battery", figure.Because("no source feeds it in the record"))
		return
	}
	battery := a.Batteries[owner(result.Source)]
	f.BehindBattery = ptr(battery != nil && battery.Disconnect != "")
}

// disconnects tells whether a component is the disconnect switch of a battery.
func disconnects(a *circuit.Analysis, id string) bool {
	for _, b := range a.Batteries {
		if b.Disconnect == id {
			return true
		}
	}
	return false
}
