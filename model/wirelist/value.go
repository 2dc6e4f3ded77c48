package wirelist

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"driploop/model/quantity"
	"driploop/model/record"
)

// value reads a cell into a field of the conductor. What cannot be read is
// reported and kept as a comment.
func (i *importer) value(w *wire, h head, text, where string) {
	lost := func(why string) {
		i.note("%s: %s %q was not understood%s", where, h.name, oneLine(text), why)
		w.above = append(w.above, fmt.Sprintf("%s: %s", where, oneLine(text)))
	}
	set := func(key, value string) { w.fields = append(w.fields, [2]string{key, value}) }
	number := text
	if i.grid.comma {
		number = decimals.ReplaceAllString(number, "$1.$2")
	}
	measure := func(key string, d quantity.Dimension) {
		for _, try := range []string{number, number + " " + h.unit} {
			if v, err := quantity.Parse(try, d); err == nil && v.Base > 0 {
				set(key, record.Spell(strings.TrimSpace(try)))
				return
			}
		}
		lost(fmt.Sprintf("; write it with its unit, one of %s", strings.Join(quantity.Units(d), ", ")))
	}
	switch h.name {
	case colSize:
		if size, ok := wireSize(number, h.unit); ok {
			set("size", size)
		} else {
			lost("; write it like 8 AWG or 16 mm2")
		}
	case colLength:
		measure("length", quantity.Length)
	case colDiameter:
		measure("diameter", quantity.Length)
	case colInsulation:
		measure("insulation", quantity.Temperature)
	case colColour:
		words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ' ' || r == '/' || r == '-' })
		i.fits(set, lost, "colour", strings.Join(words, "-"), strings.Join(words, "/"))
	case colSheath:
		i.fits(set, lost, "sheath", identifierKeepingCase(text))
	case colClass:
		i.fits(set, lost, "class", strings.ToLower(text))
	case colStandard:
		i.fits(set, lost, "standard", strings.ToLower(strings.ReplaceAll(text, " ", "-")))
	}
}

// decimals is a number with a decimal comma.
var decimals = regexp.MustCompile(`^(\s*-?\d+),(\d+)`)

// fits sets a field to the first of the values that a record takes.
func (i *importer) fits(set func(key, value string), lost func(string), key string, values ...string) {
	for _, value := range values {
		if takes(key, value) {
			set(key, record.Spell(value))
			return
		}
	}
	lost("")
}

// takes reports whether a conductor can have the value.
func takes(key, value string) bool {
	probe := "driploop: 1\njob: {number: x}\nvessel: {system: 12 V}\ncomponents: {a: {kind: busbar}, b: {kind: busbar}}\n" +
		"conductors: {x: {from: a.1, to: b.1, role: positive, " + key + ": " + record.Spell(value) + "}}\n"
	_, faults := record.Decode("cell", []byte(probe))
	return len(faults) == 0
}

// wireSize reads "10", "#10", "10 AWG", "AWG 10", "2/0", "16mm²" with the unit of
// the header, if it has one.
func wireSize(text, unit string) (string, bool) {
	text = strings.TrimSpace(strings.NewReplacer("²", "2", "#", "", "ga.", "", "ga", "", "sq mm", "mm2", "sqmm", "mm2", "mm^2", "mm2").Replace(text))
	upper := strings.ToUpper(text)
	for _, system := range []string{"AWG", "SAE"} {
		if rest, ok := strings.CutPrefix(upper, system); ok {
			text = strings.TrimSpace(rest) + " " + system
		}
	}
	tries := []string{text}
	if unit != "" && !strings.ContainsFunc(text, unicode.IsLetter) {
		tries = append(tries, text+" "+strings.NewReplacer("²", "2", "mm^2", "mm2").Replace(unit))
	}
	for _, try := range tries {
		if size, err := quantity.ParseWireSize(try); err == nil {
			return size.String(), true
		}
	}
	return "", false
}

// identifierKeepingCase makes an id that looks like the text.
func identifierKeepingCase(text string) string {
	var b strings.Builder
	for _, r := range strings.TrimSpace(text) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '-' {
			b.WriteRune(r)
		} else {
			b.WriteByte('-')
		}
	}
	const most = 48 // of the 64 that an id can have
	id := strings.Trim(b.String(), "-_")
	if r := []rune(id); len(r) > most {
		id = string(r[:most])
	}
	return id
}
