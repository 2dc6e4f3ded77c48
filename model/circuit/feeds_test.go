package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

// feedOf returns the only feed of a conductor.
func feedOf(t *testing.T, a *Analysis, id string) Feed {
	t.Helper()
	require.Len(t, a.Conductors[id].Feeds, 1)
	return a.Conductors[id].Feeds[0]
}

func known(t *testing.T, f figure.Figure) float64 {
	t.Helper()
	require.True(t, f.Known, "%v", f.Gaps)
	return f.Value
}

func fields(gaps []figure.Gap) []string {
	var out []string
	for _, g := range gaps {
		out = append(out, g.Field)
	}
	return out
}

// launch is a battery, its fuse and switch, a bus with two branches, one of
// which has no device of its own.
//
//	bat.pos ─P1─ main(100 A) ─P2─ sw ─P3─ bus ─P4─ f1(15 A) ─P5─ lamp
//	                                       └──P6────────────────── pump
const launchParts = `
	bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm, cranking: 700 A
	main: kind: fuse, rating: 100 A
	sw: kind: switch, duty: battery-disconnect
	bus: kind: busbar
	f1: kind: fuse, rating: 15 A
	lamp: kind: lamp, current: 4 A
	pump: kind: pump, current: 10 A
	neg: kind: busbar`

const launchWires = `
	P1: bat.pos > main.line, 2 AWG, 150 mm
	P2: main.load > sw.in, 2 AWG, 300 mm
	P3: sw.out > bus.a, 2 AWG, 400 mm
	P4: bus.b > f1.line, 10 AWG, 200 mm
	P5: f1.load > lamp.pos, 14 AWG, 3 m
	P6: bus.c > pump.pos, 10 AWG, 5 m
	N1: bat.neg > neg.a, 2 AWG, 500 mm, negative
	N2: neg.b > lamp.neg, 14 AWG, 3 m, negative
	N3: neg.c > pump.neg, 10 AWG, 5 m, negative`

func TestFeedOfATree(t *testing.T) {
	a := analyse(t, boat, launchParts, launchWires)
	require.Empty(t, a.Problems)

	p1 := feedOf(t, a, "P1")
	assert.Equal(t, "bat.pos", p1.Source)
	assert.Equal(t, "battery", p1.SourceKind)
	assert.True(t, p1.Ahead)
	assert.False(t, p1.Bare)
	assert.Equal(t, []string{"main"}, p1.NextDevices)
	assert.Equal(t, "main", p1.EndsAtDevice)
	assert.InDelta(t, 150, known(t, p1.Length), 1e-9)
	assert.Equal(t, figure.False(), p1.Enclosed)

	for _, id := range []string{"P2", "P3", "P4", "P5", "P6"} {
		f := feedOf(t, a, id)
		assert.Equal(t, "main", f.Device, id)
		assert.False(t, f.Ahead, id)
	}
	for _, id := range []string{"N1", "N2", "N3"} {
		assert.Equal(t, figure.False(), a.Conductors[id].Ungrounded, id)
		assert.Empty(t, a.Conductors[id].Feeds, id)
	}
}

func TestGuardOfATree(t *testing.T) {
	a := analyse(t, boat, launchParts, launchWires)
	for id, want := range map[string]struct {
		amps float64
		by   string
	}{
		"P1": {100, "main"}, // ahead of it: what it feeds
		"P3": {100, "main"},
		"P5": {15, "f1"}, // the least in series
		"P6": {100, "main"},
	} {
		assert.InDelta(t, want.amps, known(t, a.Conductors[id].Guard), 1e-9, id)
		assert.Equal(t, []string{want.by}, a.Conductors[id].GuardBy, id)
	}
}

func TestAlwaysLiveEndsAtASwitch(t *testing.T) {
	a := analyse(t, boat, launchParts, launchWires)
	for id, want := range map[string]bool{"P1": true, "P2": true, "P3": false, "P6": false} {
		assert.Equal(t, want, a.Conductors[id].AlwaysLive.Value, id)
	}
	assert.True(t, a.Terminals["sw.in"].AlwaysLive.Value)
	assert.True(t, a.Terminals["sw.in"].Protected.Value)
	assert.False(t, a.Terminals["sw.out"].AlwaysLive.Value)
	assert.False(t, a.Terminals["bat.pos"].Protected.Value)
	assert.Equal(t, []string{"P3.to"}, a.Terminals["bus.a"].Landed)
}

