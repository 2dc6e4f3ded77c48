package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestTheWayBackIsWhatRunsBeside: a thick feeder goes to a panel, a thin pair from
// there to a lamp. A fault at the panel finds the feeder's own return beside it, and
// nothing of the thin one; where the return is longer than the feeder, all of it.
func TestTheWayBackIsWhatRunsBeside(t *testing.T) {
	for _, c := range []struct {
		name, back string
		thin       float64 // share of the thin return that counts at the panel
	}{
		{"as long as the feeder", "2 m", 0},
		{"a way round", "5 m", 0},
		{"shorter", "1 m", 0.833 / 10}, // 2/12 of 11 m is 1.833 m
	} {
		t.Run(c.name, func(t *testing.T) {
			a := analyse(t, boat, `
				bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
				panel: kind: busbar
				returns: kind: busbar
				f1: kind: fuse, rating: 60 A, curve: bolt-in, resistance: 0 mohm
				lamp: kind: lamp, current: 1 A`, `
				P0: bat.pos > f1.line, 35 mm2, 1 m
				P1: f1.load > panel.a, 35 mm2, 1 m
				P2: panel.b > lamp.pos, 2.5 mm2, 10 m
				N2: returns.b > lamp.neg, 2.5 mm2, 10 m, negative
				N1: returns.a > bat.neg, 35 mm2, `+c.back+`, negative`)
			require.Empty(t, a.Problems)
			hot := func(id string) float64 { return known(t, a.Conductors[id].RHot) }
			ohms := 5 + hot("P0") + hot("P1") + hot("N1") + c.thin*hot("N2")
			assert.InDelta(t, 12600/ohms, known(t, a.Conductors["P1"].FaultLowA), 0.2)
			whole := ohms + hot("P2") + (1-c.thin)*hot("N2")
			assert.InDelta(t, 12600/whole, known(t, a.Conductors["P2"].FaultLowA), 0.2, "at the lamp all of it")
		})
	}
}
