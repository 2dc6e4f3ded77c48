package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

const polesParts = `
	bat: kind: battery, nominal: 12 V
	f1: kind: fuse, rating: 15 A
	lamp: kind: lamp, current: 4 A
	neg: kind: busbar
	engine: kind: ground`

const polesWires = `
	P1: bat.pos > f1.line, 10 AWG, 100 mm
	P2: f1.load > lamp.pos, 14 AWG, 1 m
	N1: bat.neg > neg.a, 10 AWG, 1 m, negative
	N2: neg.b > lamp.neg, 14 AWG, 1 m, negative
	G1: lamp.case > engine.a, 8 AWG, 1 m, bonding`

func TestUngroundedByEarthing(t *testing.T) {
	open := figure.OpenTruth(figure.Missing("vessel.earthing"))
	for name, c := range map[string]struct {
		vessel             string
		positive, negative figure.Truth
	}{
		"negative-ground": {"earthing: negative-ground", figure.True(), figure.False()},
		"positive-ground": {"earthing: positive-ground", figure.False(), figure.True()},
		"insulated":       {"earthing: insulated", figure.True(), figure.True()},
		"not recorded":    {"system: 12 V", figure.True(), open},
		"unknown":         {"earthing: unknown", figure.True(), open},
	} {
		t.Run(name, func(t *testing.T) {
			a := analyse(t, c.vessel, polesParts, polesWires)
			for _, id := range []string{"P1", "P2"} {
				assert.Equal(t, c.positive, a.Conductors[id].Ungrounded, id)
			}
			for _, id := range []string{"N1", "N2"} {
				assert.Equal(t, c.negative, a.Conductors[id].Ungrounded, id)
			}
			assert.Equal(t, figure.False(), a.Conductors["G1"].Ungrounded)
			assert.Equal(t, c.negative, a.Terminals["neg.a"].Ungrounded)
		})
	}
}

func TestGroundPointOnTheNegativeTellsTheEarthing(t *testing.T) {
	a := analyse(t, "system: 12 V", polesParts, polesWires+`
		E1: neg.c > engine.b, 4 AWG, 1 m, negative`)
	assert.Equal(t, figure.False(), a.Conductors["N1"].Ungrounded)
}

// In an insulated system the negative pole feeds a fault as well as the
// positive one.
func TestInsulatedSystemFeedsFromBothPoles(t *testing.T) {
	a := analyse(t, "earthing: insulated", polesParts, polesWires)
	n2 := feedOf(t, a, "N2")
	assert.Equal(t, "bat.neg", n2.Source)
	assert.True(t, n2.Ahead)
	assert.True(t, n2.Bare)
	assert.Equal(t, "lamp", n2.BareVia)
	assert.Equal(t, "bat.pos", feedOf(t, a, "P2").Source)
}

func TestPositiveGroundFeedsFromTheNegativePole(t *testing.T) {
	a := analyse(t, "earthing: positive-ground", polesParts, polesWires)
	assert.Empty(t, a.Conductors["P2"].Feeds)
	assert.Equal(t, "bat.neg", feedOf(t, a, "N2").Source)
}

func TestControlConductorsTakeTheirPoleFromTheWiring(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V
		f1: kind: fuse, rating: 5 A
		button: kind: switch
		r: kind: relay, links: [{between: [in, out], when: on}], coils: [{between: [c, n], current: 0.2 A, when: on}]
		lamp: kind: lamp, current: 4 A`, `
		P1: bat.pos > f1.line, 10 AWG, 100 mm
		C1: f1.load > button.in, 16 AWG, 1 m, control
		C2: button.out > r.c, 16 AWG, 1 m, control
		C3: r.n > bat.neg, 16 AWG, 1 m, control
		P2: f1.load > r.in, 14 AWG, 1 m
		P3: r.out > lamp.pos, 14 AWG, 1 m
		N1: lamp.neg > bat.neg, 14 AWG, 1 m, negative`)
	require.Empty(t, a.Problems)
	assert.Equal(t, figure.True(), a.Conductors["C2"].Ungrounded)
	assert.Equal(t, figure.False(), a.Conductors["C3"].Ungrounded)
	// The coil runs while the relay passes current: 4 A + 0.2 A.
	assert.InDelta(t, 4.2, known(t, a.Conductors["P1"].Current), 1e-9)
	assert.InDelta(t, 0.2, known(t, a.Conductors["C2"].Current), 1e-9)
	assert.Equal(t, []string{"lamp"}, a.Devices["f1"].Loads)
}

func TestRoleAgainstTheWiring(t *testing.T) {
	a := analyse(t, boat, polesParts, `
		P1: bat.pos > f1.line, 10 AWG, 100 mm
		P2: f1.load > lamp.pos, 14 AWG, 1 m, negative
		N1: bat.neg > neg.a, 10 AWG, 1 m, positive
		N2: neg.b > lamp.neg, 14 AWG, 1 m, negative
		G1: f1.load > engine.a, 8 AWG, 1 m, bonding`)
	var paths []string
	for _, p := range a.Problems {
		if p.Kind == Mismatch {
			paths = append(paths, p.Path)
		}
	}
	assert.Equal(t, []string{"conductors.P2", "conductors.N1", "conductors.G1"}, paths)
	assert.Equal(t, figure.True(), a.Conductors["P2"].Ungrounded, "wired to the positive pole, whatever it is called")
	assert.Equal(t, figure.True(), a.Conductors["N1"].Ungrounded, "called positive, whatever it is wired to")
	assert.NotEmpty(t, a.Conductors["P2"].Feeds)
}

func TestConductorThatNothingReaches(t *testing.T) {
	a := analyse(t, boat, polesParts+`
		here: kind: busbar
		there: kind: busbar`, polesWires+`
		X1: here.a > there.a, 14 AWG, 1 m
		X2: here.b > there.b, 14 AWG, 1 m, negative`)
	assert.Equal(t, figure.True(), a.Conductors["X1"].Ungrounded, "by its role")
	assert.Equal(t, figure.False(), a.Conductors["X2"].Ungrounded)
	assert.Empty(t, a.Conductors["X1"].Feeds)
	assert.False(t, a.Conductors["X1"].Guard.Known)
}
