package facts

import (
	"driploop/model/quantity"
	"driploop/model/record"
)

// Reading is what a measurement says against the nameplate and the system.
type Reading struct {
	// About is what it was made on: load, conductor, penetration, or nothing where
	// the record names none.
	About string `json:"about"`
	// RatedPct is the measured current as a share of the load's rated one.
	RatedPct *float64 `json:"rated_pct,omitempty"`
	// GainV is how much more was read at the load than at the source.
	GainV *float64 `json:"gain_v,omitempty"`
	// NominalV is the nominal voltage of the circuit of the load, else of the
	// system; SourcePct and LoadPct are the voltages read as shares of it.
	NominalV  *float64 `json:"nominal_v,omitempty"`
	SourcePct *float64 `json:"source_pct,omitempty"`
	LoadPct   *float64 `json:"load_pct,omitempty"`
}

// reading sets what a measurement says; what was read and the rated current are
// set before.
func (b *Builder) reading(s *Subject, f *Test, t *record.Test) {
	switch {
	case t.Load.Is():
		f.About = "load"
	case t.Conductor.Is():
		f.About = "conductor"
	case t.Penetration.Is():
		f.About = "penetration"
	default:
		f.About = "nothing"
	}
	percent(s, "rated_pct", &f.RatedPct, operand{"current_a", f.CurrentA}, operand{"rated_a", f.RatedA})
	if s.derivable("gain_v", operand{"drop_v", f.DropV}) {
		f.GainV = s.number(-*f.DropV)
	}
	if load := b.solved.Loads[t.Load.V]; load != nil {
		putFigure(s, "nominal_v", &f.NominalV, &load.NominalV)
	} else {
		f.NominalV = &b.record.Vessel.System.V.Base
	}
	nominal := operand{"nominal_v", f.NominalV}
	percent(s, "source_pct", &f.SourcePct, operand{"at_source_v", f.AtSourceV}, nominal)
	percent(s, "load_pct", &f.LoadPct, operand{"at_load_v", f.AtLoadV}, nominal)
}

// ratedCurrent sets the current on a load's nameplate: as recorded, else rated
// power over rated voltage.
func ratedCurrent(s *Subject, f *Test, load *record.Component) {
	if load.Current.Is() {
		f.RatedA = &load.Current.V.Base
		return
	}
	power, powered := load.Power.Get()
	if !powered {
		s.lacks("rated_a", load.Path, "current")
		return
	}
	volts, ok := load.Nominal.Get()
	if !ok {
		s.lacks("rated_a", load.Path, "nominal")
		return
	}
	f.RatedA = s.number(quantity.Round(power.Base / volts.Base))
}
