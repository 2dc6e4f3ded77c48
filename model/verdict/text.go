package verdict

import "strings"

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
