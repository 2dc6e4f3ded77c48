package facts

import (
	"driploop/model/figure"
	"driploop/model/record"
)

// Charging is the alternator or generator that has a device as the first one on
// its output.
type Charging struct {
	Machine string `json:"machine"` // its id; empty if there is none
	// MachineLimits: it cannot give more than its rated current.
	MachineLimits *bool    `json:"machine_limits,omitempty"`
	MachineA      *float64 `json:"machine_a,omitempty"`
	// MachinePct is the device's rating against that current, MachineHotPct the
	// same where that current is the one at 60 °C or above; a machine gives less
	// when hot.
	MachinePct    *float64 `json:"machine_pct,omitempty"`
	MachineHotPct *float64 `json:"machine_hot_pct,omitempty"`
}

// hotMachine is the temperature in °C that 33 CFR 183.460(b) takes a machine's
// rated current at.
const hotMachine = 60

// machines sets, at each device, the machine whose output it protects. Of
// several machines the smallest counts, for which the device is the largest.
func (b *Builder) machines() {
	r, devices := b.record, b.doc.Devices
	for i := range b.wires {
		feeds := b.wires[i].result.Feeds
		for k := range feeds {
			feed := &feeds[k]
			if feed.SourceKind != "alternator" && feed.SourceKind != "generator" {
				continue
			}
			d := devices[feed.EndsAtDevice]
			if d == nil {
				continue
			}
			m := r.Component(owner(feed.Source))
			if before := r.Component(d.Machine); before == nil || smaller(m, before) {
				d.Machine = m.ID
			}
		}
	}
	for i := range b.parts {
		d := devices[b.parts[i].ID]
		if d == nil {
			continue
		}
		machine(&d.Subject, d, r.Component(d.Machine))
	}
}

// smaller tells whether machine a has to count rather than b: one without a
// recorded output leaves the answer open, and so counts most.
func smaller(a, b *record.Component) bool {
	if !a.Output.Is() || !b.Output.Is() {
		return !a.Output.Is() && b.Output.Is()
	}
	return a.Output.V.Base < b.Output.V.Base
}

func machine(s *Subject, d *Device, m *record.Component) {
	if m == nil {
		s.because("it is the first device of no alternator or generator", "machine_limits", "machine_a", "machine_pct", "machine_hot_pct")
		return
	}
	f := &d.Charging
	putOf(s, "machine_limits", &f.MachineLimits, &m.SelfLimiting, m.Path, "self_limiting")
	putMeasureOf(s, "machine_a", &f.MachineA, &m.Output, m.Path, "output")
	if s.derivable("machine_pct", operand{"machine_a", f.MachineA}, operand{"rating_a", d.RatingA}) {
		f.MachinePct = s.number(partOf(*d.RatingA, *f.MachineA))
	}
	switch at, ok := m.OutputAt.Get(); {
	case !ok:
		s.lacks("machine_hot_pct", m.Path, "output_at")
	case at.Base < hotMachine:
		s.open("machine_hot_pct", figure.Gap{Field: m.Path + ".output", Why: "its current at 60 °C is wanted, and it is recorded at a lower temperature"})
	case f.MachinePct == nil:
		s.follow("machine_hot_pct", "machine_pct")
	default:
		f.MachineHotPct = f.MachinePct
	}
}
