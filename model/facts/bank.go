package facts

import (
	"slices"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Bank is the batteries that feed a device in parallel. Of batteries in series
// the last one stands for all: capacity and fault current do not add up there.
type Bank struct {
	BankAh *float64 `json:"bank_ah,omitempty"` // sum of their capacities
	// BankShortA is the sum of the currents that they give into a short circuit at
	// their terminals. It rests on recorded internal resistances, never on an
	// estimate.
	BankShortA *float64 `json:"bank_short_a,omitempty"`
}

func bank(s *Subject, f *Bank, r *record.Record, a *circuit.Analysis, device string) {
	batteries := feedingBatteries(r, a, device)
	if len(batteries) == 0 {
		gap := figure.Because("no battery reaches it in the record")
		s.open("bank_ah", gap)
		s.open("bank_short_a", gap)
		return
	}
	capacity, short := 0.0, 0.0
	for _, c := range batteries {
		if ah, ok := c.Capacity.Get(); ok {
			capacity += ah.Base
		} else {
			s.lacks("bank_ah", c.Path, "capacity")
		}
		result := a.Batteries[c.ID]
		switch {
		case !c.Resistance.Is():
			s.lacks("bank_short_a", c.Path, "internal_resistance")
		case result == nil || !result.OpenV.Known || !result.ResistanceLow.Known:
			s.lacks("bank_short_a", c.Path, "nominal")
		default:
			short += 1000 * result.OpenV.Value / result.ResistanceLow.Value
		}
	}
	if !s.Open.Has("bank_ah") {
		f.BankAh = ptr(quantity.Round(capacity))
	}
	if !s.Open.Has("bank_short_a") {
		f.BankShortA = ptr(quantity.Round(short))
	}
}

// feedingBatteries returns the batteries whose positive terminals reach a
// device, in order of the record.
func feedingBatteries(r *record.Record, a *circuit.Analysis, device string) []*record.Component {
	var ids []string
	for _, c := range r.Conductors {
		result := a.Conductors[c.ID]
		if result == nil || c.From.Component != device && c.To.Component != device {
			continue
		}
		for _, feed := range result.Feeds {
			if feed.SourceKind == "battery" && strings.HasSuffix(feed.Source, ".pos") {
				ids = append(ids, owner(feed.Source))
			}
		}
	}
	var batteries []*record.Component
	for _, c := range r.Components {
		if slices.Contains(ids, c.ID) {
			batteries = append(batteries, c)
		}
	}
	return batteries
}
