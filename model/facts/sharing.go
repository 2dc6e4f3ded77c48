package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Sharing is what a load has its protection in common with.
type Sharing struct {
	// OwnDevice is the last fuse or breaker on its way out; SharedWith names the other
	// loads behind that device, Mixed tells whether any of them has another
	// purpose.
	OwnDevice  *string `json:"own_device,omitempty"`
	SharedWith string  `json:"shared_with"`
	Mixed      *bool   `json:"mixed,omitempty"`
	// PosProtected, NegProtected: every source reaches that terminal of it through
	// a fuse or breaker.
	PosProtected *bool `json:"pos_protected,omitempty"`
	NegProtected *bool `json:"neg_protected,omitempty"`
}

func shared(s *Subject, f *Sharing, r *record.Record, a *circuit.Analysis, c *record.Component) {
	for _, pole := range []struct {
		name, fact string
		to         **bool
	}{{".pos", "pos_protected", &f.PosProtected}, {".neg", "neg_protected", &f.NegProtected}} {
		if t := a.Terminals[c.ID+pole.name]; t != nil {
			putTruth(s, pole.fact, pole.to, t.Protected)
		} else {
			s.open(pole.fact, figure.Because("no conductor lands on "+c.ID+pole.name+" in the record"))
		}
	}
	load := a.Loads[c.ID]
	if load == nil || len(load.Devices) == 0 {
		gap := figure.Because("no fuse or breaker lies on the way to it in the record")
		s.open("own_device", gap)
		s.open("mixed", gap)
		return
	}
	own := last(load.Devices)
	f.OwnDevice = &own
	var others []string
	var same []figure.Truth
	for _, id := range a.Devices[own].Loads {
		other := r.Component(id)
		if id == c.ID || other == nil {
			continue
		}
		others = append(others, id)
		if purpose, ok := c.Purpose.Get(); ok {
			same = append(same, among(other.Purpose, other.Path+".purpose", purpose))
		} else {
			same = append(same, figure.OpenTruth(figure.Missing(s.field("purpose"))))
		}
	}
	f.SharedWith = join(others)
	if lost := wayless(r, a); len(lost) > 0 {
		s.open("own_device", lost...)
		f.OwnDevice = nil
		same = append(same, figure.OpenTruth(lost...))
	}
	putTruth(s, "mixed", &f.Mixed, negated(allOf(same...)))
}
