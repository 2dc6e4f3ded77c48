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
		return number(q.Value, written)
	}
	return join(q.Value, q.Unit, written)
}

// The significant digits of a quantity as it is read, and as it was written.
const (
	readable = 3
	written  = 12
)

// Format returns the quantity in the units of the system, to three significant
// digits; with Both, US units stand in brackets where they differ.
func (q Quantity) Format(s System) string { return q.FormatTo(s, readable) }

// FormatTo is Format with another number of significant digits.
func (q Quantity) FormatTo(s System, digits int) string {
	d := dimensions[q.Dim]
	if q.Dim == None {
		return number(q.Value, digits)
	}
	metric := q.pick(d.metric, digits)
	if len(d.us) == 0 || s == Metric {
		return metric
	}
	us := q.pick(d.us, digits)
	if s == US {
		return us
	}
	return metric + " (" + us + ")"
}

// pick prints q in the largest unit in which it is at least one.
func (q Quantity) pick(symbols []string, digits int) string {
	best := symbols[0]
	for _, symbol := range symbols {
		if symbol == "ft" && q.inInches() {
			continue
		}
		if math.Abs(q.In(symbol)) >= 1 || q.Base == 0 && symbol == dimensions[q.Dim].base {
			best = symbol
		}
	}
	return join(q.In(best), best, digits)
}

// inInches tells whether people would state a length in inches, not feet: 18 in,
// not 1.5 ft, and 40 in, not 3.33 ft.
func (q Quantity) inInches() bool {
	feet := math.Abs(q.In("ft"))
	return feet < 2 || feet < 10 && isWhole(q.In("in")) && !isWhole(feet)
}

func isWhole(v float64) bool { return v == math.Trunc(v) }

func join(value float64, symbol string, digits int) string {
	p := printed(symbol)
	if p == "°" || p == "%" {
		return number(value, digits) + p
	}
	return number(value, digits) + " " + p
}

// number prints to so many significant digits, whole numbers below 100,000 in
// full.
func number(v float64, digits int) string {
	if isWhole(v) && math.Abs(v) < 1e5 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	if err != nil {
		return strconv.FormatFloat(v, 'g', digits, 64)
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
