package circuit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/figure"
)

// TestAFuseWithGatesOpensWhateverOneWithoutDoes: ahead of a fuse stands one of a
// family that no gates are held of. When both together cut a fault off, and after
// what energy, is not known, but by when and how much at most is: what the other
// one makes of it alone.
func TestAFuseWithGatesOpensWhateverOneWithoutDoes(t *testing.T) {
	const parts = `
		bat: kind: battery, nominal: 12 V, internal_resistance: 4 mohm
		t1: kind: fuse, rating: 300 A, curve: class-t, resistance: 0 mohm
		f1: kind: fuse, rating: 100 A, curve: bolt-in, resistance: 0 mohm
		winch: kind: motor, purpose: winch, current: 40 A, stall: 350 A, protector: none`
	const way = `
		P0: bat.pos > t1.line, 2 AWG, 100 mm
		P1: t1.load > f1.line, 8 AWG, 200 mm
		P2: f1.load > winch.pos, 8 AWG, 3 m
		N1: winch.neg > bat.neg, 8 AWG, 3 m, negative`
	both := analyse(t, boat, parts, way)
	alone := analyse(t, boat, strings.Replace(parts, "300 A, curve: class-t", "5 kA, curve: bolt-in", 1), way) // which does not open
	got, want := both.Conductors["P2"], alone.Conductors["P2"]
	assert.Equal(t, figure.True(), got.Clears)
	assert.Contains(t, fields(got.ClearS.Gaps), "components.t1.curve_points")
	assert.InDelta(t, known(t, want.ClearS), known(t, got.ClearByS), 1e-9)
	assert.Contains(t, fields(got.LetThroughA2s.Gaps), "components.t1.curve_points")
	assert.InDelta(t, known(t, want.LetThroughA2s), known(t, got.LetThroughUpToA2s), 1e-6)
	assert.Equal(t, figure.True(), both.Loads["winch"].StallOpens)
	assert.Equal(t, "f1", both.Loads["winch"].StallBy)

	assert.InDelta(t, known(t, want.ClearS), known(t, want.ClearByS), 0, "where all is known both are the same")
	ahead := both.Conductors["P1"]
	assert.False(t, ahead.Clears.Known, "behind the other fuse alone nothing is sure")
	assert.Equal(t, fields(ahead.ClearS.Gaps), fields(ahead.ClearByS.Gaps))
	assert.False(t, ahead.LetThroughUpToA2s.Known)
}
