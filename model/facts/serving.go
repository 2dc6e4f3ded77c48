package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Service is what a conductor is there for, by the loads whose current it
// carries.
type Service struct {
	// ForBlower: every load that it serves is a bilge blower.
	ForBlower *bool `json:"for_blower,omitempty"`
}

// serving finds the loads whose current each conductor carries out or back, in
// order of the record.
func serving(r *record.Record, a *circuit.Analysis) map[string][]*record.Component {
	served := map[string][]*record.Component{}
	for _, c := range r.Components {
		load := a.Loads[c.ID]
		if load == nil {
			continue
		}
		for _, id := range slices.Concat(load.Out, load.Back) {
			if all := served[id]; len(all) == 0 || all[len(all)-1] != c {
				served[id] = append(all, c)
			}
		}
	}
	return served
}

// service sets what a conductor is there for.
func service(f *Conductor, loads []*record.Component) {
	s := &f.Subject
	if len(loads) == 0 {
		s.open("for_blower", figure.Because("no load is fed through it in the record"))
		return
	}
	each := make([]figure.Truth, len(loads))
	for i, load := range loads {
		each[i] = among(load.Purpose, load.Path+".purpose", "blower")
	}
	putTruth(s, "for_blower", &f.ForBlower, allOf(each...))
}