// A relay contact is no isolation: the command may come at any time.
func TestAlwaysLivePassesARelay(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		r: kind: relay, links: [{between: [a, b], when: on}]
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > r.a, 10 AWG, 1 m
		P2: r.b > lamp.pos, 10 AWG, 1 m
		N1: lamp.neg > bat.neg, 10 AWG, 1 m, negative`)
	assert.True(t, a.Conductors["P2"].AlwaysLive.Value)
	assert.True(t, a.Loads["lamp"].Fed.Value)
}

func TestFeedWithoutADevice(t *testing.T) {
	parts := `
		bat: kind: battery, nominal: 12 V
		sw: kind: switch
		f1: kind: fuse, rating: 15 A
		bus: kind: busbar
		lamp: kind: lamp, current: 4 A
		horn: kind: electronics, current: 2 A
		neg: kind: busbar`
	wires := `
		P1: bat.pos > sw.in, 10 AWG, 1 m
		P2: sw.out > bus.a, 10 AWG, 1 m
		P3: bus.b > f1.line, 10 AWG, 1 m
		P4: f1.load > lamp.pos, 14 AWG, 3 m
		P5: bus.c > horn.pos, 14 AWG, 3 m
		N1: bat.neg > neg.a, 10 AWG, 1 m, negative
		N2: neg.b > lamp.neg, 14 AWG, 3 m, negative
		N3: neg.c > horn.neg, 14 AWG, 3 m, negative`
	a := analyse(t, boat, parts, wires)
	p2 := feedOf(t, a, "P2")
	assert.True(t, p2.Ahead)
	assert.True(t, p2.Bare)
	assert.Equal(t, "horn", p2.BareVia)
	assert.Equal(t, []string{"f1"}, p2.NextDevices)
	assert.Empty(t, p2.EndsAtDevice)

	p3 := feedOf(t, a, "P3")
	assert.False(t, p3.Bare, "on from P3 every way has its fuse")
	assert.Equal(t, "f1", p3.EndsAtDevice)
	assert.InDelta(t, 3000, known(t, p3.Length), 1e-9)
	assert.Equal(t, []string{"P1", "P2", "P3"}, p3.Via)

	assert.False(t, a.Conductors["P5"].Guard.Known, "nothing limits it")
	assert.False(t, a.Conductors["P2"].Guard.Known)
	assert.InDelta(t, 15, known(t, a.Conductors["P3"].Guard), 1e-9)
}

func TestFeedThatEndsNowhere(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		bus: kind: busbar`, `
		P1: bat.pos > bus.a, 10 AWG, 1 m`)
	p1 := feedOf(t, a, "P1")
	assert.True(t, p1.Bare)
	assert.Equal(t, "bus", p1.BareVia)
}

