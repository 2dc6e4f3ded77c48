package circuit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

// feeder is one load on one fuse, in plain 10 mm² of class 5:
//
//	bat.pos ─P1 200 mm─ f1 30 A ─P2 4 m─ lamp ─N1 4.2 m─ bat.neg
//
// By IEC 60228 such a conductor has 1.91 Ω/km at most, by 1/58 Ω·mm²/m 1.7241
// Ω/km at least.
const feederParts = `
	bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
	f1: kind: fuse, rating: 30 A, curve: blade-c
	lamp: kind: lamp, current: 1 A, starting: 2 A`

const feederWires = `
	P1: bat.pos > f1.line, 10 mm2, 200 mm, class: class-5, tinned: false, compound: pvc, insulation: 70 degC
	P2: f1.load > lamp.pos, 10 mm2, 4 m, class: class-5, tinned: false, compound: pvc, insulation: 70 degC
	N1: lamp.neg > bat.neg, 10 mm2, 4.2 m, negative, class: class-5, tinned: false, compound: pvc, insulation: 70 degC`

func TestFaultOfAFeeder(t *testing.T) {
	a := analyse(t, boat, feederParts, feederWires)
	// At the fuse: 12.6 V / (5 + 0.2·1.7241) mohm = 2357.4 A.
	f1 := a.Devices["f1"]
	assert.InDelta(t, 12600/(5+0.2*1.7241379), known(t, f1.FaultHighA), 0.1)
	// Warm: the same way at working temperature.
	p1, p2, n1 := known(t, a.Conductors["P1"].RHot), known(t, a.Conductors["P2"].RHot), known(t, a.Conductors["N1"].RHot)
	assert.InDelta(t, 12600/(5+p1), known(t, f1.FaultLowA), 1e-6)
	assert.Greater(t, p2, 4*1.91, "warmer than 20 °C")

	// At the load's own terminals the way back is all of N1.
	c := a.Conductors["P2"]
	assert.InDelta(t, 12600/(5+p1+p2+n1), known(t, c.FaultLowA), 1e-6)
	assert.InDelta(t, 12600/(5+4.2*1.7241379), known(t, c.FaultHighA), 0.1)
	// P1's far end lies at 0.2 m of 4.2 m on the way out; so far back as well.
	assert.InDelta(t, 12600/(5+p1+n1*0.2/4.2), known(t, a.Conductors["P1"].FaultLowA), 1e-6)

	assert.Equal(t, figure.True(), c.Clears)
	// Over 580 A, 19 times the rating, beyond the last gate at 600 %: 0.15 s.
	assert.InDelta(t, 0.15, known(t, c.ClearS), 1e-9)
	// Its melting energy stays that of the last gate: (6·30 A)²·0.15 s.
	assert.InDelta(t, 180*180*0.15, known(t, c.LetThroughA2s), 1e-6)
	// k = 115 for PVC at 70 °C (IEC 60364-4-43 table 43.1): (115·10)².
	assert.InDelta(t, 1150*1150, known(t, c.WithstandA2s), 1e-3)

	assert.Equal(t, figure.False(), a.Conductors["P1"].Clears, "nothing opens ahead of it")
	assert.False(t, a.Conductors["P1"].LetThroughA2s.Known)
	assert.False(t, a.Conductors["N1"].FaultLowA.Known, "a fault from the grounded side to ground is none")
	known(t, a.Conductors["N1"].WithstandA2s)
}

