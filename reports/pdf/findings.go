package pdf

import (
	"strings"

	"driploop/reports"
	"driploop/reports/survey"
)

// summary lists the faults in a line each.
func (d *doc) summary(groups []*survey.Group) {
	for _, g := range groups {
		subjects := make([]string, len(g.Findings))
		for i, f := range g.Findings {
			subjects[i] = f.Subject
		}
		titles := d.wrap(g.Title, body, 82, 82)
		where := d.wrap(strings.Join(subjects, ", "), small, d.width-104, d.width-104)
		height := max(float64(len(titles))*body.leading(), float64(len(where))*small.leading()) + 1.6
		d.need(height)
		d.word(d.x(), d.y+.6, g.Severity.String())
		for i, line := range titles {
			d.use(face{sans, "", 9.5, link})
			d.SetXY(d.x()+20, d.y+.3+float64(i)*body.leading())
			d.CellFormat(82, body.leading(), line, "", 0, "L", false, d.link(g.ID), "")
		}
		for i, line := range where {
			d.use(small)
			d.SetXY(d.x()+104, d.y+.6+float64(i)*small.leading())
			d.CellFormat(0, small.leading(), line, "", 0, "L", false, 0, "")
		}
		d.y += height
		d.pen(rule, .15)
		d.Line(d.x(), d.y-.4, d.x()+d.width, d.y-.4)
	}
	d.y += 2
}

func (d *doc) groups(groups []*survey.Group) {
	for _, g := range groups {
		d.group(g)
	}
}

// group writes the findings of one rule.
func (d *doc) group(g *survey.Group) {
	d.skip(6)
	title := face{sans, "B", 11.5, ink}
	why := g.Why + " " + reports.Capital(g.Severity.String()) + ": " + g.Means + "."
	d.need(title.leading() + float64(d.lines(body, 0, why))*body.leading() + d.headHeight(g.Findings[0]) + 8)
	d.Bookmark(g.Title, 1, d.y)
	d.anchor(g.ID)
	d.fill(ground(g.Severity.String()))
	d.Rect(d.x(), d.y, d.width, .8, "F")
	d.y += 2.2
	used := d.word(d.x(), d.y+.4, g.Severity.String()) + 2
	for i, line := range d.wrap(g.Title, title, d.width-used, d.width-used) {
		if i > 0 {
			used = 0
		}
		d.line(title, used, line, "")
	}
	d.y += .6
	d.para(body, 0, why, "")
	for _, f := range g.Findings {
		d.finding(f)
	}
	d.y += 1
	d.remedy(g.Remedy)
	d.sources(g.Sources)
	d.need(small.leading())
	d.y += .6
	d.para(face{sans, "", 8, link}, 0, "Rule "+g.Rule, "rule-"+g.Rule)
}

// headHeight is that of what a finding begins with, which stays together.
func (d *doc) headHeight(f *survey.Finding) float64 {
	h := 3 + bold.leading()*float64(d.lines(bold, 4, f.Says)+1) + small.leading()*float64(d.lines(small, 4, f.Place))
	if f.Excerpt != nil {
		h += 8
	}
	return h + float64(len(f.Bars))*(body.leading()+3.5)
}

func (d *doc) finding(f *survey.Finding) {
	d.y += 1.5
	d.need(d.headHeight(f))
	d.anchor(f.ID)
	d.pen(rule, .2)
	d.Line(d.x(), d.y, d.x()+d.width, d.y)
	d.y += 1
	d.para(bold, 0, f.Subject, f.Drawn)
	d.para(body, 4, reports.Capital(f.Says)+".", "")
	d.para(small, 4, f.Place, "")
	if f.Excerpt != nil {
		d.excerpt(f.Excerpt, 4)
	}
	for _, b := range f.Bars {
		d.bar(b, 4)
	}
	for _, r := range f.Remarks {
		d.labelled(bold, r.Label, body, 4, r.Text)
	}
	if len(f.Related) > 0 {
		parts := make([]string, len(f.Related))
		for i, r := range f.Related {
			parts[i] = r.Role + ": " + r.Subject
			if r.Line > 0 {
				parts[i] += " (line " + itoa(r.Line) + ")"
			}
		}
		d.labelled(face{sans, "B", 8, soft}, "Has to do with", small, 4, strings.Join(parts, "; "))
	}
	d.remedy(f.Remedy)
	d.sources(f.Sources)
	if len(f.Working) > 0 {
		d.need(2 * small.leading())
		d.para(face{sans, "B", 8, ink}, 4, "How the figures were got", "")
		for _, w := range f.Working {
			d.figure(w, face{sans, "", 7.5, ink}, 7, true)
		}
	}
	if f.Part != "" {
		d.para(face{sans, "", 8, link}, 4, "All figures of "+f.Part, "working-"+f.Part)
	}
}

