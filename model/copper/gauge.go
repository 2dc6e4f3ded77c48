package copper

import (
	"math"

	"driploop/model/quantity"
)

// CircularMilMM2 is the area of a circle of one mil (0.001 in) diameter in mm²:
// π/4 × 0.0254². Definition; 1 in = 25.4 mm exactly, NIST SP 811 (2008) B.8.
const CircularMilMM2 = math.Pi / 4 * 0.0254 * 0.0254

// The share of copper in a conductor of an SAE gauge against the AWG conductor of
// the same number: 5 to 12 percent less.
//
// Source: SAE J1127 and J1128 against ASTM B258; from memory, unverified.
const (
	saeLeast    = 0.88
	saeGreatest = 0.95
	sourceSAE   = "SAE J1127, J1128: 5 to 12 % less copper than AWG; from memory, unverified"
	sourceAWG   = "ASTM B258, diameter by gauge number; computed"
)

// GaugeDiameter returns the diameter of a solid wire in mm.
//
//	d = 0.005 in × 92^((36 − n)/39)
//
// Given: n gauge number; 0 for 1/0, −1 for 2/0 and so on.
// Source: ASTM B258; the definition is the same in all editions (computed, and
// agrees with a published wire table, secondary).
func GaugeDiameter(n int) float64 {
	return 0.127 * math.Pow(92, float64(36-n)/39)
}

// area returns the copper cross-section in mm² by the size alone: least and
// greatest. They are the same but for SAE gauges.
func area(size quantity.WireSize) (least, greatest float64) {
	if size.System == quantity.MM2 {
		return size.MM2, size.MM2
	}
	d := GaugeDiameter(size.Gauge)
	a := math.Pi / 4 * d * d
	if size.System == quantity.SAE {
		return saeLeast * a, saeGreatest * a
	}
	return a, a
}
