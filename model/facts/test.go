package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Test is the facts of one measurement against what the circuit model says.
type Test struct {
	Subject
	Kind     *string  `json:"kind,omitempty"`
	Load     *string  `json:"load,omitempty"`
	CurrentA *float64 `json:"current_a,omitempty"`
	// RatedA is the current that the record gives for the load.
	RatedA    *float64 `json:"rated_a,omitempty"`
	AtSourceV *float64 `json:"at_source_v,omitempty"`
	AtLoadV   *float64 `json:"at_load_v,omitempty"`
	// DropV is the measured drop; ComputedDropV the solved one brought to the
	// measured current; ExcessV how far the first exceeds the second, less the
	// stated tolerance of both readings.
	DropV          *float64 `json:"drop_v,omitempty"`
	ComputedDropV  *float64 `json:"computed_drop_v,omitempty"`
	ToleranceV     *float64 `json:"tolerance_v,omitempty"`
	AllowedDropV   *float64 `json:"allowed_drop_v,omitempty"` // computed plus tolerance
	Polarity       *string  `json:"polarity,omitempty"`
	Result         *string  `json:"result,omitempty"`
	ResistanceMOhm *float64 `json:"resistance_mohm,omitempty"`
	TestV          *float64 `json:"test_v,omitempty"`
	On             *string  `json:"on,omitempty"`
	SystemV        float64  `json:"system_v"`
	Reading
}

func test(r *record.Record, a *circuit.Analysis, t *record.Test) *Test {
	f := &Test{Subject: Subject{Path: t.Path}, SystemV: r.Vessel.System.V.Base}
	s := &f.Subject
	put(s, "kind", &f.Kind, &t.Kind, "kind")
	put(s, "load", &f.Load, &t.Load, "load")
	putMeasure(s, "current_a", &f.CurrentA, &t.Current, "current")
	putMeasure(s, "at_source_v", &f.AtSourceV, &t.AtSource, "at_source")
	putMeasure(s, "at_load_v", &f.AtLoadV, &t.AtLoad, "at_load")
	putMeasure(s, "tolerance_v", &f.ToleranceV, &t.Tolerance, "tolerance")
	put(s, "polarity", &f.Polarity, &t.Polarity, "polarity")
	put(s, "result", &f.Result, &t.Result, "result")
	putMeasure(s, "resistance_mohm", &f.ResistanceMOhm, &t.Resistance, "resistance")
	putMeasure(s, "test_v", &f.TestV, &t.TestVoltage, "test_voltage")
	putDate(s, "on", &f.On, t.On, "on")
	derive(s, "drop_v", &f.DropV, []string{"at_source_v", "at_load_v"}, func() float64 {
		return quantity.Round(*f.AtSourceV - *f.AtLoadV)
	})
	computedDrop(s, f, r, a)
	reading(s, f, r, a, t)
	derive(s, "allowed_drop_v", &f.AllowedDropV, []string{"computed_drop_v", "tolerance_v"}, func() float64 {
		return quantity.Round(*f.ComputedDropV + *f.ToleranceV)
	})
	return f
}

// computedDrop brings the solved drop of the tested load to the measured
// current: wiring is ohmic, so the drop scales with it.
func computedDrop(s *Subject, f *Test, r *record.Record, a *circuit.Analysis) {
	if f.Load == nil {
		s.open("computed_drop_v", s.Open.Of("load")...)
		s.open("rated_a", s.Open.Of("load")...)
		return
	}
	load := r.Component(*f.Load)
	result := a.Loads[*f.Load]
	if load == nil || result == nil {
		gap := figure.Because(*f.Load + " is not a load of the solved circuit")
		s.open("computed_drop_v", gap)
		s.open("rated_a", gap)
		return
	}
	ratedCurrent(s, f, load)
	var drop, current *float64
	putFigure(s, "computed_drop_v", &drop, result.DropNetworkV)
	if drop == nil {
		return
	}
	putFigure(s, "computed_drop_v", &current, result.Current)
	if current == nil {
		return
	}
	if *current == 0 {
		s.open("computed_drop_v", figure.Gap{Field: load.Path + ".current", Why: "the load draws no current"})
		return
	}
	derive(s, "computed_drop_v", &f.ComputedDropV, []string{"current_a"}, func() float64 {
		return quantity.Round(*drop * *f.CurrentA / *current)
	})
}
