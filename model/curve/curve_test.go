package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/internal/reference"
	"driploop/model/verdict"
)

func of(t require.TestingT, family string, rating float64) Curve {
	c, err := Of(family, rating)
	require.NoError(t, err)
	return c
}

func TestOpeningTimeAtTheGates(t *testing.T) {
	for _, row := range reference.Load(t, "fuse-gates.csv") {
		t.Run(row.Text("family")+" "+row.Text("amps")+" A", func(t *testing.T) {
			o, err := of(t, row.Text("family"), row.Float("rating_a")).OpeningTime(row.Float("amps"))
			require.NoError(t, err)
			assert.Equal(t, row.Float("least_s"), o.LeastS)
			if row.Text("greatest_s") == "none" {
				assert.True(t, math.IsInf(o.GreatestS, 1))
				assert.False(t, o.Greatest().Known)
				assert.Contains(t, o.Greatest().Gaps[0].Why, "need not open")
				return
			}
			assert.Equal(t, row.Float("greatest_s"), o.GreatestS)
		})
	}
}

func TestOpeningTimeBetweenAndBeyond(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name            string
		family          string
		rating, amps    float64
		least, greatest float64
		origin          string
	}{
		{"log-log between gates", "bolt-in", 100, 250, 0.3 * 1.96, 15 * math.Pow(1.25, math.Log(5.0/15)/math.Log(1.75)), "by hand: line through (2, 15 s) and (3.5, 5 s); 0.3 s × (3.5/2.5)²"},
		{"between hold and first gate", "blade-e", 40, 48, 60 * (1.35 / 1.2) * (1.35 / 1.2), inf, "by hand: 60 s × (1.35/1.2)²; may hold"},
		{"far below the rating", "blade-e", 40, 4, 360000, inf, "held at least as long as at the rating"},
		{"beyond the last gate", "blade-e", 40, 2000, 0, 1, "at most the last greatest time"},
		{"just beyond the last gate", "blade-c", 40, 240.1, 0, 0.15, "at most the last greatest time"},
		{"beyond a last gate of minutes", "cartridge", 10, 400, 0, 120 * (2.0 / 40) * (2.0 / 40), "by hand: 120 s × (2/40)²: melting takes no more energy"},
		{"just beyond a last gate of minutes", "cartridge", 10, 20.0001, 0, 120 / (1.000005 * 1.000005), "by hand: 120 s × (20/20.0001)²"},
		{"negative current counts the same", "blade-c", 40, -80, 0.15, 5, "gate at 200 %"},
		{"no current", "blade-c", 40, 0, 360000, inf, "held"},
		{"breaker by its rating", "thermal", 40, 80, 0, 240, "UL 489, 31 to 50 A"},
		{"large breaker", "thermal", 120, 240, 0, 480, "UL 489, 101 to 150 A"},
		{"breaker beyond the ratings of the last row", "thermal", 300, 600, 0, 7200, "only the gate at 135 % is left"},
		{"towards the magnetic release", "thermal-magnetic", 20, 100, 0, 120 * 0.16, "by hand: 120 s × (2/5)², no line into the step"},
		{"magnetic release", "thermal-magnetic", 20, 300, 0, 0.1, "15 × the rating"},
		{"breaker at its rating", "thermal", 20, 20, inf, inf, "carries its rating"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o, err := of(t, c.family, c.rating).OpeningTime(c.amps)
			require.NoError(t, err)
			for _, v := range [][2]float64{{c.least, o.LeastS}, {c.greatest, o.GreatestS}} {
				if math.IsInf(v[0], 1) {
					assert.True(t, math.IsInf(v[1], 1), c.origin)
					continue
				}
				assert.InDelta(t, v[0], v[1], 1e-9*max(1, v[0]), c.origin)
			}
		})
	}
}

func TestEveryGateHasATrustAndAnOrder(t *testing.T) {
	known := []string{string(verdict.Secondary), "from memory, unverified", string(verdict.NoSource)}
	for _, family := range Families() {
		for _, rating := range []float64{1, 25, 45, 90, 140, 220, 500} {
			gates := of(t, family, rating).Gates()
			require.NotEmpty(t, gates)
			assert.NotEmpty(t, sources[family])
			for i, g := range gates {
				assert.Contains(t, known, g.Trust)
				assert.Contains(t, []Release{Melt, Thermal, Instant}, g.Release)
				assert.LessOrEqual(t, g.LeastS, g.GreatestS)
				if i > 0 {
					assert.Less(t, gates[i-1].Multiple, g.Multiple)
					assert.GreaterOrEqual(t, gates[i-1].LeastS, g.LeastS)
					assert.GreaterOrEqual(t, gates[i-1].GreatestS, g.GreatestS)
				}
			}
		}
	}
}

func TestOpeningTimeNeverGrowsWithCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := of(t, rapid.SampledFrom(Families()).Draw(t, "family"), rapid.Float64Range(1, 300).Draw(t, "rating"))
		amps := rapid.Float64Range(0, 5000).Draw(t, "amps")
		more := amps + rapid.Float64Range(0, 3000).Draw(t, "more")
		a, errA := c.OpeningTime(amps)
		b, errB := c.OpeningTime(more)
		require.NoError(t, errA)
		require.NoError(t, errB)
		slack := 1 + 1e-9
		require.LessOrEqual(t, b.LeastS, a.LeastS*slack)
		require.LessOrEqual(t, b.GreatestS, a.GreatestS*slack)
		require.LessOrEqual(t, a.LeastS, a.GreatestS*slack)
	})
}

