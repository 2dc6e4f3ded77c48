package copper

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/internal/reference"
	"driploop/model/quantity"
)

// The gauges that the table of 46 CFR 183.340(p) prints, finest first.
var tableGauges = []int{14, 12, 10, 8, 6, 4}

// The formula with the whole path, out and back, and 10 percent of 12 V gives
// the table of the regulation but for two cells, which print one size more.
func TestDropGivesTheTableOfTheRegulation(t *testing.T) {
	larger := map[string]bool{"20 A at 10 ft": true, "25 A at 10 ft": true}
	agreed := 0
	for _, row := range reference.Load(t, "46cfr183-340p.csv") {
		for feet := 10; feet <= 60; feet += 5 {
			amps := row.Float("amps")
			printed := int(row.Float(fmt.Sprintf("ft%d", feet)))
			name := fmt.Sprintf("%g A at %d ft", amps, feet)
			got := smallest(t, amps, 2*float64(feet)*304.8, 1.2)
			if larger[name] {
				assert.Equal(t, printed+2, got, "%s: the table is one size larger than the formula", name)
				continue
			}
			if assert.Equal(t, printed, got, name) {
				agreed++
			}
		}
	}
	assert.Equal(t, 53, agreed)
}

// smallest returns the finest gauge of the table that keeps the limit.
func smallest(t *testing.T, amps, pathMM, limit float64) int {
	for _, n := range tableGauges {
		w, err := Of(Spec{Size: quantity.WireSize{System: quantity.AWG, Gauge: n}})
		require.NoError(t, err)
		if Drop(amps, pathMM, w.CircularMils).Value <= limit {
			return n
		}
	}
	return tableGauges[len(tableGauges)-1] - 2
}

func TestDropWorkedByHand(t *testing.T) {
	f := Drop(20, 2*15*304.8, 10380)
	require.True(t, f.Known)
	assert.InDelta(t, 10.75*20*30/10380, f.Value, 1e-12, "10.75 × 20 A × 30 ft / 10,380 cmil = 0.6214 V, by hand")
	assert.Equal(t, "V", f.Unit)
	assert.Equal(t, 30.0, f.Working()[0].Inputs[2].Value)
}

func TestDropRefuses(t *testing.T) {
	for _, c := range [][3]float64{{-1, 1, 1}, {1, -1, 1}, {1, 1, 0}, {1, 1, -5}, {math.NaN(), 1, 1}, {1, math.NaN(), 1}, {1, 1, math.NaN()}, {math.Inf(1), 1, 1}} {
		f := Drop(c[0], c[1], c[2])
		assert.False(t, f.Known, "%v", c)
		assert.NotEmpty(t, f.Gaps)
	}
}

// The advisory circular's worked drops, run = whole path.
func TestPairDropGivesWorkedExamples(t *testing.T) {
	for _, row := range reference.Load(t, "ac4313-table11-7.csv") {
		perMetre := row.Float("ohm_ft") / 0.3048
		got := PairDrop(perMetre, row.Float("run_ft")*0.3048/2, row.Float("amps"))
		assert.InDelta(t, row.Float("product_v"), got, 1e-9, row.Text("size"))
		tolerance := halfUnit(row.Text("printed_v"))
		if row.Text("size") == "12 AWG" {
			tolerance = 0.05 // printed 3.60 for a product of 3.5552
		}
		assert.InDelta(t, row.Float("printed_v"), got, tolerance, row.Text("size"))
	}
}

func TestDropIsLinearAndMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amps := rapid.Float64Range(0.1, 500).Draw(t, "amps")
		length := rapid.Float64Range(1, 1e5).Draw(t, "length")
		area := rapid.Float64Range(1000, 3e5).Draw(t, "area")
		more := rapid.Float64Range(1.01, 3).Draw(t, "more")
		base := Drop(amps, length, area).Value
		require.InEpsilon(t, base*more, Drop(amps*more, length, area).Value, 1e-9)
		require.InEpsilon(t, base*more, Drop(amps, length*more, area).Value, 1e-9)
		require.Less(t, Drop(amps, length, area*more).Value, base)
	})
}

func TestDropVIsTheNumberOfDrop(t *testing.T) {
	for _, c := range [][3]float64{{10, 5000, 10380}, {0, 0, 1}, {3.3, 1234.5, 52620}, {-1, 1, 1}, {1, -1, 1}, {1, 1, 0}, {math.Inf(1), 1, 1}, {math.NaN(), 1, 1}} {
		f := Drop(c[0], c[1], c[2])
		volts, ok := DropV(c[0], c[1], c[2])
		assert.Equal(t, f.Known, ok, c)
		assert.Equal(t, f.Value, quantity.Round(volts), c)
	}
}
