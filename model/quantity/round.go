package quantity

import "math"

// significant is how many digits Round keeps.
const significant = 12

// exactTens are the powers of ten that a float holds exactly.
var exactTens = [...]float64{
	1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
}

// nearTie is how near to the middle between two neighbours, or to a power of ten,
// a scaled value has to lie for its own error (below 1e-4) to matter.
const nearTie = 1e-3

// rounded does what Round says without going through decimals, for most values.
// The value is scaled by a power of ten to an integer of that many digits and
// back. Integer and power are exact, so that the way back rounds once, to the
// float nearest to the decimal, as reading the decimal does.
func rounded(v float64) (float64, bool) {
	size := math.Abs(v)
	_, twos := math.Frexp(size)
	// The power of ten below the power of two below the value: one too low at most.
	places := significant - 1 - int(math.Floor(float64(twos-1)*math.Log10E*math.Ln2))
	if places >= len(exactTens) || 1-places >= len(exactTens) {
		return 0, false
	}
	scaled := shift(size, places)
	if scaled >= 1e12 {
		places--
		scaled = shift(size, places)
	}
	digits := math.RoundToEven(scaled)
	if math.Abs(math.Abs(scaled-digits)-0.5) < nearTie || scaled < 1e11+nearTie || scaled > 1e12-1 {
		return 0, false
	}
	if places >= 0 {
		digits /= exactTens[places]
	} else {
		digits *= exactTens[-places]
	}
	return math.Copysign(digits, v), true
}

// shift multiplies by a power of ten.
func shift(v float64, places int) float64 {
	if places >= 0 {
		return v * exactTens[places]
	}
	return v / exactTens[-places]
}
