package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

// In a network without rings the currents follow from the loads alone: a length
// that was not measured leaves the drop open and nothing else.
func TestMissingLengthDoesNotBlindCurrents(t *testing.T) {
	a := analyse(t, boat, launchParts, `
		P1: bat.pos > main.line, 2 AWG, 150 mm
		P2: main.load > sw.in, 2 AWG, 300 mm
		P3: sw.out > bus.a
		P4: bus.b > f1.line, 10 AWG, 200 mm
		P5: f1.load > lamp.pos, 14 AWG
		P6: bus.c > pump.pos, 10 AWG, 5 m
		N1: bat.neg > neg.a, 2 AWG, 500 mm, negative
		N2: neg.b > lamp.neg, 14 AWG, 3 m, negative
		N3: neg.c > pump.neg, 10 AWG, 5 m, negative`)
	for id, amps := range map[string]float64{"P1": 14, "P3": 14, "P5": 4, "P6": 10, "N2": 4} {
		assert.InDelta(t, amps, known(t, a.Conductors[id].Current), 1e-9, id)
	}
	assert.InDelta(t, 14, known(t, a.Devices["main"].RunningA), 1e-9)
	lamp := a.Loads["lamp"]
	assert.Equal(t, []string{"P1", "P2", "P3", "P4", "P5"}, lamp.Out)
	assert.Equal(t, []string{"N2", "N1"}, lamp.Back)
	assert.False(t, lamp.DropFormulaV.Known)
	assert.Equal(t, []string{"conductors.P3.size", "conductors.P3.length", "conductors.P5.length"}, fields(lamp.DropFormulaV.Gaps))
	assert.Equal(t, []string{"conductors.P3.size", "conductors.P3.length", "conductors.P5.length"}, fields(lamp.DropNetworkV.Gaps))
	assert.InDelta(t, 4, known(t, lamp.Current), 1e-9)
	// The pump's own way has one of the two.
	assert.Equal(t, []string{"conductors.P3.size", "conductors.P3.length"}, fields(a.Loads["pump"].DropNetworkV.Gaps))
}

// In a ring the current divides by resistance: without a length it is open in
// the ring, and known outside it.
func TestMissingLengthInARing(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		left: kind: busbar
		right: kind: busbar
		lamp: kind: lamp, current: 6 A`, `
		P1: bat.pos > left.a, 8 AWG, 1 m
		A: left.b > right.a, 10 AWG, 2 m
		B: left.c > right.b, 10 AWG
		P2: right.c > lamp.pos, 10 AWG, 1 m
		N1: bat.neg > lamp.neg, 8 AWG, 1 m, negative`)
	assert.InDelta(t, 6, known(t, a.Conductors["P1"].Current), 1e-9)
	assert.InDelta(t, 6, known(t, a.Conductors["P2"].Current), 1e-9)
	for _, id := range []string{"A", "B"} {
		f := a.Conductors[id].Current
		assert.False(t, f.Known, id)
		assert.Equal(t, []string{"conductors.B.length"}, fields(f.Gaps), id)
	}
}

func TestMissingCurrentOpensOnlyItsOwnWay(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		bus: kind: busbar
		neg: kind: busbar
		lamp: kind: lamp, current: 4 A
		fan: kind: blower`, `
		P1: bat.pos > bus.a, 8 AWG, 1 m
		P2: bus.b > lamp.pos, 14 AWG, 1 m
		P3: bus.c > fan.pos, 14 AWG, 1 m
		N1: bat.neg > neg.a, 8 AWG, 1 m, negative
		N2: neg.b > lamp.neg, 14 AWG, 1 m, negative
		N3: neg.c > fan.neg, 14 AWG, 1 m, negative`)
	assert.InDelta(t, 4, known(t, a.Conductors["P2"].Current), 1e-9)
	for _, id := range []string{"P1", "P3", "N1", "N3"} {
		assert.Equal(t, figure.Open(figure.Missing("components.fan.current")), a.Conductors[id].Current, id)
	}
	assert.Equal(t, []string{"P1", "P3"}, a.Loads["fan"].Out, "its way is known all the same")
	assert.Equal(t, figure.True(), a.Loads["fan"].Fed)
	known(t, a.Loads["lamp"].DropNetworkV)
}

