package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

// TestBranchOfACrankingFeed: what begins with the feed of a cranking motor has its
// own way from where it leaves that feed; a claim frees only where it is written,
// first on the way, and from a battery.
func TestBranchOfACrankingFeed(t *testing.T) {
	const (
		feed   = "  K1: {from: bat.pos, to: sw.in, size: 2 AWG, length: 500 mm, role: positive, duty: cranking, in_housing: false, route: [{space: hold, length: 500 mm, in: open}]}\n"
		branch = "  A1: {from: sw.out, to: f1.line, size: 10 AWG, length: 100 mm, role: positive, route: [{space: hold, length: 100 mm, in: conduit}]}\n"
		plain  = "  K1: {from: bat.pos, to: sw.in, size: 2 AWG, length: 500 mm, role: positive, route: [{space: hold, length: 500 mm, in: conduit}]}\n"
	)
	for name, c := range map[string]struct {
		wires         string
		length, own   float64
		from          string
		enclosed, all figure.Truth
	}{
		"from the stud of the switch": {feed + branch, 600, 100, "sw.out", figure.True(), figure.False()},
		"drawn the other way round": {
			feed + "  A1: {from: f1.line, to: sw.out, size: 10 AWG, length: 100 mm, role: positive, route: [{space: hold, length: 100 mm, in: conduit}]}\n",
			600, 100, "sw.out", figure.True(), figure.False(),
		},
		"no such claim": {plain + branch, 600, 600, "bat.pos", figure.True(), figure.True()},
		"a claim further on": {
			plain + "  A1: {from: b.c, to: f1.line, size: 10 AWG, length: 100 mm, role: positive, route: [{space: hold, length: 100 mm, in: conduit}]}\n" +
				"  K2: {from: sw.out, to: b.a, size: 2 AWG, length: 300 mm, role: positive, duty: cranking, route: [{space: hold, length: 300 mm, in: conduit}]}\n",
			900, 900, "bat.pos", figure.True(), figure.True(),
		},
		"another way without one": {
			feed + branch + "  P: {from: bat.pos, to: sw.out, size: 2 AWG, length: 400 mm, role: positive, route: [{space: hold, length: 400 mm, in: open}]}\n",
			600, 500, "bat.pos", figure.False(), figure.False(),
		},
	} {
		t.Run(name, func(t *testing.T) {
			a := Analyse(read(t, sketch(boat, `
				bat: kind: battery, nominal: 12 V
				sw: kind: switch
				b: kind: busbar
				f1: kind: fuse, rating: 15 A
				lamp: kind: lamp, current: 4 A`, `
				P2: f1.load > lamp.pos, 14 AWG, 1 m
				N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)+c.wires))
			require.Empty(t, a.Problems)
			got := feedOf(t, a, "A1")
			assert.InDelta(t, c.length, known(t, got.Length), 1e-9)
			assert.InDelta(t, c.own, known(t, got.OwnLength), 1e-9)
			assert.Equal(t, c.from, got.OwnFrom)
			assert.Equal(t, c.enclosed, got.OwnEnclosed)
			assert.Equal(t, c.all, got.Enclosed)
		})
	}
}

// TestAnotherSourceKeepsItsWholeWay: an alternator on the stud of a starter feeds a
// branch over its own cable as well, which nothing frees.
func TestAnotherSourceKeepsItsWholeWay(t *testing.T) {
	a := Analyse(read(t, sketch(boat, `
		bat: kind: battery, nominal: 12 V
		alt: kind: alternator, output: 60 A, nominal: 12 V
		b: kind: busbar
		f1: kind: fuse, rating: 15 A
		lamp: kind: lamp, current: 4 A`, `
		P2: f1.load > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative
		N2: alt.neg > bat.neg, 8 AWG, 1 m, negative
		A1: b.c > f1.line, 10 AWG, 100 mm`)+
		"  K1: {from: bat.pos, to: b.a, size: 2 AWG, length: 500 mm, role: positive, duty: cranking}\n"+
		"  C1: {from: alt.pos, to: b.b, size: 6 AWG, length: 700 mm, role: positive, duty: cranking}\n"))
	require.Empty(t, a.Problems)
	own := map[string]float64{}
	for _, f := range a.Conductors["A1"].Feeds {
		own[f.Source+" from "+f.OwnFrom] = known(t, f.OwnLength)
	}
	assert.Equal(t, map[string]float64{"bat.pos from b.c": 100, "alt.pos from alt.pos": 800}, own)
}
