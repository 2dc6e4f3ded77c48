package facts

import (
	"math"
	"strconv"

	"driploop/model/copper"
	"driploop/model/quantity"
	"driploop/model/record"
)

// nominalArea returns the nominal copper area of a size in mm², to four digits:
// the area that its name stands for, whatever the copper in it. Sizes compare
// by it across gauge systems.
func nominalArea(size record.Wire) (float64, bool) {
	given, ok := size.Get()
	if !ok {
		return 0, false
	}
	if given.System == quantity.MM2 {
		return given.MM2, true
	}
	d := copper.GaugeDiameter(given.Gauge)
	return digitsOf(math.Pi/4*d*d, 4), true
}

// digitsOf rounds to a number of significant digits.
func digitsOf(v float64, digits int) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	if err != nil {
		return v
	}
	return r
}
