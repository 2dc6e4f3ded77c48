package facts

import (
	"slices"
	"strings"

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

func (b *Builder) bank(s *Subject, f *Bank, device *part) {
	batteries := b.feedingBatteries(device)
	if len(batteries) == 0 {
		s.because("no battery reaches it in the record", "bank_ah", "bank_short_a")
		return
	}
	capacity, short := 0.0, 0.0
	allCapacities, allShorts := true, true
	for _, c := range batteries {
		if c.Capacity.Is() {
			capacity += c.Capacity.V.Base
		} else {
			allCapacities = false
			s.lacks("bank_ah", c.Path, "capacity")
		}
		result := b.solved.Batteries[c.ID]
		switch {
		case !c.Resistance.Is():
			allShorts = false
			s.lacks("bank_short_a", c.Path, "internal_resistance")
		case result == nil || !result.OpenV.Known || !result.ResistanceLow.Known:
			allShorts = false
			s.lacks("bank_short_a", c.Path, "nominal")
		default:
			short += 1000 * result.OpenV.Value / result.ResistanceLow.Value
		}
	}
	if allCapacities {
		f.BankAh = s.number(quantity.Round(capacity))
	}
	if allShorts {
		f.BankShortA = s.number(quantity.Round(short))
	}
}

// feedingBatteries returns the batteries whose positive terminals reach a
// device, in order of the record.
func (b *Builder) feedingBatteries(device *part) []*record.Component {
	var few [4]string
	ids := few[:0]
	for _, w := range device.wires {
		for k := range w.result.Feeds {
			feed := &w.result.Feeds[k]
			if feed.SourceKind == "battery" && strings.HasSuffix(feed.Source, ".pos") {
				ids = append(ids, owner(feed.Source))
			}
		}
	}
	var batteries []*record.Component
	if len(ids) == 0 {
		return batteries
	}
	for _, c := range b.record.Components {
		if slices.Contains(ids, c.ID) {
			batteries = append(batteries, c)
		}
	}
	return batteries
}
