package facts

import (
	"driploop/model/circuit"
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
func reading(s *Subject, f *Test, r *record.Record, a *circuit.Analysis, t *record.Test) {
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
	derive(s, "rated_pct", &f.RatedPct, []string{"current_a", "rated_a"}, func() float64 { return partOf(*f.CurrentA, *f.RatedA) })
	derive(s, "gain_v", &f.GainV, []string{"drop_v"}, func() float64 { return -*f.DropV })
	if load := a.Loads[t.Load.V]; load != nil {
		putFigure(s, "nominal_v", &f.NominalV, load.NominalV)
	} else {
		f.NominalV = ptr(r.Vessel.System.V.Base)
	}
	derive(s, "source_pct", &f.SourcePct, []string{"at_source_v", "nominal_v"}, func() float64 { return partOf(*f.AtSourceV, *f.NominalV) })
	derive(s, "load_pct", &f.LoadPct, []string{"at_load_v", "nominal_v"}, func() float64 { return partOf(*f.AtLoadV, *f.NominalV) })
}

// partOf returns a value as a share of another in percent.
func partOf(of, whole float64) float64 { return quantity.Round(100 * of / whole) }

// ratedCurrent sets the current on a load's nameplate: as recorded, else rated
// power over rated voltage.
func ratedCurrent(s *Subject, f *Test, load *record.Component) {
	if rated, ok := load.Current.Get(); ok {
		f.RatedA = &rated.Base
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
	f.RatedA = ptr(quantity.Round(power.Base / volts.Base))
}
