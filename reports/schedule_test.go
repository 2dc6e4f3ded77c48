package reports_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/reports"
)

const pumpText = `driploop: 1
job: {number: HL-3, title: Deck-wash pump}
vessel: {name: Teasel, system: 12 V}
spaces:
  locker: {kind: locker, exposure: dry, ambient: 30 degC}
components:
  house: {kind: battery, space: locker}
  pump-fuse: {kind: fuse, space: locker, rating: 25 A}
  pump: {kind: pump, space: locker, label: deck wash, current: 15 A, stall: 38 A}
conductors:
  P1: {from: house.pos, to: pump-fuse.line, role: positive, size: 10 AWG, length: 150 mm}
  P2: {from: pump-fuse.load, to: pump.pos, role: positive, size: 4 mm2, length: 6.4 m}
  N1: {from: pump.neg, to: house.neg, role: negative, length: 6.5 m}
`

// pumpAnalysis is an invented result: these tests show how figures are laid
// out, not whether they are right.
func pumpAnalysis() *circuit.Analysis {
	amps := func(v float64) figure.Figure {
		return figure.Of(v, "A", figure.Step{
			Formula: "allowable amperage: table row", Source: "33 CFR 183.425, table 5",
			Inputs: []figure.Input{{Symbol: "K", Value: 10.75, From: "a constant"}, {Symbol: "A", Value: 5.2614, Unit: "mm2", From: "conductors.P1.size"}},
			Result: v, Unit: "A",
		})
	}
	open := figure.Open(figure.Missing("conductors.N1.size"))
	unsolved := figure.Open(figure.Missing("conductors.N1.size"), figure.Because("the return is not solved"))
	conductor := func(f figure.Figure) *circuit.ConductorResult {
		return &circuit.ConductorResult{
			R20: f, RHot: f, Allowable: f, Bundled: f, Current: f, Surge: f, Guard: amps(25), GuardBy: []string{"pump-fuse"},
			AreaMM2: f, CircularMils: f, DiameterMM: f, Table5: f, HottestAmbient: f, BundleCount: f,
		}
	}
	p1 := conductor(amps(60))
	p1.Feeds = []circuit.Feed{{
		Source: "house.pos", Ahead: true, EndsAtDevice: "pump-fuse", Length: figure.Of(150, "mm"), Via: []string{"P1"}, Enclosed: figure.False(),
	}}
	p2 := conductor(amps(33.333))
	p2.Ungrounded = figure.True()
	p2.Feeds = []circuit.Feed{{Source: "charger.pos", Ahead: true, Bare: true, BareVia: "pump.pos"}}
	n1 := conductor(open)
	n1.Ungrounded = figure.False()
	problem := circuit.Problem{Kind: circuit.Island, Path: "conductors.N1", At: span(13, 3, 5), Says: "no size, so no resistance"}
	return &circuit.Analysis{
		Conductors: map[string]*circuit.ConductorResult{"P1": p1, "P2": p2, "N1": n1},
		Devices: map[string]*circuit.DeviceResult{"pump-fuse": {
			NominalV: figure.Of(12, "V"), RunningA: amps(15), FaultLowA: amps(420), FaultHighA: amps(1850), Loads: []string{"pump"},
		}},
		Loads: map[string]*circuit.LoadResult{"pump": {
			NominalV: figure.Of(12, "V"), Current: amps(15), Out: []string{"P1", "P2"}, Back: []string{"N1"}, Source: "house.pos",
			DropFormulaV: figure.Of(0.6, "V"), DropNetworkV: unsolved, VoltageV: unsolved, LowVoltageV: unsolved, Devices: []string{"pump-fuse"},
		}},
		Batteries: map[string]*circuit.BatteryResult{"house": {
			OpenV: figure.Of(12.6, "V"), ResistanceLow: figure.Of(4, "mohm"), ResistanceHigh: figure.Of(9, "mohm"), Bypass: []string{"P1"},
		}},
		Cases: func() []*circuit.CaseResult {
			return []*circuit.CaseResult{
				{Name: "pump alone", Kind: circuit.Alone, Sources: map[string]float64{"house": 15, "spare": -1e-14}},
				{Name: "all loads", Kind: circuit.All, Gaps: []figure.Gap{figure.Missing("conductors.N1.size")}},
				{Name: "pump stalled", Kind: circuit.Stalled, Problem: &problem},
			}
		},
		Problems: []circuit.Problem{problem},
	}
}

func schedule(t *testing.T, text string, a *circuit.Analysis, o reports.ScheduleOptions) string {
	t.Helper()
	r, faults := record.Decode("yard/pump.yaml", []byte(text))
	require.Empty(t, faults)
	o.Sources = map[string]*reports.Source{"yard/pump.yaml": reports.NewSource([]byte(text), r.Places.Find)}
	var b bytes.Buffer
	require.NoError(t, reports.Schedule(&b, r, a, o))
	return b.String()
}

func TestScheduleGolden(t *testing.T) {
	for name, o := range map[string]reports.ScheduleOptions{
		"pump":         {},
		"pump-working": {Working: true},
		"pump-us":      {Options: reports.Options{Units: quantity.US}},
		"pump-wide":    {Options: reports.Options{Units: quantity.Metric, Width: 100}},
	} {
		t.Run(name, func(t *testing.T) {
			golden(t, "schedule", name+".txt", []byte(schedule(t, pumpText, pumpAnalysis(), o)))
		})
	}
}

func TestEveryOpenFigureIsNamedWithItsEntry(t *testing.T) {
	got := schedule(t, pumpText, pumpAnalysis(), reports.ScheduleOptions{})
	_, open, found := strings.Cut(got, "OPEN FIGURES")
	require.True(t, found)
	for _, part := range []string{"conductors.N1.size (line 13)", "drop by network", "allowable amperage in its bundle", "the return is not solved"} {
		assert.Contains(t, open, part)
	}
}

func TestAScheduleOfNothingStillHoldsTheCaution(t *testing.T) {
	got := schedule(t, "driploop: 1\njob: {number: X}\nvessel: {system: 12 V}\n", &circuit.Analysis{}, reports.ScheduleOptions{Working: true})
	assert.Contains(t, got, "CIRCUITS: 0 loads")
	assert.Contains(t, strings.Join(strings.Fields(got), " "), reports.Caution)
}
