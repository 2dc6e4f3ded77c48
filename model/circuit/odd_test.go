package circuit

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// oddRecord draws a record that no technician writes: any wiring between any
// terminals, any values, entries that refer to nothing.
func oddRecord(t *rapid.T) *record.Record {
	given := func(s string) record.Text { return record.Text{V: s, State: record.Given} }
	some := func(label string, list ...string) record.Text {
		v := rapid.SampledFrom(append(list, "")).Draw(t, label)
		if v == "" {
			return record.Text{}
		}
		return given(v)
	}
	amount := func(label, unit string) record.Measure {
		if rapid.Bool().Draw(t, label) {
			return record.Measure{}
		}
		v := rapid.SampledFrom([]float64{0, -3, 1e-9, 0.5, 12, 300, 1e9, 1e300, 1e-300}).Draw(t, label)
		return record.Measure{V: quantity.Quantity{Base: v, Value: v, Unit: unit}, State: record.Given}
	}
	r := &record.Record{}
	r.Vessel.Earthing = some("earthing", "negative-ground", "positive-ground", "insulated")
	r.Vessel.System = amount("system", "V")
	r.Spaces = []*record.Space{{Entry: record.Entry{ID: "hold", Path: "spaces.hold"}, Kind: some("space", "engine", "locker"), Ambient: amount("ambient", "degC")}, nil}
	kinds := []string{"battery", "alternator", "charger", "switch", "fuse", "breaker", "busbar", "motor", "lamp", "relay", "controller", "connector", "ground", "nonsense"}
	names := []string{"pos", "neg", "line", "load", "in", "out", "a", "b", "case", ""}
	words := []string{"up", "down", "off", "both"}
	pair := func(label string) []string {
		return rapid.SliceOfN(rapid.SampledFrom(names), 0, 3).Draw(t, label)
	}
	var ids []string
	for i := range rapid.IntRange(0, 8).Draw(t, "components") {
		c := &record.Component{Entry: record.Entry{ID: fmt.Sprintf("c%d", i), Path: fmt.Sprintf("components.c%d", i)}}
		c.Kind = some("kind", kinds...)
		c.Nominal, c.Current, c.Power, c.LoadOhms = amount("nominal", "V"), amount("current", "A"), amount("power", "W"), amount("ohms", "mohm")
		c.Stall, c.Starting, c.Rating = amount("stall", "A"), amount("starting", "A"), amount("rating", "A")
		c.Resistance, c.Cranking, c.Capacity = amount("resistance", "mohm"), amount("cranking", "A"), amount("capacity", "Ah")
		c.RunTime, c.MotorLimit = amount("run_time", "s"), amount("motor_limit", "s")
		c.Curve, c.Protector = some("curve", "blade-c", "thermal", "class-t"), some("protector", "none", "thermal-auto")
		c.Output, c.Voltage = amount("output", "A"), amount("voltage", "V")
		c.LoadKind = some("load_kind", "constant-power", "resistance", "constant-current")
		c.Duty = some("duty", "battery-disconnect", "main")
		for range rapid.IntRange(0, 4).Draw(t, "links") {
			c.Links = append(c.Links, &record.Link{Between: pair("between"), When: some("when", words...)}, nil)
		}
		for range rapid.IntRange(0, 1).Draw(t, "coils") {
			c.Coils = append(c.Coils, &record.Coil{Between: pair("between"), When: some("when", words...), Current: amount("coil", "A")})
		}
		r.Components = append(r.Components, c)
		ids = append(ids, c.ID)
	}
	r.Components = append(r.Components, nil)
	ids = append(ids, "nowhere")
	for i := range rapid.IntRange(0, 14).Draw(t, "conductors") {
		end := func() record.Terminal {
			return record.Terminal{Component: rapid.SampledFrom(ids).Draw(t, "component"), Name: rapid.SampledFrom(names).Draw(t, "terminal")}
		}
		c := &record.Conductor{Entry: record.Entry{ID: fmt.Sprintf("w%d", i), Path: fmt.Sprintf("conductors.w%d", i)}, From: end(), To: end()}
		c.Role = some("role", "positive", "negative", "bonding", "control")
		c.Length, c.Insulation = amount("length", "mm"), amount("insulation", "degC")
		if rapid.Bool().Draw(t, "sized") {
			c.Size = record.Wire{V: quantity.WireSize{System: quantity.AWG, Gauge: rapid.IntRange(-3, 20).Draw(t, "gauge")}, State: record.Given}
		}
		for range rapid.IntRange(0, 2).Draw(t, "segments") {
			c.Route = append(c.Route, &record.Segment{Space: some("space", "hold", "gone"), In: some("in", "open", "conduit"), Bundle: some("bundle", "B1", "none")}, nil)
		}
		r.Conductors = append(r.Conductors, c)
	}
	r.Conductors = append(r.Conductors, nil)
	r.Bundles = []*record.Bundle{nil, {Entry: record.Entry{ID: "B1"}, Members: record.Words{V: []string{"w1", "gone"}, State: record.Given}}}
	r.Cases = []*record.Case{nil, {
		Entry: record.Entry{ID: "odd"}, Loads: record.Words{V: ids}, Open: record.Words{V: ids[:1]}, When: record.Words{V: words[:2]},
		State: some("state", "stalled", "starting"), Source: some("source", "low", "charging"),
	}}
	return r
}

