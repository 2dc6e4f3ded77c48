package quantity

import (
	"math"
	"strconv"
	"strings"
)

// System is the choice of units that a report prints in.
type System string

// The systems of units that a reader can ask for.
const (
	Metric System = "metric"
	US     System = "us"
	Both   System = "both"
)

// Systems lists the choices in the order that help texts show them.
func Systems() []string { return []string{string(US), string(Metric), string(Both)} }

// String returns the quantity as it was written, with a readable unit.
func (q Quantity) String() string {
	if q.Dim == None {
		return number(q.Value)
	}
	return join(q.Value, q.Unit)
}

// Format returns the quantity in the units of the system, to three significant
// digits; with Both, US units stand in brackets where they differ.
func (q Quantity) Format(s System) string {
	d := dimensions[q.Dim]
	if q.Dim == None {
		return number(q.Value)
	}
	metric := q.pick(d.metric)
	if len(d.us) == 0 || s == Metric {
		return metric
	}
	us := q.pick(d.us)
	if s == US {
		return us
	}
	return metric + " (" + us + ")"
}

// pick prints q in the largest unit in which it is at least one.
func (q Quantity) pick(symbols []string) string {
	best := symbols[0]
	for _, symbol := range symbols {
		// Feet only from two feet up: people say 18 in, not 1.5 ft.
		threshold := 1.0
		if symbol == "ft" {
			threshold = 2
		}
		if math.Abs(q.In(symbol)) >= threshold || q.Base == 0 && symbol == dimensions[q.Dim].base {
			best = symbol
		}
	}
	return join(q.In(best), best)
}

func join(value float64, symbol string) string {
	p := printed(symbol)
	if p == "°" || p == "%" {
		return number(value) + p
	}
	return number(value) + " " + p
}

// number prints to three significant digits, whole numbers below 100,000 in full.
func number(v float64) string {
	if v == math.Trunc(v) && math.Abs(v) < 1e5 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	if a := math.Abs(r); a >= 1e7 || a < 1e-4 {
		return strconv.FormatFloat(r, 'g', -1, 64)
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// suffixes maps the ending of a figure's or a fact's name to the unit of its
// number: length_mm is in millimetres.
var suffixes = map[string]string{
	"mm": "mm", "mm2": "mm2", "cm2": "cm2", "m3": "m3", "a": "A", "v": "V", "mohm": "mohm", "w": "W", "ah": "Ah", "wh": "Wh",
	"degc": "degC", "s": "s", "kg": "kg", "n": "N", "nm": "N.m", "m3h": "m3/h", "deg": "deg", "pct": "%", "ut": "uT", "a2s": "A2s",
}

// FromFact splits the name of a fact or figure into its plain name and the
// quantity that the number is, by the unit the name ends in. Without such an
// ending the quantity has no dimension.
func FromFact(name string, value float64) (plain string, q Quantity) {
	if i := strings.LastIndexByte(name, '_'); i >= 0 {
		if symbol, ok := suffixes[name[i+1:]]; ok {
			return name[:i], New(value, symbol)
		}
	}
	return name, Quantity{Value: value}
}
