package copper

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestResistanceAt(t *testing.T) {
	for _, c := range []struct {
		name             string
		r20, tempC, want float64
		tolerance        float64
		origin           string
	}{
		{"no change at 20 °C", 3.277, 20, 3.277, 0, "definition"},
		{"IEC 60228 annex factor at 5 °C", 1, 5, 1 / 1.064, 0.0045, "IEC 60228 Kt table, secondary; rules differ by up to 0.4 %"},
		{"IEC 60228 annex factor at 50 °C", 1, 50, 1 / 0.893, 0.0045, "IEC 60228 Kt table, secondary"},
		{"IEC 60228 annex factor at 75 °C", 1, 75, 1 / 0.820, 0.0045, "IEC 60228 Kt table, secondary"},
		{"IEC 60228 annex factor at 100 °C", 1, 100, 1 / 0.758, 0.0055, "IEC 60228 Kt table, secondary"},
		{"at 105 °C by hand", 1, 105, 339.5 / 254.5, 1e-12, "(234.5 + 105)/254.5, AC 43.13-1B 11-66d, read"},
		{"colder than any boat", 1, -273, 174.5 / 254.5, 1e-12, "held at -60 °C by the contract of the function"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.InDelta(t, c.want, ResistanceAt(c.r20, c.tempC), c.tolerance, c.origin)
		})
	}
}

// The hot-wire rule of the advisory circular: allowed length L2 at T2 is
// 254.5·L1/(234.5 + T2), so drop over L2 at T2 equals drop over L1 at 20 °C.
func TestHotWireCorrection(t *testing.T) {
	for _, t2 := range []float64{20, 50, 85, 105} {
		l1 := 100.0
		l2 := 254.5 * l1 / (234.5 + t2)
		assert.InEpsilon(t, l1*1.26, l2*ResistanceAt(1.26, t2), 1e-12, "AC 43.13-1B 11-66d, read")
	}
}

func TestResistanceRisesWithTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cold := rapid.Float64Range(-60, 300).Draw(t, "cold")
		warmer := rapid.Float64Range(0.001, 100).Draw(t, "warmer")
		require.Less(t, ResistanceAt(1, cold), ResistanceAt(1, cold+warmer))
	})
}

func TestHotStepRepeatsTheResult(t *testing.T) {
	step := HotStep(3.277, 105, "mohm")
	assert.InDelta(t, ResistanceAt(3.277, 105), step.Result, 1e-10)
	assert.Equal(t, "mohm", step.Unit)
	assert.Contains(t, step.Source, "11-66d")
}
