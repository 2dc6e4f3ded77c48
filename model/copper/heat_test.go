package copper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/quantity"
)

// twoOught is 2/0 AWG, solid and plain so that hand calculation is short, for
// 105 °C in 30 °C air: 330 A by Table 5.
func twoOught(t require.TestingT) Heating {
	w, err := Of(Spec{Size: quantity.WireSize{System: quantity.AWG, Gauge: -1}, Class: "solid", Tinned: no()})
	require.NoError(t, err)
	return Heating{AmbientC: 30, RatingC: 105, AllowedA: 330, AreaMM2: w.AreaMM2, R20: w.R20}
}

func TestSteady(t *testing.T) {
	h := twoOught(t)
	for _, c := range []struct {
		name, origin string
		amps, want   float64
	}{
		{"no current", "ambient", 0, 30},
		{"half the amperage", "30 + 75 × 0.25, by hand", 165, 48.75},
		{"the amperage itself", "rating", 330, 105},
		{"sign does not count", "30 + 75 × 0.25, by hand", -165, 48.75},
		// g = 4 × 75/339.5 = 0.88365; (30 + 234.5 × 0.88365)/(1 − 0.88365) = 2038.8
		{"twice the amperage", "by hand with the resistance following", 660, 2038.86},
		// g = 1.4641 × 75/339.5 = 0.323439; (30 + 75.8465)/0.676561 = 156.448
		{"1.21 times the power", "by hand with the resistance following", 1.21 * 330, 156.4478},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := h.Steady(c.amps)
			require.True(t, f.Known, f.Gaps)
			assert.InDelta(t, c.want, f.Value, 0.01, c.origin)
			assert.Equal(t, "degC", f.Unit)
		})
	}
	f := h.Steady(750) // g = 5.165 × 75/339.5 = 1.14
	require.False(t, f.Known)
	assert.Contains(t, f.Gaps[0].Why, "no steady temperature exists")
}

func TestTimeConstantByHand(t *testing.T) {
	h := twoOught(t)
	// σ·S = 3.45 × 67.43 = 232.6 J/(K·m); r(105) = 0.2557e−3 × 339.5/254.5 = 0.3411e−3;
	// loss 330² × 0.3411e−3 = 37.15 W/m; τ = 232.6 × 75/37.15 = 469.7 s.
	assert.InDelta(t, 469.7, h.TimeConstant(), 0.5)
}

// Over a short time no heat leaves, and the conductor follows IEC 60949.
func TestShortTimeIsAdiabatic(t *testing.T) {
	h := twoOught(t)
	const amps = 5000.0
	// Resistivity and heat capacity give 225.7 where IEC 60949 prints 226.
	k := math.Sqrt(HeatCapacity * 254.5 / (Resistivity * 1e-3) * math.Log((234.5+160)/(234.5+70)))
	assert.InEpsilon(t, K(70, 160), k, 0.002)
	adiabatic := AdiabaticTime(k, h.AreaMM2, amps)
	seconds, reached, err := h.Reach(70, 160, amps)
	require.NoError(t, err)
	require.True(t, reached)
	assert.Greater(t, seconds, adiabatic, "some heat leaves")
	assert.InEpsilon(t, adiabatic, seconds, 0.01)
}

// A numerical solution of the heat balance by small steps.
func TestAfterSolvesTheHeatBalance(t *testing.T) {
	h := twoOught(t)
	for _, amps := range []float64{0, 200, 330, 500, 702.1, 900} {
		temp, dt := 40.0, 0.01
		loss := h.AllowedA * h.AllowedA * ResistanceAt(h.R20, h.RatingC) / (h.RatingC - h.AmbientC)
		for range 6000 {
			mid := temp + dt/2*rate(h, temp, amps, loss)
			temp += dt * rate(h, mid, amps, loss)
		}
		f := h.After(40, amps, 60)
		require.True(t, f.Known, f.Gaps)
		assert.InDelta(t, temp, f.Value, 0.001, "%g A", amps)
	}
}

func rate(h Heating, tempC, amps, loss float64) float64 {
	heat := amps * amps * ResistanceAt(h.R20, tempC)
	return (heat - loss*(tempC-h.AmbientC)) / (HeatCapacity * 1000 * h.AreaMM2)
}

