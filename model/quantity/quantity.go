package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Quantity is a value with its unit. Base is the value in the base unit of its
// dimension; Value and Unit are as written. The zero Quantity has no dimension.
type Quantity struct {
	Dim   Dimension
	Base  float64
	Value float64
	Unit  string
}

// New returns a quantity of value in the unit symbol. It panics on an unknown
// symbol, which is a fault of the program, never of a record.
func New(value float64, symbol string) Quantity {
	u, ok := units[symbol]
	if !ok {
		panic("quantity: no unit " + symbol)
	}
	return Quantity{Dim: u.dim, Base: Round(u.offset + u.factor*value), Value: value, Unit: symbol}
}

// In returns the value in another unit of the same dimension.
func (q Quantity) In(symbol string) float64 {
	u := units[symbol]
	return Round((q.Base - u.offset) / u.factor)
}

// Round returns v to 12 significant digits, so that 7 in and 177.8 mm are the
// same number and a value at a limit compares as equal to it. (The physics
// behind any figure is far coarser.)
func Round(v float64) float64 {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// ParseError says what is wrong with a quantity and what would be right.
type ParseError struct {
	Text string
	Says string
}

func (e *ParseError) Error() string { return e.Says }

// Parse reads a quantity such as "24 ft", "0.5 mm" or "50 °C" that has to be of
// the dimension d. The error is a *ParseError that names the units that fit.
func Parse(text string, d Dimension) (Quantity, error) {
	fail := func(format string, args ...any) (Quantity, error) {
		return Quantity{}, &ParseError{Text: text, Says: fmt.Sprintf(format, args...)}
	}
	number, symbol := split(strings.TrimSpace(text))
	if number == "" {
		return fail("%q is not a %s; write a number and a unit, such as %q", text, d, example(d))
	}
	value, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) || strings.ContainsAny(number, "xXpP_") {
		return fail("%q is not a number; write a %s such as %q", number, d, example(d))
	}
	if symbol == "" {
		return fail("%q has no unit; a %s is written in %s", text, d, list(Units(d)))
	}
	symbol = canonical(symbol)
	u, ok := units[symbol]
	if !ok {
		return fail("%q is no unit known here; a %s is written in %s", symbol, d, list(Units(d)))
	}
	if u.dim != d {
		return fail("%q is a %s; a %s is wanted here, written in %s", text, u.dim, d, list(Units(d)))
	}
	q := New(value, symbol)
	if math.IsInf(q.Base, 0) {
		return fail("%q is too large", text)
	}
	return q, nil
}

// split parts a text into its leading number and the rest.
func split(text string) (number, rest string) {
	i := 0
	for i < len(text) {
		c := text[i]
		isExponent := (c == 'e' || c == 'E') && i > 0 && i+1 < len(text) && strings.IndexByte("+-0123456789", text[i+1]) >= 0
		isSign := (c == '+' || c == '-') && (i == 0 || text[i-1] == 'e' || text[i-1] == 'E')
		if c != '.' && (c < '0' || c > '9') && !isExponent && !isSign {
			break
		}
		i++
	}
	return text[:i], strings.TrimSpace(text[i:])
}

// spellings maps other ways to type a unit to the symbol used here.
var spellings = strings.NewReplacer("°", "deg", "Ω", "ohm", "Ω", "ohm", "µ", "u", "μ", "u", "²", "2", "³", "3", "·", ".")

func canonical(symbol string) string {
	s := spellings.Replace(symbol)
	switch s {
	case "C":
		return "degC"
	case "F":
		return "degF"
	case "l", "litre", "liter":
		return "L"
	case "l/s":
		return "L/s"
	case "Nm":
		return "N.m"
	case "in.lbf", "in.lb", "lb.in":
		return "lbf.in"
	case "ft.lbf", "ft.lb", "lb.ft":
		return "lbf.ft"
	case "cfm":
		return "ft3/min"
	case "percent":
		return "%"
	case "sec":
		return "s"
	case "hr", "hours", "hour":
		return "h"
	case "day", "days":
		return "d"
	case "inch", "inches", `"`:
		return "in"
	case "feet", "foot", "'":
		return "ft"
	}
	return s
}

func example(d Dimension) string {
	switch d {
	case Temperature:
		return "50 degC"
	case Torque:
		return "9 N.m"
	}
	return "25 " + dimensions[d].base
}

func list(symbols []string) string {
	if len(symbols) == 1 {
		return symbols[0]
	}
	return strings.Join(symbols[:len(symbols)-1], ", ") + " or " + symbols[len(symbols)-1]
}
