package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Load is the facts of a component that draws current.
type Load struct {
	Subject
	Kind      string   `json:"kind"`
	Purpose   *string  `json:"purpose,omitempty"`
	Cranks    bool     `json:"cranks"` // the record says that it cranks an engine
	DropClass *string  `json:"drop_class,omitempty"`
	CurrentA  *float64 `json:"current_a,omitempty"` // running alone
	StallA    *float64 `json:"stall_a,omitempty"`
	RunTimeS  *float64 `json:"run_time_s,omitempty"`
	RatedV    *float64 `json:"rated_v,omitempty"`
	MinV      *float64 `json:"min_v,omitempty"`
	NominalV  *float64 `json:"nominal_v,omitempty"` // of the circuit that feeds it

	// DropV and DropPct are the drop out and back by the standards' formula,
	// the share being of the nominal voltage; NetworkDropPct is that of the
	// solved network.
	DropV          *float64 `json:"drop_v,omitempty"`
	DropPct        *float64 `json:"drop_pct,omitempty"`
	NetworkDropPct *float64 `json:"network_drop_pct,omitempty"`
	VoltageV       *float64 `json:"voltage_v,omitempty"`
	LowVoltageV    *float64 `json:"low_voltage_v,omitempty"`

	Reversing
	Blowing

	Protector       *string  `json:"protector,omitempty"`
	LocalDisconnect *string  `json:"local_disconnect,omitempty"`
	Devices         []string `json:"devices"`
	Switches        []string `json:"switches"`

	// Tested: the record holds a test of drop, polarity or function for it. None
	// is a "no" only once the job is signed off; before that it is open.
	Tested *bool `json:"tested,omitempty"`
	Sharing
	Stall
	Isolation
}

func (b *Builder) load(c *record.Component) *Load {
	f := b.made.loads.take()
	f.Subject, f.Kind, f.Cranks = b.subject(c.Path), c.Kind.V, c.Purpose.Or("") == "cranking"
	s := &f.Subject
	put(s, "purpose", &f.Purpose, &c.Purpose, "purpose")
	put(s, "drop_class", &f.DropClass, &c.DropClass, "drop_class")
	putMeasure(s, "stall_a", &f.StallA, &c.Stall, "stall")
	putMeasure(s, "run_time_s", &f.RunTimeS, &c.RunTime, "run_time")
	putMeasure(s, "rated_v", &f.RatedV, &c.Nominal, "nominal")
	putMeasure(s, "min_v", &f.MinV, &c.MinVoltage, "min_voltage")
	put(s, "protector", &f.Protector, &c.Protector, "protector")
	put(s, "local_disconnect", &f.LocalDisconnect, &c.LocalDisconnect, "local_disconnect")
	b.tested(s, f, c.ID)
	b.reversing(s, &f.Reversing, c)

	result := b.solved.Loads[c.ID]
	if result == nil {
		result = &circuit.LoadResult{}
	}
	b.shared(s, &f.Sharing, c, result)
	b.stall(s, &f.Stall, c, result)
	b.isolators(s, &f.Isolation, result)
	f.Devices, f.Switches = listed(result.Devices), listed(result.Switches)
	b.blowing(s, &f.Blowing, c, result)
	putFigure(s, "current_a", &f.CurrentA, &result.Current)
	putFigure(s, "nominal_v", &f.NominalV, &result.NominalV)
	putFigure(s, "drop_v", &f.DropV, &result.DropFormulaV)
	putFigure(s, "voltage_v", &f.VoltageV, &result.VoltageV)
	putFigure(s, "low_voltage_v", &f.LowVoltageV, &result.LowVoltageV)
	nominal := operand{"nominal_v", f.NominalV}
	percent(s, "drop_pct", &f.DropPct, operand{"drop_v", f.DropV}, nominal)
	if network := &result.DropNetworkV; network.Known {
		percent(s, "network_drop_pct", &f.NetworkDropPct, operand{value: &network.Value}, nominal)
	} else {
		s.unsolved("network_drop_pct", network.Gaps)
	}
	return f
}

// provings are the kinds of test that show a load to work.
var provings = [...]string{"voltage-drop", "polarity", "function"}

// tested sets whether the record holds a test of the load.
func (b *Builder) tested(s *Subject, f *Load, load string) {
	r := b.record
	for _, t := range r.Tests {
		if t.Load.V == load && slices.Contains(provings[:], t.Kind.V) {
			f.Tested = s.flag(true)
			return
		}
	}
	if r.SignOff.On.Is() || r.SignOff.By.Is() {
		f.Tested = s.flag(false)
		return
	}
	s.open("tested", figure.Gap{Field: "tests", Why: "no test of " + load + " yet"})
}
