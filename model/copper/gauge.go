package copper

import (
	"math"
	"sync"

	"driploop/model/quantity"
)

// CircularMilMM2 is the area of a circle of one mil (0.001 in) diameter in mm²:
// π/4 × 0.0254². Definition; 1 in = 25.4 mm exactly, NIST SP 811 (2008) B.8.
const CircularMilMM2 = math.Pi / 4 * 0.0254 * 0.0254

const (
	sourceAWG = "ASTM B258, diameter by gauge number; computed"
	sourceSAE = "SAE J1127, J1128 as a trade chart reports the least area; secondary, one copy"
)

var saeAreas = sync.OnceValue(func() table { return load("sae.csv") })

// GaugeDiameter returns the diameter of a solid wire of an AWG gauge in mm.
//
//	d = 0.005 in × 92^((36 − n)/39)
//
// Given: n gauge number; 0 for 1/0, −1 for 2/0 and so on.
// Source: ASTM B258; the definition is the same in all editions (computed, and
// agrees with a published wire table, secondary).
func GaugeDiameter(n int) float64 {
	return 0.127 * math.Pow(92, float64(36-n)/39)
}

// GaugeArea returns the area of a solid wire of an AWG gauge in mm²: π/4·d².
func GaugeArea(n int) float64 {
	d := GaugeDiameter(n)
	return math.Pi / 4 * d * d
}

// area returns the copper cross-section in mm² by the size alone: least and
// greatest. They are the same but for SAE gauges, which hold at least what the
// table prints and at most the copper of the AWG gauge.
//
// Errors: *NoValue for an SAE gauge that the table does not print.
func area(size quantity.WireSize) (least, greatest float64, err error) {
	switch size.System {
	case quantity.MM2:
		return size.MM2, size.MM2, nil
	case quantity.SAE:
		row, ok := saeAreas().rows[float64(size.Gauge)]
		if !ok {
			return 0, 0, noValue(sourceSAE, "no copper area is held for %s; the table has SAE 18 to 4/0 without 3, 5 and 7", size)
		}
		return row[0] * CircularMilMM2, GaugeArea(size.Gauge), nil
	}
	a := GaugeArea(size.Gauge)
	return a, a, nil
}