func TestAfterAtItsLimits(t *testing.T) {
	h := twoOught(t)
	assert.Equal(t, 40.0, h.After(40, 300, 0).Value, "no time")
	assert.InDelta(t, 105, h.After(30, 330, 1e6).Value, 1e-6, "a long time at the amperage")
	cooled := h.After(105, 0, h.TimeConstant())
	assert.InDelta(t, 30+75/math.E, cooled.Value, 1e-6, "one time constant without current")
	assert.False(t, h.After(30, 5000, 600).Known, "copper melts at 1083 °C")
}

func TestReach(t *testing.T) {
	h := twoOught(t)
	seconds, reached, err := h.Reach(30, 80, 330)
	require.NoError(t, err)
	require.True(t, reached)
	assert.InDelta(t, 80, h.After(30, 330, seconds).Value, 1e-6)
	_, reached, err = h.Reach(30, 110, 330)
	require.NoError(t, err)
	assert.False(t, reached, "the amperage never heats beyond the rating")
	seconds, reached, err = h.Reach(90, 80, 10)
	require.NoError(t, err)
	assert.True(t, reached)
	assert.Zero(t, seconds)
	_, reached, err = h.Reach(30, 31, 0)
	require.NoError(t, err)
	assert.False(t, reached)
}

func TestHeatingRefuses(t *testing.T) {
	good := twoOught(t)
	for name, change := range map[string]func(*Heating){
		"no amperage":            func(h *Heating) { h.AllowedA = 0 },
		"air as hot as rating":   func(h *Heating) { h.AmbientC = 105 },
		"air not a number":       func(h *Heating) { h.AmbientC = math.NaN() },
		"amperage not a number":  func(h *Heating) { h.AllowedA = math.NaN() },
		"air colder than a boat": func(h *Heating) { h.AmbientC = -200 },
	} {
		t.Run(name, func(t *testing.T) {
			h := good
			change(&h)
			assert.False(t, h.Steady(10).Known)
			assert.False(t, h.After(30, 10, 1).Known)
			_, _, err := h.Reach(30, 60, 10)
			assert.Error(t, err)
		})
	}
	assert.False(t, good.Steady(math.NaN()).Known)
	assert.False(t, good.After(30, 10, -1).Known)
	assert.False(t, good.After(30, 10, math.NaN()).Known)
	assert.False(t, good.After(math.NaN(), 10, 1).Known)
	bare := good
	bare.AreaMM2 = 0
	assert.False(t, bare.After(30, 10, 1).Known)
}

func TestTemperatureRisesWithCurrentAndTime(t *testing.T) {
	h := twoOught(t)
	rapid.Check(t, func(t *rapid.T) {
		amps := rapid.Float64Range(1, 600).Draw(t, "amps")
		more := amps * rapid.Float64Range(1.001, 1.1).Draw(t, "more")
		seconds := rapid.Float64Range(0.1, 900).Draw(t, "seconds")
		a, b := h.After(30, amps, seconds), h.After(30, more, seconds)
		if !a.Known || !b.Known {
			t.Skip("melts")
		}
		require.Greater(t, b.Value, a.Value)
		require.GreaterOrEqual(t, h.After(30, amps, seconds*0.9).Value, 30.0)
		require.LessOrEqual(t, h.After(30, amps, seconds*0.9).Value, a.Value)
		if steady := h.Steady(amps); steady.Known {
			require.LessOrEqual(t, a.Value, steady.Value*(1+1e-9), "never above the steady temperature")
		}
		// Never above the adiabatic rule: k²S² from 30 °C to the temperature reached.
		k := 225.66 * math.Sqrt(math.Log((234.5+a.Value)/(234.5+30)))
		require.LessOrEqual(t, AdiabaticTime(k, h.AreaMM2, amps), seconds*1.001)
	})
}

func TestSteadyCIsTheNumberOfSteady(t *testing.T) {
	h := Heating{AmbientC: 30, RatingC: 105, AllowedA: 80, AreaMM2: 8.37, R20: 0.0022}
	for _, amps := range []float64{0, 40, -40, 80, 100, 150, 400} {
		figure := h.Steady(amps)
		tempC, ok := h.SteadyC(amps)
		assert.Equal(t, figure.Known, ok, amps)
		assert.InDelta(t, figure.Value, tempC, 1e-9, amps)
	}
	_, ok := Heating{}.SteadyC(10)
	assert.False(t, ok)
}
