package quantity

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// throughDecimals rounds by the standard library's decimals alone.
func throughDecimals(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', significant, 64), 64)
	if err != nil {
		return v
	}
	return r
}

func TestRoundIsThatOfDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64().Draw(t, "any")
		near := rapid.Float64Range(-1e13, 1e13).Draw(t, "scaled") * math.Pow10(rapid.IntRange(-30, 20).Draw(t, "power"))
		// Ten to the twelfth and half a last digit: the middle between two neighbours.
		middle := (float64(rapid.Int64Range(1e11, 1e12-1).Draw(t, "digits")) + 0.5) * math.Pow10(rapid.IntRange(-25, 10).Draw(t, "power of the middle"))
		for _, x := range []float64{v, near, middle, math.Nextafter(middle, 0), math.Nextafter(middle, math.Inf(1))} {
			assert.Equal(t, throughDecimals(x), Round(x), "%g", x)
		}
	})
}

func TestRoundAtPowersOfTen(t *testing.T) {
	for power := -40; power <= 40; power++ {
		ten := math.Pow10(power)
		for _, x := range []float64{ten, math.Nextafter(ten, 0), math.Nextafter(ten, math.Inf(1)), 9.999999999995 * ten, 9.9999999999949 * ten, -9.9999999999951 * ten} {
			assert.Equal(t, throughDecimals(x), Round(x), "%g", x)
		}
	}
}

func TestRoundDoesMostValuesWithoutDecimals(t *testing.T) {
	done := 0
	for i := 1; i <= 1000; i++ {
		if _, ok := rounded(math.Sqrt(float64(i)) / 3); ok {
			done++
		}
	}
	require.Greater(t, done, 950)
}
