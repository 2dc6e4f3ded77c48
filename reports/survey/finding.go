package survey

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/diagram"
)

// groups gathers breaches by rule, worst first.
func (b *builder) groups(kind string, all []*verdict.Verdict) []*Group {
	var out []*Group
	for _, group := range reports.ByRule(all) {
		first := group[0]
		g := &Group{
			ID: b.anchor(kind + "-" + strings.ReplaceAll(first.Rule.ID, "/", ".")), Rule: first.Rule.ID, Severity: first.Severity,
			Means: reports.Consequence(first.Severity), Title: reports.Flow(first.Rule.Title), Why: reports.Flow(first.Rule.Why),
		}
		for _, v := range group {
			g.Findings = append(g.Findings, b.finding(v))
		}
		g.share()
		out = append(out, g)
	}
	return out
}

// share says once what all findings of a group have in common.
func (g *Group) share() {
	first := g.Findings[0]
	same := func(equal func(f *Finding) bool) bool {
		return !slices.ContainsFunc(g.Findings, func(f *Finding) bool { return !equal(f) })
	}
	if same(func(f *Finding) bool { return f.Remedy == first.Remedy }) {
		g.Remedy = first.Remedy
		for _, f := range g.Findings {
			f.Remedy = ""
		}
	}
	equal := func(a, b Source) bool { return a.Document == b.Document && slices.Equal(a.Clauses, b.Clauses) }
	if same(func(f *Finding) bool { return slices.EqualFunc(f.Sources, first.Sources, equal) }) {
		g.Sources = first.Sources
		for _, f := range g.Findings {
			f.Sources = nil
		}
	}
}

func (b *builder) finding(v *verdict.Verdict) *Finding {
	f := &Finding{
		ID: b.anchor(diagram.FindingAnchor(v, b.Record)), Subject: reports.Plain(v.Subject), Place: b.place(v.At), Severity: v.Severity,
		Says: b.say(v, v.Says), Remedy: b.say(v, v.Remedy), Sources: sources(v), Remarks: b.remarks(v), Drawn: b.diagram.Anchor(v.Subject),
	}
	if before, value, after, ok := b.Source.Cut(v.At); ok {
		f.Excerpt = &Excerpt{before, value, after}
	}
	for _, limit := range v.Limit {
		f.Bars = append(f.Bars, b.bar(v, limit))
	}
	for _, r := range v.Related {
		f.Related = append(f.Related, Related{reports.Plain(r.Role), reports.Plain(r.Subject), r.At.Start.Line, b.diagram.Anchor(r.Subject)})
	}
	f.Working = b.behind(v)
	if part := entryOf(v.Subject); b.schedule.part(part) != nil {
		f.Part = reports.Plain(part)
	}
	return f
}

// place is file, line and column; the file alone where the rest is not known.
func (b *builder) place(at verdict.Range) string {
	if at.Start.Line < 1 {
		return reports.Plain(b.Judged.Path)
	}
	return reports.Plain(reports.Place(b.Judged.Path, at.Start))
}

func (b *builder) say(v *verdict.Verdict, template string) string {
	return reports.Plain(v.Text(reports.Flow(template), b.show(v)))
}

func (b *builder) show(v *verdict.Verdict) func(verdict.Figure) string {
	show := v.Show(b.Units)
	return func(f verdict.Figure) string {
		if f.Text != "" {
			return show(f)
		}
		return reports.Glued(show(f))
	}
}

// bar sets a limit against the figure of the same name.
func (b *builder) bar(v *verdict.Verdict, limit verdict.Figure) Bar {
	show := b.show(v)
	bar := Bar{Name: reports.Plain(reports.Spaced(limit.Name)), Limit: reports.Plain(show(limit))}
	i := slices.IndexFunc(v.Figures, func(f verdict.Figure) bool { return f.Name == limit.Name })
	if i < 0 {
		return bar
	}
	figure := v.Figures[i]
	bar.Value = reports.Plain(show(figure))
	found, allowed := figure.Quantity.Base, limit.Quantity.Base
	if figure.Text != "" || limit.Text != "" || found < 0 || allowed < 0 || found == allowed {
		return bar
	}
	bar.Measure = true
	bar.AtMost = found > allowed
	scale := 1.1 * max(found, allowed)
	bar.Fill, bar.Mark = found/scale, allowed/scale
	if allowed > 0 {
		bar.Times = strconv.FormatFloat(100*found/allowed, 'f', 0, 64) + "% of the limit"
	}
	return bar
}

// sources lists what a verdict rests on, each document once with its clauses.
func sources(v *verdict.Verdict) []Source {
	var all []Source
	var last verdict.Cited
	for i, c := range v.Sources {
		if i == 0 || c.Source != last.Source || c.Set != last.Set || c.Clause == "" {
			all = append(all, Source{Document: reports.Document(c)})
		}
		if clause := reports.Clause(c); clause != "" {
			at := &all[len(all)-1]
			at.Clauses = append(at.Clauses, clause)
		}
		last = c
	}
	return all
}

func (b *builder) remarks(v *verdict.Verdict) []reports.Labelled {
	var all []reports.Labelled
	add := func(label, text string) {
		all = append(all, reports.Labelled{Label: label, Text: reports.Plain(text)})
	}
	if w := v.Waiver; w != nil {
		add("Waived", fmt.Sprintf("by %s until %s: %s", orNobody(w.By), orNobody(w.Until), w.Reason))
	}
	if r := v.Recast; r != nil {
		way := "lowered"
		if v.Severity > r.From {
			way = "raised"
		}
		add("Severity", fmt.Sprintf("%s from %s by %s: %s", way, r.From, r.Where, reports.Flow(r.Why)))
	}
	return all
}

func orNobody(text string) string {
	if text == "" {
		return "(not said)"
	}
	return text
}

// entryOf is the entry of the record that a path lies in: of
// "conductors.P1.ends.from" it is "conductors.P1".
func entryOf(path string) string {
	collection, rest, found := strings.Cut(path, ".")
	if !found {
		return path
	}
	id, _, _ := strings.Cut(rest, ".")
	return collection + "." + id
}