// excerpt shows the line of the record, the value marked.
func (d *doc) excerpt(e *survey.Excerpt, indent float64) {
	d.use(code)
	cell := d.GetStringWidth("n")
	height := code.leading() + .6
	across := max(int((d.column()-indent-4)/cell), 1)
	before, value, after := []rune(shown(e.Before)), []rune(shown(e.Value)), []rune(shown(e.After))
	all := append(append(append([]rune{}, before...), value...), after...)
	rows := (len(all) + across - 1) / across
	d.y += .8
	for row := range rows {
		d.need(height)
		from, to := row*across, min((row+1)*across, len(all))
		d.fill(tint)
		d.Rect(d.x()+indent, d.y, d.column()-indent, height, "F")
		if a, b := max(from, len(before)), min(to, len(before)+len(value)); a < b {
			d.fill(mark)
			d.Rect(d.x()+indent+2+float64(a-from)*cell, d.y, float64(b-a)*cell, height, "F")
		}
		d.use(code)
		d.SetXY(d.x()+indent+2, d.y)
		d.CellFormat(0, height, string(all[from:to]), "", 0, "L", false, 0, "")
		d.y += height
	}
	d.y += .8
}

// bar shows a figure against its limit.
func (d *doc) bar(b survey.Bar, indent float64) {
	text := "limit " + b.Limit
	if b.Measure {
		text = "at least " + b.Limit
		if b.AtMost {
			text = "at most " + b.Limit
		}
	}
	if b.Value != "" {
		text = b.Value + ", " + text
	}
	if b.Times != "" {
		text += " (" + b.Times + ")"
	}
	d.need(body.leading() + 4)
	d.labelled(bold, b.Name, body, indent, text)
	if !b.Measure {
		return
	}
	const width, height = 80.0, 1.8
	x := d.x() + indent
	d.fill(rule)
	d.Rect(x, d.y+.7, width, height, "F")
	d.fill(alarm)
	d.Rect(x, d.y+.7, width*b.Fill, height, "F")
	d.fill(ink)
	d.Rect(x+width*b.Mark, d.y, .8, height+1.4, "F")
	d.y += 4
}

func (d *doc) remedy(text string) {
	if text == "" {
		return
	}
	d.y += .6
	d.need(2 * body.leading())
	d.labelled(face{sans, "B", 9.5, good}, "Remedy", body, 4, text)
}

func (d *doc) sources(sources []survey.Source) {
	for i, s := range sources {
		d.need(2 * small.leading())
		if i == 0 {
			d.y += .6
			d.para(face{sans, "B", 8, ink}, 4, "Source", "")
		}
		d.bullets(face{sans, "", 8, ink}, 4, []string{s.Document})
		d.bullets(face{sans, "", 8, ink}, 8, s.Clauses)
	}
}

// figure writes the working of a figure in one paragraph.
func (d *doc) figure(f survey.Figure, look face, indent float64, whose bool) {
	name := reports.Capital(f.Name)
	if whose {
		name += " of " + f.Source
	}
	strong := look
	strong.style = "B"
	var b strings.Builder
	if len(f.Lacks) > 0 {
		b.WriteString("Missing: " + strings.Join(f.Lacks, "; ") + ". ")
	}
	for _, s := range f.Steps {
		b.WriteString(s.Formula + " [" + s.Source + "]: ")
		for i, in := range s.Inputs {
			if i > 0 {
				b.WriteString("; ")
			}
			b.WriteString(in.Symbol + " = " + in.Value + " from " + in.From)
		}
		b.WriteString(" gives " + s.Gives + ". ")
	}
	d.labelled(strong, d.clipTo(name+" = "+f.Value, strong, d.column()-indent), look, indent, strings.TrimSpace(b.String()))
}

func (d *doc) clipTo(text string, f face, width float64) string {
	d.use(f)
	return d.clip(text, width)
}