// A relay whose record does not say what it joins leaves open what lies beyond,
// and names the entry.
func TestRelayWithoutLinks(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		r: kind: relay, coils: [{between: [a, b], current: 0.2 A}]
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > r.a, 14 AWG, 1 m
		P2: r.b > lamp.pos, 14 AWG, 1 m
		N1: bat.neg > lamp.neg, 14 AWG, 1 m, negative`)
	assert.False(t, a.Loads["lamp"].Fed.Known)
	assert.Contains(t, fields(a.Loads["lamp"].Fed.Gaps), "components.r.links")
	for _, id := range []string{"P1", "P2", "N1"} {
		assert.False(t, a.Conductors[id].Current.Known, id)
		assert.Contains(t, fields(a.Conductors[id].Current.Gaps), "components.r.links", id)
	}
}

func TestLoadThatNothingFeeds(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		lamp: kind: lamp, current: 4 A
		fan: kind: blower, current: 3 A`, `
		P1: bat.pos > lamp.pos, 14 AWG, 1 m
		N1: bat.neg > lamp.neg, 14 AWG, 1 m, negative
		P2: bat.pos > fan.pos, 14 AWG, 1 m`)
	require.Len(t, a.Problems, 1)
	assert.Equal(t, Island, a.Problems[0].Kind)
	assert.Equal(t, "components.fan", a.Problems[0].Path)
	assert.Equal(t, figure.False(), a.Loads["fan"].Fed)
	assert.False(t, a.Loads["fan"].VoltageV.Known)
	assert.False(t, a.Conductors["P2"].Current.Known, "a current that the record does not lead back is not zero")
	known(t, a.Loads["lamp"].VoltageV)
}

func TestShortedBattery(t *testing.T) {
	a := analyse(t, boat, `
		b1: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		b2: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		lamp: kind: lamp, current: 4 A
		fan: kind: blower, current: 3 A`, `
		P1: b1.pos > lamp.pos, 14 AWG, 1 m
		X1: lamp.pos > b1.neg, 14 AWG, 1 m
		N1: b1.neg > lamp.neg, 14 AWG, 1 m, negative
		P2: b2.pos > fan.pos, 14 AWG, 1 m
		N2: b2.neg > fan.neg, 14 AWG, 1 m, negative`)
	kinds := map[ProblemKind]int{}
	for _, p := range a.Problems {
		kinds[p.Kind]++
		assert.NotEmpty(t, p.Path)
	}
	assert.Equal(t, map[ProblemKind]int{Shorted: 1}, kinds)
	assert.False(t, a.Conductors["P1"].Current.Known)
	assert.False(t, a.Loads["lamp"].VoltageV.Known)
	assert.InDelta(t, 3, known(t, a.Conductors["P2"].Current), 1e-9, "the other island goes on")
	known(t, a.Loads["fan"].VoltageV)
}

func TestSourcesOfUnlikeVoltageInParallel(t *testing.T) {
	a := analyse(t, boat, `
		b1: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		b2: kind: battery, nominal: 24 V, internal_resistance: 5 mohm
		lamp: kind: lamp, current: 4 A`, `
		P1: b1.pos > lamp.pos, 4 AWG, 1 m
		P2: b2.pos > lamp.pos, 4 AWG, 1 m
		N1: b1.neg > lamp.neg, 4 AWG, 1 m, negative
		N2: b2.neg > lamp.neg, 4 AWG, 1 m, negative`)
	require.NotEmpty(t, a.Problems)
	assert.Equal(t, Shorted, a.Problems[0].Kind)
}

// A load of constant power over a long thin pair. By hand: the greatest power a
// 12.6 V source gives through R is E²/(4R).
func TestVoltageCollapse(t *testing.T) {
	parts := func(watts string) string {
		return `
			bat: kind: battery, nominal: 12 V, internal_resistance: 100 mohm
			heater: kind: heater, power: ` + watts + `, load_kind: constant-power`
	}
	wires := `
		P1: bat.pos > heater.pos, 16 AWG, 10 m
		N1: bat.neg > heater.neg, 16 AWG, 10 m, negative`
	a := analyse(t, boat, parts("20 W"), wires)
	require.Empty(t, a.Problems)
	ohms := 0.1 + (known(t, a.Conductors["P1"].RHot)+known(t, a.Conductors["N1"].RHot))/1000
	most := 12.6 * 12.6 / (4 * ohms)
	assert.Greater(t, most, 40.0)
	assert.Less(t, most, 160.0)

	b := analyse(t, boat, parts("160 W"), wires)
	require.Len(t, b.Problems, 1)
	assert.Equal(t, Collapse, b.Problems[0].Kind)
	assert.Equal(t, "components.heater", b.Problems[0].Path)
	assert.False(t, b.Loads["heater"].VoltageV.Known)
	assert.False(t, b.Conductors["P1"].Current.Known)
	assert.Equal(t, figure.True(), b.Loads["heater"].Fed)
}
