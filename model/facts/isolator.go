package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Isolation is how a load can be cut off from its battery.
type Isolation struct {
	// IsolatedBy names the switches on the way to it that are recorded as battery
	// or main switches, or that cut off a battery.
	IsolatedBy []string `json:"isolated_by"`
	// BehindBattery: the source that feeds it is a battery with a disconnect switch.
	BehindBattery *bool `json:"behind_battery,omitempty"`
}

func isolators(s *Subject, f *Isolation, r *record.Record, a *circuit.Analysis, result *circuit.LoadResult) {
	f.IsolatedBy = []string{}
	for _, id := range slices.Concat(result.Switches, result.Devices) {
		c := r.Component(id)
		if c == nil || slices.Contains(f.IsolatedBy, id) {
			continue
		}
		if slices.Contains([]string{"battery-disconnect", "battery-selector", "main"}, c.Duty.V) && record.KindOf(c.Kind.V).Switching || disconnects(a, id) {
			f.IsolatedBy = append(f.IsolatedBy, id)
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
