package facts

import (
	"driploop/model/circuit"
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

func (b *Builder) shared(s *Subject, f *Sharing, c *record.Component, result *circuit.LoadResult) {
	for _, pole := range [...]struct {
		name, fact string
		to         **bool
	}{{"pos", "pos_protected", &f.PosProtected}, {"neg", "neg_protected", &f.NegProtected}} {
		if t := b.terminal(c.ID, pole.name); t != nil {
			putSolved(s, pole.fact, pole.to, &t.Protected)
		} else {
			s.because("no conductor lands on "+c.ID+"."+pole.name+" in the record", pole.fact)
		}
	}
	if len(result.Devices) == 0 {
		s.because("no fuse or breaker lies on the way to it in the record", "own_device", "mixed")
		return
	}
	own := last(result.Devices)
	var others []string
	var same []truth
	for _, id := range b.solved.Devices[own].Loads {
		other := b.record.Component(id)
		if id == c.ID || other == nil {
			continue
		}
		others = append(others, id)
		if c.Purpose.Is() {
			same = append(same, s.among(&other.Purpose, place{other.Path, "purpose"}, c.Purpose.V))
		} else {
			same = append(same, s.unknown(s.own("purpose")))
		}
	}
	f.SharedWith = join(others)
	if lost := b.wayless(); len(lost) > 0 {
		s.open("own_device", lost...)
		same = append(same, s.doubt(lost...))
	} else {
		f.OwnDevice = s.word(own)
	}
	putTruth(s, "mixed", &f.Mixed, negated(s.allOf(same...)))
}
