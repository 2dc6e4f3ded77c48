package facts

import (
	"math"
	"strconv"
	"sync"

	"driploop/model/copper"
	"driploop/model/quantity"
	"driploop/model/record"
)

// nominalArea returns the nominal copper area of a size in mm², to four digits:
// the area that its name stands for, whatever the copper in it. Sizes compare
// by it across gauge systems.
func nominalArea(size *record.Wire) (float64, bool) {
	if size.State != record.Given {
		return 0, false
	}
	return areaOf(size.V), true
}

func areaOf(given quantity.WireSize) float64 {
	if given.System == quantity.MM2 {
		return given.MM2
	}
	if i := given.Gauge - coarsest; i >= 0 && i <= finest-coarsest {
		return gaugeAreas()[i]
	}
	return gaugeArea(given.Gauge)
}

// coarsest and finest are the gauges, 4/0 and 40, of which sizes are written.
const coarsest, finest = -3, 40

// gaugeAreas holds the areas of those gauges, coarsest first.
var gaugeAreas = sync.OnceValue(func() []float64 {
	areas := make([]float64, finest-coarsest+1)
	for i := range areas {
		areas[i] = gaugeArea(i + coarsest)
	}
	return areas
})

func gaugeArea(gauge int) float64 {
	d := copper.GaugeDiameter(gauge)
	return digitsOf(math.Pi/4*d*d, 4)
}

// digitsOf rounds to a number of significant digits.
func digitsOf(v float64, digits int) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// tableGauges lists the gauges by which tables of pull and of strands go, finest
// first; 1/0 is 0, 2/0 is −1 and so on.
var tableGauges = [...]int{26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 5, 4, 3, 2, 1, 0, -1, -2, -3}

// gaugeFor returns the largest of those gauges that holds no more copper than an
// area in mm², such as 14 AWG for 2.5 mm²; "finer" below all of them.
func gaugeFor(area float64) string {
	holds, areas := 0, gaugeAreas()
	for holds < len(tableGauges) && areas[tableGauges[holds]-coarsest] <= area {
		holds++
	}
	if holds == 0 {
		return "finer"
	}
	return quantity.WireSize{System: quantity.AWG, Gauge: tableGauges[holds-1]}.String()
}
