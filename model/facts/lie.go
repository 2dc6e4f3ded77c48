package facts

import "driploop/model/record"

// Lie is how a conductor lies from end to end.
type Lie struct {
	// RouteGapPct is the difference between route and length as a share of the
	// length.
	RouteGapPct *float64 `json:"route_gap_pct,omitempty"`
	// FirstSupportMostMM is the most that can lie between a terminal and the first
	// support: as recorded, else the length of the conductor.
	FirstSupportMostMM *float64 `json:"first_support_most_mm,omitempty"`
	Splices            *int     `json:"splices,omitempty"`
	SpliceFromEndMM    *float64 `json:"splice_from_end_mm,omitempty"` // the nearest splice
}

// lie sets how a conductor lies; its length and route are set before.
func lie(s *Subject, f *Conductor, c *record.Conductor) {
	percent(s, "route_gap_pct", &f.RouteGapPct, operand{"route_gap_mm", f.RouteGapMM}, operand{"length_mm", f.LengthMM})
	switch {
	case f.FirstSupportMM != nil:
		f.FirstSupportMostMM = f.FirstSupportMM
	case f.LengthMM != nil:
		f.FirstSupportMostMM = f.LengthMM
	default:
		s.missing("first_support_most_mm", "first_support")
	}
	put(s, "splices", &f.Splices, &c.Splices, "splices")
	putMeasure(s, "splice_from_end_mm", &f.SpliceFromEndMM, &c.SpliceFromEnd, "splice_from_end")
}
