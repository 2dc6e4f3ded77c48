package copper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/internal/reference"
	"driploop/model/quantity"
)

func TestDiameterHoldsMakersCables(t *testing.T) {
	for _, row := range reference.Load(t, "metric-cable-diameter.csv") {
		s := size(t, row.Text("size"))
		want := row.Float("diameter_mm")
		usual, err := Diameter(Spec{Size: s, Class: "class-5"}, nil)
		require.NoError(t, err)
		assert.LessOrEqual(t, usual.Low, want, s)
		assert.GreaterOrEqual(t, usual.High, want, s)
		wall := Span{row.Float("thickness_mm"), row.Float("thickness_mm")}
		recorded, err := Diameter(Spec{Size: s, Class: "class-5"}, &wall)
		require.NoError(t, err)
		assert.LessOrEqual(t, recorded.Low, want+0.05, "%s: printed to 0.1 mm", s)
		assert.GreaterOrEqual(t, recorded.High, want-0.05, s)
		assert.Less(t, recorded.High-recorded.Low, usual.High-usual.Low, "what is recorded narrows the range")
	}
}

// A maker's lower and upper limits for three sizes of H05Z-K: 0.5 mm² 1.9 to 2.4,
// 0.75 mm² 2.2 to 2.8, 1 mm² 2.4 to 2.9 mm; secondary.
func TestDiameterCoversMakersLimits(t *testing.T) {
	for text, limits := range map[string]Span{"0.5 mm2": {1.9, 2.4}, "0.75 mm2": {2.2, 2.8}, "1 mm2": {2.4, 2.9}} {
		d, err := Diameter(Spec{Size: size(t, text), Class: "class-5"}, nil)
		require.NoError(t, err)
		assert.LessOrEqual(t, d.Low, limits.Low+0.05, text)
		assert.GreaterOrEqual(t, d.High, limits.High-0.05, text)
	}
}

func TestDiameterByHand(t *testing.T) {
	wall := Span{1, 1.5}
	d, err := Diameter(Spec{Size: size(t, "10 AWG"), Class: "solid"}, &wall)
	require.NoError(t, err)
	assert.InDelta(t, 2.588+2, d.Low, 0.001, "2.588 mm by GNU units + 2 × 1 mm")
	assert.InDelta(t, 2.588+3, d.High, 0.001)
	require.Len(t, d.Working(), 2)
	assert.Equal(t, d.Low, d.Working()[0].Result)
	assert.Equal(t, d.High, d.Working()[1].Result)
}

func TestDiameterRefuses(t *testing.T) {
	for name, try := range map[string]func() (Outside, error){
		"no size":               func() (Outside, error) { return Diameter(Spec{}, nil) },
		"no usual thickness":    func() (Outside, error) { return Diameter(Spec{Size: size(t, "30 AWG")}, nil) },
		"metric, none held":     func() (Outside, error) { return Diameter(Spec{Size: size(t, "300 mm2")}, nil) },
		"a thickness backwards": func() (Outside, error) { return Diameter(Spec{Size: size(t, "10 AWG")}, &Span{2, 1}) },
		"a thickness below 0":   func() (Outside, error) { return Diameter(Spec{Size: size(t, "10 AWG")}, &Span{-1, 1}) },
		"no core":               func() (Outside, error) { return Sheathed() },
	} {
		t.Run(name, func(t *testing.T) {
			_, err := try()
			var none *NoValue
			require.ErrorAs(t, err, &none)
		})
	}
}

// Exact packings, geometry.
func TestLayUp(t *testing.T) {
	for n, want := range map[int]float64{0: 0, 1: 1, 2: 2, 3: 2.1547, 4: 2.4142, 5: 2.7013, 6: 3, 7: 3} {
		assert.InDelta(t, want, LayUp(n), 0.00005, "%d", n)
	}
	// Best known packings, from memory, unverified: the bound lies above, by
	// less than a tenth.
	for n, best := range map[int]float64{8: 3.304, 9: 3.613, 10: 3.813, 12: 4.029, 14: 4.328, 19: 4.863} {
		assert.GreaterOrEqual(t, LayUp(n), best, "%d", n)
		assert.Less(t, LayUp(n), best*1.1, "%d", n)
	}
}

func TestSheathed(t *testing.T) {
	core := Span{3, 3.4}
	two, err := Sheathed(core, core)
	require.NoError(t, err)
	assert.InDelta(t, 3+1.2, two.Low, 1e-9, "flat: across one core")
	assert.InDelta(t, 6.8+4, two.High, 1e-9, "round or flat: two cores side by side")
	four, err := Sheathed(core, core, core, core)
	require.NoError(t, err)
	assert.InDelta(t, 6+1.2, four.Low, 1e-9, "no thinner than the circle of the cores' areas")
	assert.InDelta(t, 2.4142*3.4+4, four.High, 1e-3)
	one, err := Sheathed(core)
	require.NoError(t, err)
	assert.InDelta(t, 3.4+4, one.High, 1e-9)
}

func TestDiametersGrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		class := rapid.SampledFrom([]string{"", "solid", "class-2", "type-2", "type-3"}).Draw(t, "class")
		n := rapid.SampledFrom([]int{18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2}).Draw(t, "gauge")
		at := func(n int) Outside {
			d, err := Diameter(Spec{Size: quantity.WireSize{System: quantity.AWG, Gauge: n}, Class: class}, nil)
			require.NoError(t, err)
			require.LessOrEqual(t, d.Low, d.High)
			return d
		}
		coarser := n - 1
		if n > 4 {
			coarser = n - 2
		}
		a, b := at(n), at(coarser)
		require.Less(t, a.Low, b.Low)
		require.Less(t, a.High, b.High)
		cores := rapid.SliceOfN(rapid.Float64Range(1, 20), 1, 12).Draw(t, "cores")
		var spans []Span
		for _, c := range cores {
			spans = append(spans, Span{c, c * 1.1})
		}
		s, err := Sheathed(spans...)
		require.NoError(t, err)
		require.LessOrEqual(t, s.Low, s.High)
		require.False(t, math.IsNaN(s.High))
	})
}
