package facts

import (
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

func (b *Builder) test(t *record.Test) *Test {
	f := b.made.tests.take()
	f.Subject, f.SystemV = b.subject(t.Path), b.record.Vessel.System.V.Base
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
	putDate(s, "on", &f.On, &t.On, "on")
	if s.derivable("drop_v", operand{"at_source_v", f.AtSourceV}, operand{"at_load_v", f.AtLoadV}) {
		f.DropV = s.number(quantity.Round(*f.AtSourceV - *f.AtLoadV))
	}
	b.computedDrop(s, f)
	b.reading(s, f, t)
	if s.derivable("allowed_drop_v", operand{"computed_drop_v", f.ComputedDropV}, operand{"tolerance_v", f.ToleranceV}) {
		f.AllowedDropV = s.number(quantity.Round(*f.ComputedDropV + *f.ToleranceV))
	}
	return f
}

// computedDrop brings the solved drop of the tested load to the measured
// current: wiring is ohmic, so the drop scales with it.
func (b *Builder) computedDrop(s *Subject, f *Test) {
	if f.Load == nil {
		s.follow("computed_drop_v", "load")
		s.follow("rated_a", "load")
		return
	}
	load, result := b.record.Component(*f.Load), b.solved.Loads[*f.Load]
	if load == nil || result == nil {
		s.because(*f.Load+" is not a load of the solved circuit", "computed_drop_v", "rated_a")
		return
	}
	ratedCurrent(s, f, load)
	drop, current := &result.DropNetworkV, &result.Current
	switch {
	case !drop.Known:
		s.unsolved("computed_drop_v", drop.Gaps)
	case !current.Known:
		s.unsolved("computed_drop_v", current.Gaps)
	case current.Value == 0:
		s.open("computed_drop_v", figure.Gap{Field: load.Path + ".current", Why: "the load draws no current"})
	case s.derivable("computed_drop_v", operand{"current_a", f.CurrentA}):
		f.ComputedDropV = s.number(quantity.Round(drop.Value * *f.CurrentA / current.Value))
	}
}
