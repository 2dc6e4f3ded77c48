// Package quantity holds dimensioned values as a record writes them: a number
// and a unit. It parses, converts and prints; it knows no limits and no
// physics.
package quantity

// Dimension is what a quantity measures.
type Dimension uint8

// The dimensions that a record or a figure can have.
const (
	None Dimension = iota
	Length
	Area
	Volume
	Current
	Voltage
	Resistance
	Power
	Charge
	Energy
	Temperature
	Duration
	Mass
	Force
	Torque
	Flow
	Angle
	Ratio
	FluxDensity
	LetThrough
	LinearResistance // of a conductor, for its length
)

// dimension is the name of a dimension, the unit its values are kept in, and
// the units that people read it in.
type dimension struct {
	name   string
	base   string
	metric []string // ascending
	us     []string // ascending
}

// dimensions is indexed by Dimension. The base unit is also the unit of facts,
// so that a figure named with the suffix of its base unit needs no conversion.
var dimensions = [...]dimension{
	None:        {name: "number", base: ""},
	Length:      {name: "length", base: "mm", metric: []string{"mm", "m"}, us: []string{"in", "ft"}},
	Area:        {name: "area", base: "mm2", metric: []string{"mm2", "cm2", "m2"}, us: []string{"in2"}},
	Volume:      {name: "volume", base: "m3", metric: []string{"L", "m3"}, us: []string{"ft3"}},
	Current:     {name: "current", base: "A", metric: []string{"mA", "A", "kA"}},
	Voltage:     {name: "voltage", base: "V", metric: []string{"mV", "V"}},
	Resistance:  {name: "resistance", base: "mohm", metric: []string{"mohm", "ohm", "kohm", "Mohm"}},
	Power:       {name: "power", base: "W", metric: []string{"W", "kW"}},
	Charge:      {name: "capacity", base: "Ah", metric: []string{"Ah"}},
	Energy:      {name: "energy", base: "Wh", metric: []string{"Wh", "kWh"}},
	Temperature: {name: "temperature", base: "degC", metric: []string{"degC"}, us: []string{"degF"}},
	Duration:    {name: "time", base: "s", metric: []string{"ms", "s", "min", "h", "d"}},
	Mass:        {name: "mass", base: "kg", metric: []string{"g", "kg"}, us: []string{"lb"}},
	Force:       {name: "force", base: "N", metric: []string{"N", "kN"}, us: []string{"lbf"}},
	Torque:      {name: "torque", base: "N.m", metric: []string{"N.m"}, us: []string{"lbf.in", "lbf.ft"}},
	Flow:        {name: "flow", base: "m3/h", metric: []string{"m3/h"}, us: []string{"ft3/min"}},
	Angle:       {name: "angle", base: "deg", metric: []string{"deg"}},
	Ratio:       {name: "ratio", base: "%", metric: []string{"%"}},
	FluxDensity: {name: "magnetic flux density", base: "uT", metric: []string{"uT"}},
	LetThrough:  {name: "let-through energy", base: "A2s", metric: []string{"A2s"}},

	LinearResistance: {name: "resistance per length", base: "ohm/km", metric: []string{"ohm/km"}, us: []string{"ohm/kft"}},
}

// String returns the plain name of the dimension, such as "length".
func (d Dimension) String() string { return dimensions[d].name }

// Base returns the unit that values of the dimension are kept in.
func (d Dimension) Base() string { return dimensions[d].base }
