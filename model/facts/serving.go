package facts

// Service is what a conductor is there for, by the loads whose current it
// carries.
type Service struct {
	// ForBlower: every load that it serves is a bilge blower.
	ForBlower *bool `json:"for_blower,omitempty"`
}

// service sets what a conductor is there for.
func service(f *Conductor, loads []*served) {
	s := &f.Subject
	if len(loads) == 0 {
		s.because("no load is fed through it in the record", "for_blower")
		return
	}
	each := make([]truth, len(loads))
	for i, load := range loads {
		each[i] = s.among(&load.Purpose, place{load.Path, "purpose"}, "blower")
	}
	putTruth(s, "for_blower", &f.ForBlower, s.allOf(each...))
}
