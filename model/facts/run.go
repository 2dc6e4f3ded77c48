package facts

// Run is the facts of one way from a source to the first protective device on
// it, judged where it lands on that device. One conductor ends as many runs as
// sources feed it unprotected.
type Run struct {
	Subject
	Conductor  string `json:"conductor"`
	Source     string `json:"source"`      // terminal, such as house.pos
	SourceKind string `json:"source_kind"` // battery, alternator, charger, ...
	Device     string `json:"device"`
	Duty       string `json:"duty"`
	// Switched: the source is a battery with a disconnect switch.
	Switched bool `json:"switched"`
	// SelfLimiting: the source cannot give more than its rated current.
	SelfLimiting *bool `json:"self_limiting,omitempty"`
	// LengthMM is measured along the conductors from the source to the device.
	LengthMM *float64 `json:"length_mm,omitempty"`
	// Enclosed: in a sheath or enclosure all the way.
	Enclosed *bool `json:"enclosed,omitempty"`
	// Via names the conductors on the way, from the source on.
	Via []string `json:"via"`
	// OwnFrom is the terminal where the way is no longer the feed of a cranking
	// motor; that of the source where it never was. OwnKind is "cranking-feed", or
	// the kind of the source. OwnMM and OwnEnclosed tell of the way from there on.
	OwnFrom     string   `json:"own_from"`
	OwnKind     string   `json:"own_kind"`
	OwnMM       *float64 `json:"own_mm,omitempty"`
	OwnEnclosed *bool    `json:"own_enclosed,omitempty"`
}

// runs adds the runs that end with a conductor.
func (b *Builder) runs(w *wire) {
	for i := range w.result.Feeds {
		feed := &w.result.Feeds[i]
		if feed.EndsAtDevice == "" {
			continue
		}
		f := b.made.runs.take()
		f.Subject, f.Conductor, f.Duty = b.subject(w.Path), w.ID, w.facts.Duty
		f.Source, f.SourceKind, f.Device = feed.Source, feed.SourceKind, feed.EndsAtDevice
		f.Via, f.OwnFrom, f.OwnKind = listed(feed.Via), feed.OwnFrom, feed.SourceKind
		if f.OwnFrom != f.Source {
			f.OwnKind = "cranking-feed"
		}
		battery := b.solved.Batteries[owner(feed.Source)]
		f.Switched = battery != nil && battery.Disconnect != ""
		s := &f.Subject
		putFigure(s, "length_mm", &f.LengthMM, &feed.Length)
		putSolved(s, "enclosed", &f.Enclosed, &feed.Enclosed)
		putFigure(s, "own_mm", &f.OwnMM, &feed.OwnLength)
		putSolved(s, "own_enclosed", &f.OwnEnclosed, &feed.OwnEnclosed)
		if feed.SourceKind == "battery" {
			f.SelfLimiting = s.flag(false)
		} else {
			putSolved(s, "self_limiting", &f.SelfLimiting, &feed.SelfLimiting)
		}
		b.doc.Runs[w.ID+" from "+feed.Source] = f
	}
}
