package facts

import (
	"driploop/model/figure"
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
	var gaps []figure.Gap
	spacing, ok := c.Spacing.Get()
	if !ok {
		gaps = append(gaps, figure.Missing(s.field("spacing")))
	}
	if f.CompassMM == nil {
		gaps = append(gaps, s.Open.Of("compass_mm")...)
	}
	if f.CurrentA == nil {
		gaps = append(gaps, s.Open.Of("current_a")...)
	}
	if len(gaps) > 0 {
		s.open("compass_turn_deg", gaps...)
		return
	}
	field := physics.PairField(*f.CurrentA, spacing.Base, *f.CompassMM)
	putFigure(s, "compass_turn_deg", &f.CompassTurnDeg, physics.GreatestTurn(field, physics.ReferenceHorizontalUT))
}