func TestFaultNamesWhatIsMissing(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		f1: kind: fuse, rating: 30 A
		lamp: kind: lamp, current: 1 A`, `
		P1: bat.pos > f1.line, 10 mm2, 200 mm
		P2: f1.load > lamp.pos, 10 mm2, 4 m
		N1: lamp.neg > bat.neg, 10 mm2`)
	c := a.Conductors["P2"]
	assert.Equal(t, []string{"conductors.N1.length"}, fields(c.FaultLowA.Gaps))
	known(t, c.FaultHighA)
	assert.False(t, c.ClearS.Known)

	b := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		f1: kind: fuse, rating: 30 A
		lamp: kind: lamp, current: 1 A`, feederWires)
	assert.Equal(t, []string{"components.f1.curve"}, fields(b.Conductors["P2"].ClearS.Gaps))
	assert.Equal(t, []string{"components.f1.curve"}, fields(b.Conductors["P2"].LetThroughA2s.Gaps))
	assert.Equal(t, figure.OpenTruth(figure.Missing("components.f1.curve")), b.Conductors["P2"].Clears)
}

// Two batteries feed the fault, each through its own fuse: it is cut off when
// both have opened.
func TestFaultFedFromTwoSides(t *testing.T) {
	a := analyse(t, boat, `
		b1: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
		b2: kind: battery, nominal: 12 V, internal_resistance: 50 mohm
		f1: kind: fuse, rating: 30 A, curve: blade-c
		f2: kind: fuse, rating: 80 A, curve: blade-c
		bus: kind: busbar
		neg: kind: busbar
		lamp: kind: lamp, current: 1 A`, `
		P1: b1.pos > f1.line, 10 mm2, 200 mm
		P2: f1.load > bus.a, 10 mm2, 1 m
		P3: b2.pos > f2.line, 10 mm2, 200 mm
		P4: f2.load > bus.b, 10 mm2, 1 m
		P5: bus.c > lamp.pos, 10 mm2, 1 m
		N1: b1.neg > neg.a, 10 mm2, 1 m, negative
		N2: b2.neg > neg.b, 10 mm2, 1 m, negative
		N3: neg.c > lamp.neg, 10 mm2, 1 m, negative`)
	require.Empty(t, a.Problems)
	c := a.Conductors["P5"]
	// The strong battery blows its fuse within the 0.15 s of the last gate. The
	// weak one gives less than 12.6 V / 50 mohm = 252 A: less than the gate of its
	// fuse at 350 %, 0.5 s.
	assert.Greater(t, known(t, c.ClearS), 0.5)
}

func TestSelective(t *testing.T) {
	parts := func(lower, upper string) string {
		return `
			bat: kind: battery, nominal: 12 V, internal_resistance: 100 mohm
			main: kind: fuse, ` + upper + `
			f1: kind: fuse, ` + lower + `
			lamp: kind: lamp, current: 1 A`
	}
	wires := `
		P1: bat.pos > main.line, 10 mm2, 200 mm
		P2: main.load > f1.line, 10 mm2, 200 mm
		P3: f1.load > lamp.pos, 10 mm2, 1 m
		N1: lamp.neg > bat.neg, 10 mm2, 1 m, negative`
	// About 120 A. A 5 A blade fuse opens within 0.15 s; a 100 A bolt-in fuse at
	// 120 % not within 2 min at least.
	a := analyse(t, boat, parts("rating: 5 A, curve: blade-c", "rating: 100 A, curve: bolt-in"), wires)
	assert.Equal(t, map[string]figure.Truth{"main": figure.True()}, a.Devices["f1"].Selective)
	assert.Nil(t, a.Devices["main"].Selective)
	// The other way round the upper one opens first for certain.
	b := analyse(t, boat, parts("rating: 100 A, curve: bolt-in", "rating: 5 A, curve: blade-c"), wires)
	assert.Equal(t, map[string]figure.Truth{"main": figure.False()}, b.Devices["f1"].Selective)
	// Alike, gates cannot tell.
	c := analyse(t, boat, parts("rating: 20 A, curve: blade-c", "rating: 20 A, curve: blade-c"), wires)
	assert.False(t, c.Devices["f1"].Selective["main"].Known)
	d := analyse(t, boat, parts("rating: 5 A", "rating: 100 A, curve: bolt-in"), wires)
	assert.Equal(t, figure.OpenTruth(figure.Missing("components.f1.curve")), d.Devices["f1"].Selective["main"])
	// Without the resistance of the battery no current is known; the device ahead
	// still stands there.
	e := analyse(t, boat, strings.Replace(parts("rating: 20 A, curve: blade-c", "rating: 10 A, curve: blade-c"), ", internal_resistance: 100 mohm", "", 1), wires)
	assert.Contains(t, e.Devices["f1"].Selective["main"].Gaps, figure.Missing("components.bat.internal_resistance"))
	assert.Empty(t, e.Devices["main"].Selective)
}