// Two cables in parallel from a battery to a bus: either could carry a fault
// alone, so the longer one is the length to the fuse, and each is fed from both
// ends.
func TestLengthOfARingIsTheLongerWay(t *testing.T) {
	parts := `
		bat: kind: battery, nominal: 12 V
		bus: kind: busbar
		f1: kind: fuse, rating: 80 A
		lamp: kind: lamp, current: 4 A`
	wires := `
		A: bat.pos > bus.a, 2 AWG, 400 mm
		B: bat.pos > bus.b, 2 AWG, 900 mm
		C: bus.c > f1.line, 2 AWG, 100 mm
		D: f1.load > lamp.pos, 14 AWG, 1 m
		N: lamp.neg > bat.neg, 14 AWG, 1 m, negative`
	a := analyse(t, boat, parts, wires)
	c := feedOf(t, a, "C")
	assert.InDelta(t, 1000, known(t, c.Length), 1e-9)
	assert.Equal(t, []string{"B", "C"}, c.Via)
	assert.Equal(t, []string{"f1"}, feedOf(t, a, "A").NextDevices)
	assert.False(t, feedOf(t, a, "A").Bare)

	unmeasured := analyse(t, boat, parts, `
		A: bat.pos > bus.a, 2 AWG
		B: bat.pos > bus.b, 2 AWG, 900 mm
		C: bus.c > f1.line, 2 AWG, 100 mm
		D: f1.load > lamp.pos, 14 AWG, 1 m
		N: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
	length := feedOf(t, unmeasured, "C").Length
	assert.False(t, length.Known, "the way that was not measured could be the longer one")
	assert.Equal(t, []string{"conductors.A.length"}, fields(length.Gaps))
}

// A conductor that a bare way reaches as well as a fused one is not protected.
func TestBareWayWinsOverAFusedOne(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 80 A
		bus: kind: busbar
		lamp: kind: lamp, current: 4 A`, `
		A: bat.pos > f1.line, 2 AWG, 100 mm
		B: f1.load > bus.a, 2 AWG, 100 mm
		C: bat.pos > bus.b, 2 AWG, 900 mm
		D: bus.c > lamp.pos, 14 AWG, 1 m
		N: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
	d := feedOf(t, a, "D")
	assert.True(t, d.Ahead)
	assert.True(t, d.Bare)
	assert.Equal(t, "lamp", d.BareVia)
}

// A reversing controller joins neither supply and return nor its two outputs.
func TestReversingControllerIsNoShort(t *testing.T) {
	a := analyse(t, boat, reversingParts, reversingWires)
	require.Empty(t, a.Problems)
	assert.Equal(t, figure.False(), a.Conductors["N1"].Ungrounded)
	for _, id := range []string{"P2", "A", "B"} {
		assert.Equal(t, figure.True(), a.Conductors[id].Ungrounded, id)
		assert.Equal(t, "f1", feedOf(t, a, id).Device, id)
	}
	names := []string{}
	for _, c := range a.Cases.All() {
		if c.Kind == Alone {
			names = append(names, c.Name)
		}
	}
	assert.Equal(t, []string{"winch alone, up", "winch alone, down"}, names)
	assert.InDelta(t, 80, a.Cases.All()[0].Currents["A"], 1e-9)
	assert.InDelta(t, -80, a.Cases.All()[1].Currents["A"], 1e-9)
	assert.InDelta(t, 80, known(t, a.Conductors["A"].Current), 1e-9)
	assert.InDelta(t, 200, known(t, a.Conductors["B"].Surge), 1e-9)
	assert.Equal(t, []string{"P1", "P2", "A"}, a.Loads["winch"].Out)
	assert.Equal(t, []string{"B", "N1"}, a.Loads["winch"].Back)
}

const reversingParts = `
	bat: kind: battery, nominal: 12 V, internal_resistance: 4 mohm
	f1: kind: breaker, rating: 100 A
	box: kind: controller, links: [{between: [s, a], when: up}, {between: [b, r], when: up}, {between: [s, b], when: down}, {between: [a, r], when: down}]
	winch: kind: motor, current: 80 A, stall: 200 A, purpose: winch`

const reversingWires = `
	P1: bat.pos > f1.line, 2 AWG, 150 mm
	P2: f1.load > box.s, 2 AWG, 2 m
	A: box.a > winch.pos, 2 AWG, 1 m
	B: box.b > winch.neg, 2 AWG, 1 m
	N1: box.r > bat.neg, 2 AWG, 2 m, negative`

// Two 12 V batteries in series: the link between them is at 12 V, off ground.
// Its way on leads through the upper battery to the bank's fuse.
//
//	neg ─N1─ low ─L─ high ─P1─ f1 ─P2─ lamp ─N2─ neg
func TestSeriesBank(t *testing.T) {
	a := analyse(t, "system: 24 V, earthing: negative-ground", seriesParts, seriesWires)
	require.Empty(t, a.Problems)
	link := feedOf(t, a, "L")
	assert.Equal(t, figure.True(), a.Conductors["L"].Ungrounded)
	assert.Equal(t, "low.pos", link.Source)
	assert.True(t, link.Ahead)
	assert.False(t, link.Bare)
	assert.Equal(t, []string{"f1"}, link.NextDevices)
	assert.Empty(t, link.EndsAtDevice)

	p1 := feedOf(t, a, "P1")
	assert.Equal(t, "high.pos", p1.Source)
	assert.Equal(t, "f1", p1.EndsAtDevice)

	assert.Equal(t, figure.False(), a.Conductors["N1"].Ungrounded)
	assert.InDelta(t, 24, known(t, a.Devices["f1"].NominalV), 1e-9)
	assert.InDelta(t, 24, known(t, a.Loads["lamp"].NominalV), 1e-9)
	assert.InDelta(t, 12, known(t, a.Components["low"].NominalV), 1e-9)
	assert.InDelta(t, 600, known(t, a.Devices["f1"].CrankingA), 1e-9, "in series the weaker battery limits, currents do not add")
	// Hand: (12.6 V + 12.6 V) behind 5 + 6 mohm, cold 4 AWG leads in series.
	assert.Less(t, known(t, a.Devices["f1"].FaultHighA), 25.2/0.011)
}

const seriesParts = `
	low: kind: battery, nominal: 12 V, internal_resistance: 5 mohm, cranking: 600 A
	high: kind: battery, nominal: 12 V, internal_resistance: 6 mohm, cranking: 700 A
	f1: kind: fuse, rating: 60 A
	lamp: kind: lamp, current: 20 A
	neg: kind: busbar`

const seriesWires = `
	L: low.pos > high.neg, 4 AWG, 300 mm
	P1: high.pos > f1.line, 4 AWG, 150 mm
	P2: f1.load > lamp.pos, 8 AWG, 4 m
	N1: low.neg > neg.a, 4 AWG, 400 mm, negative
	N2: neg.b > lamp.neg, 8 AWG, 4 m, negative`

// Two batteries and a charger on one bus: each feeds what lies beyond, through
// its own first device.
func TestSeveralSources(t *testing.T) {
	a := analyse(t, boat, `
		b1: kind: battery, nominal: 12 V, internal_resistance: 5 mohm, cranking: 700 A
		b2: kind: battery, nominal: 12 V, internal_resistance: 8 mohm, cranking: 500 A
		ch: kind: charger, voltage: 14.2 V, output: 30 A, self_limiting: true
		f1: kind: fuse, rating: 150 A
		f2: kind: fuse, rating: 100 A
		fc: kind: fuse, rating: 40 A
		bus: kind: busbar
		neg: kind: busbar
		lamp: kind: lamp, current: 20 A`, `
		P1: b1.pos > f1.line, 2 AWG, 150 mm
		P2: f1.load > bus.a, 2 AWG, 1 m
		P3: b2.pos > f2.line, 2 AWG, 150 mm
		P4: f2.load > bus.b, 2 AWG, 1 m
		P5: ch.pos > fc.line, 8 AWG, 200 mm
		P6: fc.load > bus.c, 8 AWG, 1 m
		P7: bus.d > lamp.pos, 10 AWG, 2 m
		N1: b1.neg > neg.a, 2 AWG, 1 m, negative
		N2: b2.neg > neg.b, 2 AWG, 1 m, negative
		N3: ch.neg > neg.c, 8 AWG, 1 m, negative
		N4: lamp.neg > neg.d, 10 AWG, 2 m, negative`)
	require.Empty(t, a.Problems)
	feeds := a.Conductors["P7"].Feeds
	require.Len(t, feeds, 3)
	assert.Equal(t, []string{"b1.pos", "b2.pos", "ch.pos"}, []string{feeds[0].Source, feeds[1].Source, feeds[2].Source})
	assert.Equal(t, []string{"f1", "f2", "fc"}, []string{feeds[0].Device, feeds[1].Device, feeds[2].Device})
	assert.Equal(t, figure.False(), feeds[0].SelfLimiting)
	assert.Equal(t, figure.True(), feeds[2].SelfLimiting)
	// From the bus all three feed it side by side: 150 + 100 + 40 A.
	p7 := a.Conductors["P7"]
	assert.InDelta(t, 290, known(t, p7.Guard), 1e-9)
	assert.Equal(t, []string{"f1", "f2", "fc"}, p7.GuardBy)
	// Between f1 and the bus, each end counts by itself: 150 A from f1, 140 A from
	// the other two. Between fc and the bus: 40 A, or 250 A from the bus.
	assert.InDelta(t, 150, known(t, a.Conductors["P2"].Guard), 1e-9)
	assert.Equal(t, []string{"f1"}, a.Conductors["P2"].GuardBy)
	assert.InDelta(t, 250, known(t, a.Conductors["P6"].Guard), 1e-9)
	assert.Equal(t, []string{"f1", "f2"}, a.Conductors["P6"].GuardBy)

	p1 := a.Conductors["P1"].Feeds
	require.Len(t, p1, 3)
	assert.True(t, p1[0].Ahead)
	assert.Equal(t, "f2", p1[1].Device, "the other battery reaches it through its own fuse")
	// From b1 it is the fuse that it feeds; towards b1 the same fuse is more than
	// the 140 A of the other two.
	assert.InDelta(t, 150, known(t, a.Conductors["P1"].Guard), 1e-9)

	assert.InDelta(t, 1200, known(t, a.Devices["f1"].CrankingA), 1e-9)
	assert.Equal(t, figure.True(), a.Devices["f1"].First)
	assert.Equal(t, figure.False(), a.Devices["fc"].First)
	assert.InDelta(t, 30, known(t, a.Components["ch"].Through), 1e-6)
}

func TestGuardWithARatingMissing(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse
		f2: kind: fuse, rating: 15 A
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > f1.line, 10 AWG, 100 mm
		P2: f1.load > f2.line, 10 AWG, 100 mm
		P3: f2.load > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
	for _, id := range []string{"P1", "P2", "P3"} {
		g := a.Conductors[id].Guard
		assert.False(t, g.Known, id)
		assert.Equal(t, []string{"components.f1.rating"}, fields(g.Gaps), id)
	}
}

func TestEnclosed(t *testing.T) {
	for name, c := range map[string]struct {
		route string
		want  figure.Truth
	}{
		"all in conduit":      {"[{space: hold, length: 60 mm, in: conduit}, {space: hold, length: 40 mm, in: sheath}]", figure.True()},
		"one in a loom":       {"[{space: hold, length: 60 mm, in: conduit}, {space: hold, length: 40 mm, in: loom}]", figure.False()},
		"loom beside unknown": {"[{space: hold, length: 60 mm}, {space: hold, length: 40 mm, in: loom}]", figure.False()},
		"one unknown":         {"[{space: hold, length: 60 mm, in: conduit}, {space: hold, length: 40 mm}]", figure.OpenTruth(figure.Missing("conductors.P1.route[1].in"))},
		"route too short": {"[{space: hold, length: 60 mm, in: conduit}]", figure.OpenTruth(
			figure.Gap{Field: "conductors.P1.route", Why: "its segments do not add up to the conductor's length"})},
		"no route": {"[]", figure.OpenTruth(figure.Missing("conductors.P1.route"))},
	} {
		t.Run(name, func(t *testing.T) {
			text := sketch(boat, `
				bat: kind: battery, nominal: 12 V
				f1: kind: fuse, rating: 15 A
				lamp: kind: lamp, current: 4 A`, `
				P2: f1.load > lamp.pos, 14 AWG, 1 m
				N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`) +
				"  P1: {from: bat.pos, to: f1.line, size: 10 AWG, length: 100 mm, role: positive, route: " + c.route + "}\n"
			got := feedOf(t, Analyse(read(t, text)), "P1")
			assert.Equal(t, c.want, got.Enclosed)
		})
	}
}

// Two fused batteries feed one bus, and three branches hang there: one with a
// breaker of its own, one without, one on two fuses in parallel.
func TestGuardOfParallelSources(t *testing.T) {
	a := analyse(t, boat, `
		b1: kind: battery, nominal: 12 V
		b2: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 100 A
		f2: kind: fuse, rating: 80 A
		cb: kind: breaker, rating: 20 A
		g1: kind: fuse, rating: 60 A
		g2: kind: fuse, rating: 70 A
		bus: kind: busbar
		far: kind: busbar
		neg: kind: busbar
		lamp: kind: lamp, current: 5 A
		horn: kind: electronics, current: 5 A
		pump: kind: pump, current: 50 A`, `
		P1: b1.pos > f1.line, 2 AWG, 150 mm
		P2: f1.load > bus.a, 2 AWG, 1 m
		P3: b2.pos > f2.line, 2 AWG, 150 mm
		P4: f2.load > bus.b, 2 AWG, 1 m
		P5: bus.c > cb.line, 10 AWG, 1 m
		P6: cb.load > lamp.pos, 14 AWG, 1 m
		P7: bus.d > horn.pos, 14 AWG, 1 m
		P8: bus.e > g1.line, 4 AWG, 1 m
		P9: bus.f > g2.line, 4 AWG, 1 m
		P10: g1.load > far.a, 4 AWG, 1 m
		P11: g2.load > far.b, 4 AWG, 1 m
		P12: far.c > pump.pos, 4 AWG, 1 m
		N1: b1.neg > neg.a, 2 AWG, 1 m, negative
		N2: b2.neg > neg.b, 2 AWG, 1 m, negative
		N3: lamp.neg > neg.c, 14 AWG, 1 m, negative
		N4: horn.neg > neg.d, 14 AWG, 1 m, negative
		N5: pump.neg > neg.e, 4 AWG, 1 m, negative`)
	for id, want := range map[string]struct {
		amps float64
		by   []string
	}{
		"P1":  {100, []string{"f1"}},
		"P2":  {100, []string{"f1"}}, // 80 A from the bus
		"P4":  {100, []string{"f1"}}, // 80 A from f2, but 100 A from the bus
		"P5":  {180, []string{"f1", "f2"}},
		"P6":  {20, []string{"cb"}},
		"P7":  {180, []string{"f1", "f2"}},
		"P8":  {180, []string{"f1", "f2"}}, // more than the 70 A that come round over far
		"P10": {70, []string{"g2"}},        // 60 A from g1, 70 A from far
		"P12": {130, []string{"g1", "g2"}},
	} {
		assert.InDelta(t, want.amps, known(t, a.Conductors[id].Guard), 1e-9, id)
		assert.Equal(t, want.by, a.Conductors[id].GuardBy, id)
	}
}

// Of two batteries on a change-over switch one feeds at a time, unless the switch
// has a position for both.
func TestGuardBehindASelector(t *testing.T) {
	guard := func(links string) *ConductorResult {
		return analyse(t, boat, `
			b1: kind: battery, nominal: 12 V
			b2: kind: battery, nominal: 12 V
			f1: kind: fuse, rating: 100 A
			f2: kind: fuse, rating: 80 A
			sel: kind: switch, links: [`+links+`]
			lamp: kind: lamp, current: 5 A
			neg: kind: busbar`, `
			P1: b1.pos > f1.line, 2 AWG, 150 mm
			P2: f1.load > sel.p1, 2 AWG, 1 m
			P3: b2.pos > f2.line, 2 AWG, 150 mm
			P4: f2.load > sel.p2, 2 AWG, 1 m
			P5: sel.c > lamp.pos, 2 AWG, 1 m
			N1: b1.neg > neg.a, 2 AWG, 1 m, negative
			N2: b2.neg > neg.b, 2 AWG, 1 m, negative
			N3: lamp.neg > neg.c, 2 AWG, 1 m, negative`).Conductors["P5"]
	}
	one := guard("{between: [p1, c], when: one}, {between: [p2, c], when: two}")
	assert.InDelta(t, 100, known(t, one.Guard), 1e-9)
	assert.Equal(t, []string{"f1"}, one.GuardBy)
	both := guard("{between: [p1, c], when: one}, {between: [p2, c], when: two}, {between: [p1, c], when: both}, {between: [p2, c], when: both}")
	assert.InDelta(t, 180, known(t, both.Guard), 1e-9)
	assert.Equal(t, []string{"f1", "f2"}, both.GuardBy)
}