func TestOfRefuses(t *testing.T) {
	for name, try := range map[string]func() error{
		"an unknown family": func() error { _, err := Of("class-t", 100); return err },
		"no rating":         func() error { _, err := Of("blade-c", 0); return err },
		"a rating not a number": func() error {
			_, err := Of("blade-c", math.NaN())
			return err
		},
		"no points": func() error { _, err := Given("x", 10, "sheet"); return err },
		"greatest below least": func() error {
			_, err := Given("x", 10, "sheet", Gate{Multiple: 2, LeastS: 5, GreatestS: 1})
			return err
		},
		"later at more current": func() error {
			_, err := Given("x", 10, "sheet", Gate{Multiple: 2, LeastS: 1, GreatestS: 5}, Gate{Multiple: 3, LeastS: 1, GreatestS: 9})
			return err
		},
		"one current twice": func() error {
			_, err := Given("x", 10, "sheet", Gate{Multiple: 2, LeastS: 1, GreatestS: 5}, Gate{Multiple: 2, LeastS: 1, GreatestS: 5})
			return err
		},
		"a current not a number": func() error { _, err := of(t, "mini", 10).OpeningTime(math.NaN()); return err },
	} {
		t.Run(name, func(t *testing.T) {
			err := try()
			var none *NoCurve
			require.ErrorAs(t, err, &none)
			assert.NotEmpty(t, none.Error())
		})
	}
}

func TestGivenPoints(t *testing.T) {
	c, err := Given("maker", 100, "a maker's sheet",
		Gate{Multiple: 4, LeastS: 0.5, GreatestS: 2, Release: Melt}, Gate{Multiple: 2, LeastS: 5, GreatestS: 20, Release: Melt})
	require.NoError(t, err)
	o, err := c.OpeningTime(200)
	require.NoError(t, err)
	assert.Equal(t, 20.0, o.GreatestS)
	o, err = c.OpeningTime(100)
	require.NoError(t, err)
	assert.True(t, math.IsInf(o.GreatestS, 1), "nothing is said below the first point")
	assert.Equal(t, 20.0, o.LeastS, "5 s × (2/1)²")
	f := o.Least()
	require.True(t, f.Known)
	assert.Equal(t, "a maker's sheet", f.Working()[0].Source)
}

func TestLetThrough(t *testing.T) {
	least, greatest := of(t, "bolt-in", 100).LetThrough(200)
	assert.Equal(t, 200.0*200*1, least.Value, "I²·t at the gate of 200 %")
	assert.Equal(t, 200.0*200*15, greatest.Value)
	assert.Equal(t, "A2s", greatest.Unit)
	require.Len(t, greatest.Working(), 2)

	least, greatest = of(t, "bolt-in", 100).LetThrough(3000)
	assert.Equal(t, 0.0, least.Value)
	assert.Equal(t, 600.0*600*1, greatest.Value, "melting energy at the last gate, 600 A for 1 s")

	_, greatest = of(t, "cartridge", 10).LetThrough(20)
	assert.Equal(t, 20.0*20*120, greatest.Value, "at the last gate")
	_, greatest = of(t, "cartridge", 10).LetThrough(400)
	assert.False(t, greatest.Known, "two minutes at twice the rating say nothing of the energy of a short circuit")
	assert.Contains(t, greatest.Gaps[0].Why, "curve_points")

	_, greatest = of(t, "thermal-magnetic", 30).LetThrough(1500)
	assert.Equal(t, 1500.0*1500*0.1, greatest.Value, "a breaker's time does not fall with the current")

	least, greatest = of(t, "thermal", 30).LetThrough(20)
	assert.False(t, least.Known)
	assert.False(t, greatest.Known)
	least, _ = of(t, "thermal", 30).LetThrough(math.Inf(1))
	assert.False(t, least.Known)
}

func TestDiscriminates(t *testing.T) {
	for _, c := range []struct {
		name         string
		below, above Curve
		amps         float64
		known, value bool
	}{
		{"small fuse under a large one", of(t, "blade-c", 10), of(t, "bolt-in", 250), 60, true, true},
		{"at a fault beyond the gates", of(t, "blade-c", 10), of(t, "bolt-in", 250), 4000, false, false},
		{"the wrong way round", of(t, "bolt-in", 250), of(t, "blade-c", 10), 60, true, false},
		{"equal fuses", of(t, "blade-c", 30), of(t, "blade-c", 30), 105, false, false},
		{"not a number", of(t, "blade-c", 30), of(t, "blade-c", 30), math.NaN(), false, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Discriminates(c.below, c.above, c.amps)
			assert.Equal(t, c.known, got.Known)
			assert.Equal(t, c.value, got.Value)
			if !c.known {
				assert.NotEmpty(t, got.Gaps[0].Why)
			}
		})
	}
}

func TestWorkingNamesGatesAndTrust(t *testing.T) {
	o, err := of(t, "bolt-in", 100).OpeningTime(250)
	require.NoError(t, err)
	step := o.Greatest().Working()[0]
	assert.Equal(t, "greatest opening time of bolt-in: log-log between the gates at 200 % and 350 %", step.Formula)
	assert.Equal(t, "ISO 8820-5, strip and bolt-in fuses; from memory, unverified", step.Source)
	assert.InEpsilon(t, o.GreatestS, step.Result, 1e-11)
	o, err = of(t, "blade-c", 10).OpeningTime(20)
	require.NoError(t, err)
	assert.Contains(t, o.Greatest().Working()[0].Source, "secondary")
}

func BenchmarkOpeningTime(b *testing.B) {
	for b.Loop() {
		c, _ := Of("bolt-in", 250)
		_, _ = c.OpeningTime(1234)
	}
}
