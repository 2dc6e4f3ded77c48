package quantity

import "sort"

// unit is one way to write a dimension: value in base units = offset + factor x value.
type unit struct {
	dim    Dimension
	factor float64
	offset float64
	print  string // as a person reads it, where it differs from the symbol
}

// units maps a symbol, as it is written in a record, to its meaning.
//
// Source of the US factors: NIST SP 811 (2008) appendix B.8, exact where the
// table marks them so: 1 in = 25.4 mm, 1 lb = 0.45359237 kg,
// 1 lbf = 4.4482216152605 N.
var units = map[string]unit{
	"um": {dim: Length, factor: 0.001, print: "µm"},
	"mm": {dim: Length, factor: 1}, "cm": {dim: Length, factor: 10}, "m": {dim: Length, factor: 1000},
	"in": {dim: Length, factor: 25.4}, "ft": {dim: Length, factor: 304.8},

	"mm2": {dim: Area, factor: 1, print: "mm²"}, "cm2": {dim: Area, factor: 100, print: "cm²"},
	"m2": {dim: Area, factor: 1e6, print: "m²"}, "in2": {dim: Area, factor: 645.16, print: "in²"},

	"m3": {dim: Volume, factor: 1, print: "m³"}, "L": {dim: Volume, factor: 0.001},
	"ft3": {dim: Volume, factor: 0.028316846592, print: "ft³"},

	"mA": {dim: Current, factor: 0.001}, "A": {dim: Current, factor: 1}, "kA": {dim: Current, factor: 1000},
	"mV": {dim: Voltage, factor: 0.001}, "V": {dim: Voltage, factor: 1},

	"uohm": {dim: Resistance, factor: 0.001, print: "µΩ"}, "mohm": {dim: Resistance, factor: 1, print: "mΩ"},
	"ohm": {dim: Resistance, factor: 1000, print: "Ω"}, "kohm": {dim: Resistance, factor: 1e6, print: "kΩ"},
	"Mohm": {dim: Resistance, factor: 1e9, print: "MΩ"},

	"W": {dim: Power, factor: 1}, "kW": {dim: Power, factor: 1000},
	"mAh": {dim: Charge, factor: 0.001}, "Ah": {dim: Charge, factor: 1},
	"Wh": {dim: Energy, factor: 1}, "kWh": {dim: Energy, factor: 1000},

	"degC": {dim: Temperature, factor: 1, print: "°C"},
	"degF": {dim: Temperature, factor: 5.0 / 9, offset: -160.0 / 9, print: "°F"},

	"ms": {dim: Duration, factor: 0.001}, "s": {dim: Duration, factor: 1},
	"min": {dim: Duration, factor: 60}, "h": {dim: Duration, factor: 3600}, "d": {dim: Duration, factor: 86400},

	"g": {dim: Mass, factor: 0.001}, "kg": {dim: Mass, factor: 1}, "lb": {dim: Mass, factor: 0.45359237},

	"N": {dim: Force, factor: 1}, "kN": {dim: Force, factor: 1000}, "lbf": {dim: Force, factor: 4.4482216152605},

	"N.m": {dim: Torque, factor: 1, print: "N·m"}, "lbf.in": {dim: Torque, factor: 0.1129848290276167, print: "lbf·in"},
	"lbf.ft": {dim: Torque, factor: 1.3558179483314004, print: "lbf·ft"},

	"m3/h": {dim: Flow, factor: 1, print: "m³/h"}, "L/s": {dim: Flow, factor: 3.6},
	"ft3/min": {dim: Flow, factor: 1.69901079552, print: "ft³/min"},

	"deg": {dim: Angle, factor: 1, print: "°"},
	"%":   {dim: Ratio, factor: 1},
	"uT":  {dim: FluxDensity, factor: 1, print: "µT"},
	"A2s": {dim: LetThrough, factor: 1, print: "A²s"},

	"ohm/km":  {dim: LinearResistance, factor: 1, print: "Ω/km"},
	"ohm/kft": {dim: LinearResistance, factor: 1 / 0.3048, print: "Ω/1000 ft"},
}

// Units returns the symbols that a record may use for the dimension, smallest
// first.
func Units(d Dimension) []string {
	var symbols []string
	for symbol, u := range units {
		if u.dim == d {
			symbols = append(symbols, symbol)
		}
	}
	sort.Slice(symbols, func(i, j int) bool {
		a, b := units[symbols[i]], units[symbols[j]]
		if a.factor != b.factor {
			return a.factor < b.factor
		}
		return symbols[i] < symbols[j]
	})
	return symbols
}

// DimensionOf returns the dimension that a unit symbol belongs to.
func DimensionOf(symbol string) (Dimension, bool) {
	u, ok := units[symbol]
	return u.dim, ok
}

// printed returns the symbol as a person reads it.
func printed(symbol string) string {
	if p := units[symbol].print; p != "" {
		return p
	}
	return symbol
}

// Symbol returns a unit as a person reads it: "mm²" for "mm2". A symbol that is
// no unit here stays as it is.
func Symbol(symbol string) string { return printed(symbol) }
