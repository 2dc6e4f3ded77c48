package verdict

import (
	"strings"

	"driploop/model/quantity"
)

// Show returns how to print the figures of the verdict in the units of a
// system. A figure and its limit that are not equal never look equal: they get
// as many digits as that takes.
func (v *Verdict) Show(s quantity.System) func(Figure) string {
	digits := map[string]int{}
	for _, limit := range v.Limit {
		for _, f := range v.Figures {
			if f.Name == limit.Name {
				digits[f.Name] = distinct(f, limit, s)
			}
		}
	}
	return func(f Figure) string {
		if d := digits[f.Name]; d > 0 && f.Text == "" {
			return f.Quantity.FormatTo(s, d)
		}
		return f.Print(s)
	}
}

// distinct is the number of digits that tell two figures apart; 0 for the usual.
func distinct(a, b Figure, s quantity.System) int {
	if a.Text != "" || b.Text != "" || a.Quantity.Base == b.Quantity.Base || a.Print(s) != b.Print(s) {
		return 0
	}
	const most = 12 // as many as quantities are kept to
	for digits := 4; digits < most; digits++ {
		if a.Quantity.FormatTo(s, digits) != b.Quantity.FormatTo(s, digits) {
			return digits
		}
	}
	return most
}

// Text fills the places of a template, such as "rated {rated}, at least
// {limit.rated}", with the figures of the verdict as show prints them. A place
// that names no figure stays as it is written, so that a slip is seen.
func (v *Verdict) Text(template string, show func(Figure) string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(template, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, after, closed := strings.Cut(rest, "}")
		figure, known := v.figure(name)
		switch {
		case !closed:
			b.WriteString("{" + rest)
			return b.String()
		case known:
			b.WriteString(show(figure))
		default:
			b.WriteString("{" + name + "}")
		}
		template = after
	}
}

// figure finds what a place of a template names: a figure, "limit." and a
// limit, or the subject.
func (v *Verdict) figure(name string) (Figure, bool) {
	if name == "subject" {
		return Figure{Name: name, Text: v.Subject}, true
	}
	figures := v.Figures
	if limit, ok := strings.CutPrefix(name, "limit."); ok {
		name, figures = limit, v.Limit
	}
	for _, f := range figures {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}
