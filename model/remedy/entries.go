package remedy

import (
	"math"
	"slices"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// entry are changes of one entry of the subject, of work that is then to be done:
// a cover, a support, another material.
func (f *finder) entry(breach *verdict.Verdict, mend string) []Cure {
	key, value, _ := strings.Cut(mend, ": ")
	path := breach.Subject + "." + key
	field, ok := record.Describe(path, f.now.Record.ComponentKind)
	if !ok || field.Part {
		return nil
	}
	values := []string{value}
	if name, limited := strings.CutPrefix(value, "{"); limited {
		values = limits(breach, strings.TrimSuffix(name, "}"), field)
	}
	var rungs []Cure
	for _, value := range values {
		rungs = append(rungs, Cure{Changes: []record.Change{{Path: path, Value: value}}, Work: true})
	}
	return rungs
}

// together are all mends of a rule that are plain entries, made at once.
func (f *finder) together(breach *verdict.Verdict) []Cure {
	all := Cure{Work: true}
	for _, mend := range breach.Rule.Mends {
		for _, c := range f.entry(breach, mend) {
			if !slices.ContainsFunc(all.Changes, func(had record.Change) bool { return had.Path == c.Changes[0].Path }) {
				all.Changes = append(all.Changes, c.Changes...)
			}
		}
	}
	if len(all.Changes) < 2 {
		return nil
	}
	return []Cure{all}
}

// limits are the values of a limit that a part is made for or a person measures:
// the limit itself if it is a plain one, and the nearest plain ones above and
// below it. Which of them clears the breach is proven.
func limits(breach *verdict.Verdict, name string, field record.Field) []string {
	unit := field.Example[strings.LastIndexByte(field.Example, ' ')+1:]
	var all []string
	for _, limit := range breach.Limit {
		switch {
		case limit.Name != name:
		case limit.Text != "":
			all = append(all, limit.Text)
		case limit.Quantity.Dim == quantity.None:
			all = append(all, limit.Quantity.String())
		default:
			if dim, ok := quantity.DimensionOf(unit); ok && dim == limit.Quantity.Dim {
				all = append(all, plain(limit.Quantity.In(unit), unit)...)
			}
		}
	}
	return all
}

// plain are figures of two digits at and around a value.
func plain(value float64, unit string) []string {
	if value == 0 {
		return []string{quantity.New(0, unit).String()}
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(value)))-1)
	var all []string
	for _, n := range []float64{math.Round(value / step), math.Ceil(value / step), math.Floor(value / step)} {
		if text := quantity.New(quantity.Round(n*step), unit).String(); !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	return all
}