// Two conductors in parallel lead to a busbar that feeds nothing. Either end of
// each can be the far one, whatever stands first in the record: the greatest fault
// is at the busbar near the battery, the least at the other.
func TestFaultInARingThatFeedsNothing(t *testing.T) {
	parts := "bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm\nb1: kind: busbar\nb2: kind: busbar"
	ring := []string{
		"P1: bat.pos > b1.a, 10 mm2, 200 mm, class: class-5, tinned: false",
		"P2: b1.b > b2.a, 10 mm2, 1 m, class: class-5, tinned: false",
		"P3: b2.b > b1.c, 10 mm2, 1 m, class: class-5, tinned: false",
	}
	for _, order := range [][]int{{0, 1, 2}, {2, 1, 0}, {1, 2, 0}} {
		a := analyse(t, boat, parts, ring[order[0]]+"\n"+ring[order[1]]+"\n"+ring[order[2]])
		p1 := known(t, a.Conductors["P1"].RHot)
		for _, id := range []string{"P2", "P3"} {
			c := a.Conductors[id]
			// 1/58 Ω·mm²/m, 1.7241 mohm a metre of 10 mm², at the near end.
			assert.InDelta(t, 12600/(5+0.2*1.7241379), known(t, c.FaultHighA), 0.1, id)
			// At the far end half of a conductor's resistance more, both warm.
			assert.InDelta(t, 12600/(5+p1+known(t, c.RHot)/2), known(t, c.FaultLowA), 1e-6, id)
		}
	}
}

// The points of a maker's sheet count before the family of the curve: a 25 A
// breaker behind 12.6 V / (5 mohm + its feed) opens at some 500 A within the time
// of its last point, and lets through no more than that time gives.
func TestFaultBehindACurveOfPoints(t *testing.T) {
	parts := func(points string) string {
		return strings.Replace(feederParts, "kind: fuse, rating: 30 A, curve: blade-c", "kind: breaker, rating: 30 A"+points, 1)
	}
	c := analyse(t, boat, parts(", curve: thermal, curve_points: [{current: 60 A, least: 5 s, greatest: 40 s}, {current: 300 A, least: 8 ms, greatest: 20 ms}, {current: 31 A}]"), feederWires).Conductors["P2"]
	low, high := known(t, c.FaultLowA), known(t, c.FaultHighA)
	require.Greater(t, low, 300.0)
	assert.Equal(t, figure.True(), c.Clears)
	assert.InDelta(t, 0.02, known(t, c.ClearS), 1e-9)
	near := 12600 / (5 + 0.2*1.7241379) // at its near end, the most along it
	assert.Greater(t, near, high)
	assert.InDelta(t, near*near*0.02, known(t, c.LetThroughA2s), 30)
	assert.Contains(t, c.ClearS.Working()[len(c.ClearS.Working())-1].Source, "components.f1.curve_points")

	// Points that contradict each other leave it open, and say so.
	bad := analyse(t, boat, parts(", curve_points: [{current: 60 A, greatest: 1 s}, {current: 90 A, greatest: 2 s}]"), feederWires).Conductors["P2"]
	require.False(t, bad.ClearS.Known)
	assert.Contains(t, bad.ClearS.Gaps[0].Why, "does not open later at more current")
}
