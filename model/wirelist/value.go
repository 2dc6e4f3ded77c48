package wirelist

import (
	"fmt"
	"regexp"
	"strconv"
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
	number, why := i.number(text)
	if why != "" {
		lost(why)
		return
	}
	measure := func(key string, d quantity.Dimension) {
		for _, try := range []string{number, number + " " + h.unit, inches(number)} {
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
			if h.unit == gauge && !strings.Contains(strings.ToUpper(number), "AWG") {
				i.note("%s: size %q is taken as %s: look whether the list means another gauge", where, oneLine(text), size)
			}
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
		i.fits(set, lost, "colour", colours(text)...)
	case colSheath:
		i.fits(set, lost, "sheath", identifierKeepingCase(text))
	case colClass:
		i.fits(set, lost, "class", strings.ToLower(text))
	case colStandard:
		i.fits(set, lost, "standard", strings.ToLower(strings.ReplaceAll(text, " ", "-")))
	}
}

// number reads a decimal comma as a point. A comma before three digits may part
// thousands or decimals, which nobody but the writer knows.
func (i *importer) number(text string) (number, why string) {
	found := decimals.FindStringSubmatch(text)
	if found == nil {
		return text, ""
	}
	const thousands = 3
	if len(found[2]) == thousands {
		return text, "; a comma before three digits parts thousands or decimals: write it without"
	}
	return decimals.ReplaceAllString(text, "$1.$2"), ""
}

// decimals is a number with a decimal comma.
var decimals = regexp.MustCompile(`^(\s*-?\d+),(\d+)`)

// inches reads feet and inches, such as 3'6" or 18 ft 6 in; empty if it is not that.
func inches(text string) string {
	found := feetInches.FindStringSubmatch(text)
	if found == nil {
		return ""
	}
	feet, err := strconv.ParseFloat(found[1], 64)
	rest, err2 := strconv.ParseFloat(found[2], 64)
	const perFoot = 12
	if err != nil || err2 != nil || rest >= perFoot {
		return ""
	}
	return quantity.New(feet*perFoot+rest, "in").String()
}

var feetInches = regexp.MustCompile(`(?i)^\s*(\d{1,6})\s*(?:'|’|′|ft\.?|feet|foot)\s*-?\s*(\d{1,2}(?:\.\d{1,4})?)\s*(?:"|”|″|''|in\.?|inch|inches)\s*$`)

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
	bare := strings.TrimSpace(gauges.ReplaceAllString(text, ""))
	if bare != strings.TrimSpace(text) || strings.Contains(text, "/0") && unit == "" {
		unit = gauge // "#14", "14 ga", "2/0": a gauge, and on boats that of AWG
	}
	text = strings.TrimSpace(strings.NewReplacer("²", "2", "sq mm", "mm2", "sqmm", "mm2", "mm^2", "mm2").Replace(bare))
	if unit == gauge {
		unit = "AWG"
	}
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

// gauges are the signs of a gauge beside its number.
var gauges = regexp.MustCompile(`(?i)#|\bno\.? ?|\bga(uge)?\b\.?`)
