package quantity

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"
)

// ParseError says what is wrong with a quantity and what would be right.
type ParseError struct {
	Text string
	Says string
}

func (e *ParseError) Error() string { return e.Says }

// Parse reads a quantity such as "24 ft", "1-1/2 in", "0.5 mm" or "50 °C" that
// has to be of the dimension d. The error is a *ParseError that names the units
// that fit.
func Parse(text string, d Dimension) (Quantity, error) {
	fail := func(format string, args ...any) (Quantity, error) {
		return Quantity{}, &ParseError{Text: text, Says: fmt.Sprintf(format, args...)}
	}
	number, symbol := split(trim(text))
	switch {
	case number == "":
		return fail("%s is not a %s; write a number and a unit, such as %q", quote(text), d, example(d))
	case strings.HasPrefix(symbol, ","):
		return fail("%s has a comma in its number; write a decimal point and no thousands separators", quote(text))
	}
	value, ok := parseNumber(number)
	if !ok {
		return fail("%s is not a number; write a %s such as %q", quote(number), d, example(d))
	}
	if symbol == "" {
		return fail("%s has no unit; a %s is written in %s", quote(text), d, list(Units(d)))
	}
	u, ok := units[symbol]
	if !ok {
		symbol = canonical(symbol)
		u, ok = units[symbol]
	}
	if !ok {
		return fail("%s is no unit known here; a %s is written in %s", quote(symbol), d, list(Units(d)))
	}
	if u.dim != d {
		return fail("%s is a %s; a %s is wanted here, written in %s", quote(text), u.dim, d, list(Units(d)))
	}
	q := u.of(value, symbol)
	if math.IsInf(q.Base, 0) {
		return fail("%s is too large", quote(text))
	}
	if d == Temperature && q.Base < absoluteZero {
		return fail("%s is below absolute zero; check its sign and its unit", quote(text))
	}
	return q, nil
}

// isBlank tells what may stand around a number and its unit.
func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// trim takes the blanks off both ends of a text.
func trim(text string) string {
	for text != "" && isBlank(text[0]) {
		text = text[1:]
	}
	for text != "" && isBlank(text[len(text)-1]) {
		text = text[:len(text)-1]
	}
	return text
}

// absoluteZero is 0 K in degrees Celsius (SI Brochure, 9th edition, 2.3.1).
const absoluteZero = -273.15

// The number of a quantity as a regular expression that Go and ECMAScript read:
// a decimal number, or a whole number and a fraction.
const numberPattern = `([0-9]+[ -])?[0-9]+/[0-9]+|([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?`

// Pattern returns a regular expression, for Go and ECMAScript alike, of the
// texts that Parse can read as the dimension: all of them if signed, else those
// without a minus sign. It says nothing of their range.
func Pattern(d Dimension, signed bool) string {
	symbols := Units(d)
	for spelling, symbol := range aliases {
		if units[symbol].dim == d {
			symbols = append(symbols, spelling)
		}
	}
	sort.Strings(symbols)
	for i, s := range symbols {
		symbols[i] = signs.Replace(s)
	}
	sign := `[+]?`
	if signed {
		sign = `[+-]?`
	}
	return `^\s*` + sign + `(` + numberPattern + `)\s*(` + strings.Join(symbols, "|") + `)\s*$`
}

// signs turns a unit into a pattern that allows for all spellings.
var signs = strings.NewReplacer("deg", "(deg|°)", "ohm", "(ohm|Ω|Ω)", "u", "[uµμ]", "2", "[2²]", "3", "[3³]", ".", "[.·]")

// parseNumber reads a decimal number or a whole number with a fraction.
func parseNumber(number string) (float64, bool) {
	above, below, isFraction := strings.Cut(number, "/")
	if !isFraction {
		value, err := strconv.ParseFloat(number, 64)
		return value, err == nil
	}
	sign := 1.0
	if rest, ok := strings.CutPrefix(above, "-"); ok {
		sign, above = -1, rest
	}
	whole := "0"
	if i := strings.IndexAny(above, " -"); i >= 0 {
		whole, above = above[:i], above[i+1:]
	}
	w, err1 := strconv.ParseUint(strings.TrimPrefix(whole, "+"), 10, 32)
	a, err2 := strconv.ParseUint(strings.TrimPrefix(above, "+"), 10, 32)
	b, err3 := strconv.ParseUint(below, 10, 32)
	if err1 != nil || err2 != nil || err3 != nil || b == 0 {
		return 0, false
	}
	return sign * (float64(w) + float64(a)/float64(b)), true
}

// split parts a text into its leading number and the rest.
func split(text string) (number, rest string) {
	if i := fraction(text); i > 0 {
		return text[:i], trim(text[i:])
	}
	i := 0
	for i < len(text) {
		c := text[i]
		isExponent := (c == 'e' || c == 'E') && i > 0 && i+1 < len(text) && strings.IndexByte("+-0123456789", text[i+1]) >= 0
		isSign := (c == '+' || c == '-') && (i == 0 || text[i-1] == 'e' || text[i-1] == 'E')
		if c != '.' && !isDigit(c) && !isExponent && !isSign {
			break
		}
		i++
	}
	return text[:i], trim(text[i:])
}

// fraction returns the length of a number such as 5/16, 1 1/2 or 1-1/2 at the
// start of a text, 0 if there is none.
func fraction(text string) int {
	i := 0
	if i < len(text) && (text[i] == '+' || text[i] == '-') {
		i++
	}
	digits := func() bool {
		from := i
		for i < len(text) && isDigit(text[i]) {
			i++
		}
		return i > from
	}
	if !digits() || i >= len(text) {
		return 0
	}
	if text[i] == ' ' || text[i] == '-' {
		i++
		if !digits() || i >= len(text) {
			return 0
		}
	}
	if text[i] != '/' {
		return 0
	}
	i++
	if !digits() {
		return 0
	}
	return i
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// spellings maps other signs to what units are written with here.
var spellings = strings.NewReplacer("°", "deg", "Ω", "ohm", "Ω", "ohm", "µ", "u", "μ", "u", "²", "2", "³", "3", "·", ".")

// aliases maps other ways to write a unit to its symbol.
var aliases = map[string]string{
	"C": "degC", "F": "degF",
	"l": "L", "litre": "L", "l/s": "L/s", "cfm": "ft3/min",
	"liter": "L", //nolint:misspell // as US labels have it
	"Nm":    "N.m", "in.lbf": "lbf.in", "in.lb": "lbf.in", "lb.in": "lbf.in", "ft.lbf": "lbf.ft", "ft.lb": "lbf.ft", "lb.ft": "lbf.ft",
	"percent": "%",
	"sec":     "s", "hr": "h", "hour": "h", "hours": "h", "day": "d", "days": "d",
	"inch": "in", "inches": "in", `"`: "in", "foot": "ft", "feet": "ft", "'": "ft",
}

// canonical returns the symbol of a unit for another way to write it.
func canonical(symbol string) string {
	s := spellings.Replace(symbol)
	if a, ok := aliases[s]; ok {
		return a
	}
	return s
}

// quote shows what was written, shortened so that no message grows with it.
func quote(text string) string {
	const most = 40
	if r := []rune(text[:min(len(text), 4*most+4)]); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return strconv.Quote(text)
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
