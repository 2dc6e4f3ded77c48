// Package pdf writes a survey report as a PDF document: with outline, links,
// embedded fonts and a vector diagram, the same bytes for the same record.
package pdf

import (
	"io"
	"strings"
	"time"

	"driploop/reports"
	"driploop/reports/diagram"
	"driploop/reports/survey"
)

// Write writes one report. A time is printed, and stands in the document, only if
// it is given.
func Write(w io.Writer, s *survey.Survey, at time.Time) error {
	return build(s, at).Output(w)
}

func build(s *survey.Survey, at time.Time) *doc {
	d := newDoc(s.Title, at)
	d.front(s)
	if len(s.Findings) > 0 {
		d.chapter("What to fix first")
		d.summary(s.Findings)
		d.groups(s.Findings)
	}
	if len(s.Waived) > 0 {
		d.chapter("Waived")
		d.para(small, 0, "Someone lets these faults stand. They are faults all the same.", "")
		d.groups(s.Waived)
	}
	d.questions(s.Questions)
	d.schedule(s.Schedule)
	d.coverage(s.Coverage)
	d.chapter("Cautions")
	d.bullets(body, 0, s.Cautions)
	d.chapter("Provenance")
	d.para(body, 0, "The same record, rules and version give the same report, byte for byte.", "")
	d.facts(s.Origin, 1)
	d.drawing(s)
	d.working(s.Schedule.Parts)
	return d
}

// chapter begins a part of the report.
func (d *doc) chapter(title string) {
	d.skip(9)
	d.need(45)
	d.Bookmark(title, 0, d.y)
	d.pen(ink, .6)
	d.Line(d.x(), d.y, d.x()+d.width, d.y)
	d.y += 2
	d.para(face{sans, "B", 14, ink}, 0, title, "")
	d.y += 1.5
}

// section begins a part of a chapter; room is what has to stand below it on the
// same page.
func (d *doc) section(title, about string, room float64) {
	d.skip(4)
	f := face{sans, "B", 10.5, ink}
	d.need(2*f.leading() + room)
	d.Bookmark(title, 1, d.y)
	d.labelled(f, title, small, 0, about)
	d.y += 1
}

func (d *doc) front(s *survey.Survey) {
	d.Bookmark("Verdict", 0, d.y)
	d.para(small, 0, "Survey report from an installation record", "")
	d.para(face{sans, "B", 19, ink}, 0, s.Name, "")
	d.y += 3
	d.headline(s.Verdict)
	d.counts(s.Counts)
	d.facts(s.Facts, 2)
	d.y += 2
	d.box(s.Cautions[0])
	for _, note := range s.Notes {
		d.box(note)
	}
}

func (d *doc) headline(h survey.Headline) {
	f := face{sans, "B", 12, ink}
	lines := d.wrap(h.Says, f, d.width-10, d.width-10)
	height := float64(len(lines))*f.leading() + 6
	d.fill(tint)
	d.Rect(d.x(), d.y, d.width, height, "F")
	d.fill(ground(h.Mark))
	d.Rect(d.x(), d.y, 3, height, "F")
	d.y += 3
	for _, line := range lines {
		d.line(f, 6, line, "")
	}
	d.y += 6
}

func (d *doc) counts(counts []survey.Count) {
	width := d.width / float64(len(counts))
	const height = 15.0
	for i, c := range counts {
		x := d.x() + float64(i)*width
		d.pen(rule, .2)
		d.Rect(x, d.y, width-2, height, "D")
		d.use(face{sans, "B", 14, ink})
		d.SetXY(x+2, d.y+1)
		number := itoa(c.Number)
		d.CellFormat(0, 6.5, number, "", 0, "L", false, 0, "")
		at := d.GetStringWidth(number) + 1.2
		d.use(face{sans, "", 8.5, ink})
		d.SetXY(x+2+at, d.y+1.6)
		d.CellFormat(0, 6.5, c.Word, "", 0, "L", false, 0, "")
		means := face{sans, "", 6.5, soft}
		for n, line := range d.wrap(c.Means, means, width-5, width-5) {
			d.SetXY(x+2, d.y+7.6+float64(n)*means.leading())
			d.CellFormat(0, means.leading(), line, "", 0, "L", false, 0, "")
		}
	}
	d.y += height + 4
}

