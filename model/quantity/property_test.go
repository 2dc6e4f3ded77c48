package quantity_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/quantity"
)

// dimensions are all that have a unit.
func dimensions() []quantity.Dimension {
	var all []quantity.Dimension
	for d := quantity.Length; len(quantity.Units(d)) > 0; d++ {
		all = append(all, d)
		if d == quantity.LinearResistance {
			break
		}
	}
	return all
}

func anyUnit(t *rapid.T) (quantity.Dimension, string) {
	d := rapid.SampledFrom(dimensions()).Draw(t, "dimension")
	return d, rapid.SampledFrom(quantity.Units(d)).Draw(t, "unit")
}

// anyValue is one that a person could write: up to nine digits.
func anyValue(t *rapid.T) float64 {
	v, err := strconv.ParseFloat(strconv.FormatFloat(rapid.Float64Range(-250, 1e6).Draw(t, "value"), 'g', 9, 64), 64)
	require.NoError(t, err)
	return v
}

func TestWhatIsPrintedIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, unit := anyUnit(t)
		q := quantity.New(anyValue(t), unit)
		if unit == "ohm/kft" {
			t.Skip("prints as Ω/1000 ft, which no record holds")
		}
		again, err := quantity.Parse(q.String(), d)
		require.NoError(t, err)
		assert.Equal(t, q, again)
	})
}

func TestWhatIsWrittenIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, unit := anyUnit(t)
		v := anyValue(t)
		space := rapid.SampledFrom([]string{"", " ", "  "}).Draw(t, "space")
		format := rapid.SampledFrom([]byte{'f', 'e', 'g'}).Draw(t, "format")
		text := strconv.FormatFloat(v, format, -1, 64) + space + unit
		q, err := quantity.Parse(text, d)
		require.NoError(t, err, text)
		assert.Equal(t, quantity.New(v, unit), q)
		assert.Regexp(t, quantity.Pattern(d, true), text)
	})
}

func TestConvertingThereAndBackIsNoChange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, unit := anyUnit(t)
		other := rapid.SampledFrom(quantity.Units(d)).Draw(t, "other")
		q := quantity.New(anyValue(t), unit)
		back := quantity.New(q.In(other), other).In(unit)
		// Temperatures lose digits to their offset.
		assert.InDelta(t, q.Value, back, 1e-10*math.Max(math.Abs(q.Value), 100))
	})
}

func TestOrderIsKeptByConversion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, unit := anyUnit(t)
		a, b := anyValue(t), anyValue(t)
		if a < b {
			assert.LessOrEqual(t, quantity.New(a, unit).Base, quantity.New(b, unit).Base)
		}
	})
}

func TestWireSizeIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.OneOf(
			rapid.Map(rapid.IntRange(-3, 40), func(g int) quantity.WireSize { return quantity.WireSize{System: quantity.AWG, Gauge: g} }),
			rapid.Map(rapid.IntRange(-3, 20), func(g int) quantity.WireSize { return quantity.WireSize{System: quantity.SAE, Gauge: g} }),
			rapid.Map(rapid.IntRange(1, 100000), func(a int) quantity.WireSize {
				return quantity.WireSize{System: quantity.MM2, MM2: float64(a) / 100}
			}),
		).Draw(t, "size")
		again, err := quantity.ParseWireSize(size.String())
		require.NoError(t, err)
		assert.Equal(t, size, again)
		assert.Regexp(t, quantity.WirePattern, size.String())
	})
}
