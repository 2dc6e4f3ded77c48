package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

func TestDisconnect(t *testing.T) {
	a := analyse(t, boat, launchParts, launchWires)
	b := a.Batteries["bat"]
	assert.Equal(t, "sw", b.Disconnect)
	assert.Empty(t, b.Bypass)
	assert.InDelta(t, 450, known(t, b.SwitchLength), 1e-9, "P1 150 mm and P2 300 mm")
}

// A bilge pump ahead of the switch and a starter straight on the battery: the
// switch stands, and the two that it does not open are named where they leave
// the way to it.
func TestBypass(t *testing.T) {
	a := analyse(t, boat, launchParts+`
		post: kind: busbar
		f2: kind: fuse, rating: 10 A
		bilge: kind: pump, current: 3 A
		starter: kind: motor, current: 200 A, stall: 600 A, purpose: cranking`, `
		P1: bat.pos > main.line, 2 AWG, 150 mm
		P2: main.load > post.a, 2 AWG, 100 mm
		P2b: post.b > sw.in, 2 AWG, 200 mm
		P3: sw.out > bus.a, 2 AWG, 400 mm
		P4: bus.b > f1.line, 10 AWG, 200 mm
		P5: f1.load > lamp.pos, 14 AWG, 3 m
		Q1: post.c > f2.line, 12 AWG, 100 mm
		Q2: f2.load > bilge.pos, 14 AWG, 2 m
		S1: bat.pos > starter.pos, 2/0 AWG, 2 m
		N1: bat.neg > neg.a, 2 AWG, 500 mm, negative
		N2: neg.b > lamp.neg, 14 AWG, 3 m, negative
		N3: neg.c > bilge.neg, 14 AWG, 3 m, negative
		N4: neg.d > starter.neg, 2/0 AWG, 2 m, negative
		N5: neg.e > pump.neg, 14 AWG, 3 m, negative
		P6: bus.c > pump.pos, 14 AWG, 3 m`)
	require.Empty(t, a.Problems)
	b := a.Batteries["bat"]
	assert.Equal(t, "sw", b.Disconnect)
	assert.Equal(t, []string{"S1", "Q1"}, b.Bypass)
	assert.InDelta(t, 450, known(t, b.SwitchLength), 1e-9)
}

// A relay joins the engine's battery with that of the house: the switch behind the
// house battery's terminal is not the engine battery's, which has none. Joined by
// a cable, the two are one bank, and the switch is that of both.
func TestSwitchBehindAJoiningRelayIsOfTheOtherBattery(t *testing.T) {
	parts := `
		engine: kind: battery, nominal: 12 V
		house: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 100 A
		sw: kind: switch, duty: battery-disconnect
		starter: kind: motor, current: 200 A, stall: 600 A, purpose: cranking
		lamp: kind: lamp, current: 4 A`
	wires := `
		S1: engine.pos > starter.pos, 2/0 AWG, 2 m
		S2: engine.neg > starter.neg, 2/0 AWG, 2 m, negative
		R1: engine.pos > f1.line, 6 AWG, 150 mm
		H1: house.pos > sw.in, 2 AWG, 300 mm
		H2: sw.out > lamp.pos, 14 AWG, 3 m
		N1: house.neg > lamp.neg, 14 AWG, 3 m, negative
		N2: house.neg > engine.neg, 2 AWG, 1 m, negative`

	joined := analyse(t, boat, parts+`
		joiner: kind: relay, links: [{between: [a, b], when: charging}]`, wires+`
		R2: f1.load > joiner.a, 6 AWG, 500 mm
		R3: house.pos > joiner.b, 6 AWG, 1 m`)
	require.Empty(t, joined.Problems)
	assert.Equal(t, figure.False(), joined.Batteries["engine"].Switched)
	assert.Empty(t, joined.Batteries["engine"].Disconnect)
	assert.Equal(t, "sw", joined.Batteries["house"].Disconnect)
	assert.Equal(t, []string{"R3"}, joined.Batteries["house"].Bypass)

	bank := analyse(t, boat, parts, wires+`
		R2: f1.load > house.pos, 6 AWG, 500 mm`)
	require.Empty(t, bank.Problems)
	assert.Equal(t, "sw", bank.Batteries["engine"].Disconnect)
	assert.Equal(t, "sw", bank.Batteries["house"].Disconnect)
}