// facts writes labelled texts in so many columns.
func (d *doc) facts(facts []reports.Labelled, number int) {
	width := d.column() / float64(number)
	label := 27.0
	if number == 1 {
		label = 38
	}
	for i := 0; i < len(facts); i += number {
		line := facts[i:min(i+number, len(facts))]
		most := 1
		for _, f := range line {
			most = max(most, len(d.wrap(f.Text, body, width-label-3, width-label-3)))
		}
		d.need(float64(most) * body.leading())
		for n, f := range line {
			x := d.x() + float64(n)*width
			d.use(face{sans, "", 9.5, soft})
			d.SetXY(x, d.y)
			d.CellFormat(label, body.leading(), shown(f.Label), "", 0, "L", false, 0, "")
			for k, text := range d.wrap(f.Text, body, width-label-3, width-label-3) {
				d.SetXY(x+label, d.y+float64(k)*body.leading())
				d.CellFormat(width-label, body.leading(), text, "", 0, "L", false, 0, "")
			}
		}
		d.y += float64(most)*body.leading() + .6
	}
}

// box writes a text in a frame.
func (d *doc) box(text string) {
	f := face{sans, "", 8.5, ink}
	lines := d.wrap(text, f, d.width-6, d.width-6)
	height := float64(len(lines))*f.leading() + 4
	d.need(height)
	d.fill(tint)
	d.pen(rule, .2)
	d.Rect(d.x(), d.y, d.width, height, "FD")
	d.y += 2
	for _, line := range lines {
		d.line(f, 3, line, "")
	}
	d.y += 4
}

// word writes a signal word on its colour, and returns the room that it took.
func (d *doc) word(x, y float64, severity string) float64 {
	d.use(face{sans, "B", 6.8, onGround(severity)})
	text := strings.ToUpper(severity)
	width := d.GetStringWidth(text) + 3
	d.fill(ground(severity))
	d.Rect(x, y, width, 3.9, "F")
	d.SetXY(x, y)
	d.CellFormat(width, 3.9, text, "", 0, "C", false, 0, "")
	return width
}

// ground is the colour that a mark stands on, after ANSI Z535.
func ground(name string) colour {
	switch name {
	case "danger":
		return alarm
	case "warning":
		return colour{232, 131, 12}
	case "caution":
		return colour{242, 207, 46}
	case "notice":
		return colour{29, 95, 166}
	case "open":
		return colour{106, 76, 147}
	}
	return good
}

func onGround(name string) colour {
	if name == "warning" || name == "caution" {
		return ink
	}
	return colour{255, 255, 255}
}

// Scales of a drawing, in mm by unit, and the papers that it may stand on.
const (
	largestScale  = 0.32
	smallestScale = 0.19 // what a page of A4 has to reach, or A3 is taken
)

// drawing writes the diagram on a page of its own, on A3 if it is too small on A4.
func (d *doc) drawing(s *survey.Survey) {
	wide, high := s.Diagram.Size()
	turn := "P"
	width, height := 210.0, 297.0
	if wide > high {
		turn, width, height = "L", height, width
	}
	paper := "A4"
	const edge, head = 12.0, 14.0
	fit := func() float64 {
		return min((width-2*edge)/wide, (height-2*edge-head-8)/high, largestScale)
	}
	if fit() < smallestScale {
		paper, width, height = "A3", width*1.4142, height*1.4142
	}
	d.AddPageFormat(turn, d.GetPageSizeStr(paper))
	d.y = edge
	d.Bookmark("Diagram", 0, d.y)
	d.use(face{sans, "B", 14, ink})
	d.SetXY(edge, d.y)
	d.CellFormat(0, 7, "Diagram", "", 0, "L", false, 0, "")
	s.Diagram.Paint(diagram.NewPDF(d.Fpdf, edge, edge+head, fit(), diagram.PDFLinks{To: d.link, At: d.placed}))
	d.y = height // nothing more stands on this page
}
