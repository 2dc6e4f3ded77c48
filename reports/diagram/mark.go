package diagram

import (
	"fmt"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// mark shows that rules are breached by one subject, and links to the worst.
type mark struct {
	severity verdict.Severity
	breaches int // 0: all that there is was waived
	href     string
	title    string
}

// letter is what stands in a mark: the first of the signal word, and how many.
func (m *mark) letter() string {
	if m.breaches == 0 {
		return "waived"
	}
	word := strings.ToUpper(m.severity.String()[:1])
	if m.breaches == 1 {
		return word
	}
	return fmt.Sprintf("%s%d", word, m.breaches)
}

func (m *mark) ink() Ink { return Ink(m.severity.String()) }

// paint sets a mark on a base line.
func (m *mark) paint(c Canvas, at Point) {
	w := width(m.letter(), smallSize, true)
	area := Rect{at.X, at.Y - smallSize, w + 2*markPad, smallSize + 1.5}
	c.Open(Group{Class: "mark", Title: m.title, Href: m.href, Area: area})
	words, fill := OnMark, m.ink()
	if m.breaches == 0 {
		words, fill = m.ink(), Paper
	}
	c.Rect(area, 2, fill, Pen{Ink: m.ink(), Width: 0.8})
	c.Text(Point{at.X + markPad, at.Y - 0.9}, m.letter(), Type{Ink: words, Size: smallSize, Bold: true})
	c.Close()
}

// marks are those of a record, by the path of the entry that is drawn.
type marks struct {
	by    map[string][]*verdict.Verdict
	href  func(*verdict.Verdict) string
	units quantity.System
}

// newMarks sorts what was judged wanting by the entry that it is about.
func newMarks(verdicts []verdict.Verdict, o Options) marks {
	m := marks{by: map[string][]*verdict.Verdict{}, href: o.Finding, units: o.Units}
	for i := range verdicts {
		v := &verdicts[i]
		if v.Outcome == verdict.Breach || v.Outcome == verdict.Waived {
			m.by[entryOf(v.Subject)] = append(m.by[entryOf(v.Subject)], v)
		}
	}
	return m
}

// entryOf is the path of the entry that a subject is part of: of
// "conductors.P1.ends.from" it is "conductors.P1".
func entryOf(subject string) string {
	parts := strings.SplitN(subject, ".", 3)
	switch parts[0] {
	case "components", "conductors", "penetrations", "spaces", "bundles":
		if len(parts) > 1 {
			id, _, _ := strings.Cut(parts[1], "[")
			return parts[0] + "." + id
		}
	}
	return subject
}

// of returns the mark of an entry; nil if there is nothing to say of it.
func (m marks) of(path string) *mark {
	found := m.by[path]
	if len(found) == 0 {
		return nil
	}
	out := &mark{}
	var worst *verdict.Verdict
	var says []string
	for _, v := range found {
		if v.Outcome == verdict.Breach {
			out.breaches++
		}
		if worst == nil || graver(v, worst) {
			worst = v
		}
		says = append(says, m.line(v))
	}
	out.severity = worst.Severity
	out.href = m.href(worst)
	out.title = strings.Join(says, "\n")
	return out
}

// graver tells whether a verdict weighs more than another: a breach more than
// one that was waived, then by severity.
func graver(a, b *verdict.Verdict) bool {
	if a.Outcome != b.Outcome {
		return a.Outcome == verdict.Breach
	}
	return a.Severity > b.Severity
}

// line says in words what a verdict found.
func (m marks) line(v *verdict.Verdict) string {
	word := v.Severity.String()
	if v.Outcome == verdict.Waived {
		word = "waived, " + word
	}
	if r := v.Recast; r != nil {
		word += " (by the settings of the yard; the rule says " + r.From.String() + ")"
	}
	return word + ": " + v.Rule.Title + ": " + v.Text(v.Says, v.Show(m.units))
}

// piece returns the mark of an entry as part of a line of text, if it has one.
func (m marks) piece(path string) text {
	if mark := m.of(path); mark != nil {
		return text{{mark: mark}}
	}
	return nil
}
