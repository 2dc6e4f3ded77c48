package facts

import (
	"driploop/model/physics"
	"driploop/model/record"
)

// Compass is what a conductor does to the nearest compass.
type Compass struct {
	Twisted   *bool    `json:"twisted,omitempty"` // with its return
	CompassMM *float64 `json:"compass_mm,omitempty"`
	// CompassTurnDeg is the greatest turn that it and its return, untwisted, give
	// a compass in a horizontal field of 18 µT.
	CompassTurnDeg *float64 `json:"compass_turn_deg,omitempty"`
}

// compass sets what a conductor does to a compass; its current is set before.
func compass(s *Subject, f *Conductor, c *record.Conductor) {
	put(s, "twisted", &f.Twisted, &c.Twisted, "twisted")
	putMeasure(s, "compass_mm", &f.CompassMM, &c.CompassDistance, "compass_distance")
	if !c.Spacing.Is() {
		s.missing("compass_turn_deg", "spacing")
	}
	known := s.derivable("compass_turn_deg", operand{"compass_mm", f.CompassMM}, operand{"current_a", f.CurrentA})
	if !known || !c.Spacing.Is() {
		return
	}
	field := physics.PairField(*f.CurrentA, c.Spacing.V.Base, *f.CompassMM)
	putComputed(s, "compass_turn_deg", &f.CompassTurnDeg, physics.GreatestTurn(field, physics.ReferenceHorizontalUT))
}