// TestAnyRecordIsAnalysed holds every figure to its contract: it is known and a
// number, or open with a reason.
func TestAnyRecordIsAnalysed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Analyse(oddRecord(t))
		figures := func(where string, list ...figure.Figure) {
			for i, f := range list {
				require.NotEqual(t, f.Known, len(f.Gaps) > 0, "figure %d of %s: %+v", i, where, f)
				require.False(t, math.IsNaN(f.Value) || math.IsInf(f.Value, 0), "figure %d of %s: %+v", i, where, f)
			}
		}
		truths := func(where string, list ...figure.Truth) {
			for i, f := range list {
				require.NotEqual(t, f.Known, len(f.Gaps) > 0, "truth %d of %s: %+v", i, where, f)
			}
		}
		for id, c := range a.Conductors {
			figures(id, c.AreaMM2, c.CircularMils, c.DiameterMM, c.R20, c.RHot, c.Table5, c.HottestAmbient, c.Allowable, c.BundleCount,
				c.Bundled, c.Current, c.Surge, c.Guard, c.FaultLowA, c.FaultHighA, c.ClearLeastS, c.ClearS, c.LetThroughLeastA2s, c.LetThroughA2s,
				c.WithstandA2s, c.TemperatureC, c.StallC)
			truths(id, c.Ungrounded, c.AlwaysLive, c.InEngineSpace, c.Clears)
			for _, f := range c.Feeds {
				truths(id, f.SelfLimiting)
				if f.EndsAtDevice != "" {
					figures(id, f.Length)
					truths(id, f.Enclosed)
				}
			}
		}
		for id, d := range a.Devices {
			figures(id, d.NominalV, d.CrankingA, d.FaultLowA, d.FaultHighA, d.LoadA, d.RunningA)
			truths(id, d.First, d.Ungrounded)
			for _, selective := range d.Selective {
				truths(id, selective)
			}
		}
		for id, l := range a.Loads {
			figures(id, l.Current, l.NominalV, l.DropFormulaV, l.DropNetworkV, l.VoltageV, l.LowVoltageV,
				l.StallA, l.StallOpenLeastS, l.StallOpenS, l.StallHeatS)
			truths(id, l.Fed, l.StallOpens, l.StallHeats)
		}
		for id, b := range a.Batteries {
			figures(id, b.SwitchLength, b.OpenV, b.ResistanceLow, b.ResistanceHigh)
		}
		for id, c := range a.Components {
			figures(id, c.Through, c.Surge, c.NominalV)
		}
		for id, x := range a.Terminals {
			truths(id, x.Ungrounded, x.AlwaysLive, x.Protected)
		}
		for _, c := range a.Cases.All() {
			for _, v := range c.Currents {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0))
			}
		}
	})
}

func TestEmptyRecord(t *testing.T) {
	assert.NotNil(t, Analyse(&record.Record{}))
}
