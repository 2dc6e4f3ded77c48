package facts

import (
	"driploop/model/quantity"
	"driploop/model/record"
)

// Made is how a conductor is made and bent.
type Made struct {
	// Stranded follows from the class of stranding, else from the number of
	// strands.
	Stranded     *bool    `json:"stranded,omitempty"`
	BendRadiusMM *float64 `json:"bend_radius_mm,omitempty"` // of the tightest bend
	// BendDiameters is that radius as a multiple of the outside diameter.
	BendDiameters *float64 `json:"bend_diameters,omitempty"`
}

// made sets how a conductor is made; its diameter is set before.
func made(s *Subject, f *Conductor, c *record.Conductor) {
	class, hasClass := c.Class.Get()
	strands, hasStrands := c.Strands.Get()
	switch {
	case hasClass && class == "solid", hasStrands && strands == 1:
		f.Stranded = s.flag(false)
	case hasClass, hasStrands:
		f.Stranded = s.flag(true)
	default:
		s.missing("stranded", "class")
	}
	putMeasure(s, "bend_radius_mm", &f.BendRadiusMM, &c.BendRadius, "bend_radius")
	if s.derivable("bend_diameters", operand{"bend_radius_mm", f.BendRadiusMM}, operand{"diameter_mm", f.DiameterMM}) {
		f.BendDiameters = s.number(quantity.Round(*f.BendRadiusMM / *f.DiameterMM))
	}
}