// A lamp's own switch is not the battery's disconnect.
func TestBranchSwitchesAreNoDisconnect(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 15 A
		bus: kind: busbar
		s1: kind: switch
		s2: kind: switch
		lamp: kind: lamp, current: 4 A
		fan: kind: blower, current: 4 A`, `
		P1: bat.pos > f1.line, 10 AWG, 100 mm
		P2: f1.load > bus.a, 10 AWG, 1 m
		P3: bus.b > s1.in, 14 AWG, 1 m
		P4: s1.out > lamp.pos, 14 AWG, 1 m
		P5: bus.c > s2.in, 14 AWG, 1 m
		P6: s2.out > fan.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative
		N2: fan.neg > bat.neg, 14 AWG, 1 m, negative`)
	b := a.Batteries["bat"]
	assert.Empty(t, b.Disconnect)
	assert.False(t, b.SwitchLength.Known)
}

// A switch counts as the disconnect only if the record says what it is for; until
// then it is open whether the battery is switched.
func TestSwitchedOnlyByAStatedDuty(t *testing.T) {
	for duty, want := range map[string]figure.Truth{
		", duty: battery-disconnect": figure.True(),
		", duty: lighting":           figure.False(),
		"":                           figure.OpenTruth(figure.Missing("components.s1.duty")),
	} {
		a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 15 A
		s1: kind: switch`+duty+`
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > s1.in, 10 AWG, 100 mm
		P2: s1.out > f1.line, 10 AWG, 1 m
		P3: f1.load > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
		assert.Equal(t, want, a.Batteries["bat"].Switched, "s1%s", duty)
	}
}

func TestDisconnectOfAnInsulatedSystemNeedsBothPoles(t *testing.T) {
	parts := `
		bat: kind: battery, nominal: 12 V
		s1: kind: switch, duty: battery-disconnect
		s2: kind: switch, duty: battery-disconnect
		lamp: kind: lamp, current: 4 A`
	one := analyse(t, "earthing: insulated", parts, `
		P1: bat.pos > s1.in, 10 AWG, 100 mm
		P2: s1.out > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
	assert.Empty(t, one.Batteries["bat"].Disconnect)
	two := analyse(t, "earthing: insulated", parts, `
		P1: bat.pos > s1.in, 10 AWG, 100 mm
		P2: s1.out > lamp.pos, 14 AWG, 1 m
		N1: bat.neg > s2.in, 10 AWG, 300 mm, negative
		N2: s2.out > lamp.neg, 14 AWG, 1 m, negative`)
	assert.Equal(t, "s1", two.Batteries["bat"].Disconnect)
	assert.InDelta(t, 300, known(t, two.Batteries["bat"].SwitchLength), 1e-9, "the longer of the two")
}

// The lower battery of a series bank is cut off by the bank's switch.
func TestDisconnectOfASeriesBank(t *testing.T) {
	a := analyse(t, "system: 24 V, earthing: negative-ground", `
		low: kind: battery, nominal: 12 V
		high: kind: battery, nominal: 12 V
		sw: kind: switch, duty: battery-disconnect
		lamp: kind: lamp, current: 4 A`, `
		L: low.pos > high.neg, 4 AWG, 300 mm
		P1: high.pos > sw.in, 4 AWG, 200 mm
		P2: sw.out > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > low.neg, 14 AWG, 1 m, negative`)
	for _, id := range []string{"low", "high"} {
		assert.Equal(t, "sw", a.Batteries[id].Disconnect, id)
		assert.Empty(t, a.Batteries[id].Bypass, id)
	}
}

func TestInternalResistance(t *testing.T) {
	for name, c := range map[string]struct {
		keys      string
		low, high float64 // mohm, by hand
	}{
		"recorded": {"internal_resistance: 4.2 mohm", 4.2, 4.2},
		// 12.6 V / (5 · 500 A) = 5.04 mohm; (12.6 − 7.2) V / 500 A = 10.8 mohm,
		// the worked example for SAE J537.
		"from cranking current": {"cranking: 500 A", 5.04, 10.8},
		// 12.6 V / (60 · 100 A) = 2.1 mohm; 12.6 V / (5 · 100 A) = 25.2 mohm.
		"from capacity, lead": {"capacity: 100 Ah, chemistry: agm", 2.1, 25.2},
		// Four cells at 3.35 V = 13.4 V: 13.4/10,000 A and 13.4/500 A.
		"from capacity, lithium": {"capacity: 100 Ah, chemistry: lithium", 1.34, 26.8},
	} {
		t.Run(name, func(t *testing.T) {
			a := analyse(t, boat, "bat: kind: battery, nominal: 12 V, "+c.keys+"\nlamp: kind: lamp, current: 4 A", `
				P1: bat.pos > lamp.pos, 10 AWG, 1 m
				N1: bat.neg > lamp.neg, 10 AWG, 1 m, negative`)
			b := a.Batteries["bat"]
			assert.InDelta(t, c.low, known(t, b.ResistanceLow), 1e-9)
			assert.InDelta(t, c.high, known(t, b.ResistanceHigh), 1e-9)
			assert.NotEmpty(t, b.ResistanceHigh.Working()[0].Source)
		})
	}
}

func TestNothingRecordedOfABattery(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 15 A
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > f1.line, 10 AWG, 1 m
		P2: f1.load > lamp.pos, 10 AWG, 1 m
		N1: bat.neg > lamp.neg, 10 AWG, 1 m, negative`)
	assert.False(t, a.Batteries["bat"].ResistanceHigh.Known)
	f := a.Devices["f1"].FaultHighA
	assert.False(t, f.Known)
	assert.Equal(t, []string{"components.bat.cranking", "components.bat.internal_resistance"}, fields(f.Gaps))
	assert.InDelta(t, 4, known(t, a.Conductors["P1"].Current), 1e-9, "a constant current does not depend on it")
	known(t, a.Loads["lamp"].DropNetworkV)
	assert.False(t, a.Loads["lamp"].VoltageV.Known)
}
