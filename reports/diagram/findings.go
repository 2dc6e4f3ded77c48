package diagram

import (
	"driploop/model/verdict"
)

// findings lists what the marks stand for, in as many columns as there is room
// for, worst first.
func (d *Diagram) findings() []item {
	const least = 300
	columns := max(1, int((d.width+itemGap)/(least+itemGap)))
	w := (d.width - itemGap*float64(columns-1)) / float64(columns)
	var items []item
	for s := verdict.Danger; ; s-- {
		for i := range d.verdicts {
			v := &d.verdicts[i]
			if v.Severity == s && (v.Outcome == verdict.Breach || v.Outcome == verdict.Waived) {
				items = append(items, d.finding(v, w))
			}
		}
		if s == verdict.Notice {
			return items
		}
	}
}

// finding is one verdict in words, linked to what it is about.
func (d *Diagram) finding(v *verdict.Verdict, w float64) item {
	m := &mark{severity: v.Severity}
	if v.Outcome == verdict.Breach {
		m.breaches = 1
	}
	head := text{{mark: m}, bold(v.Subject)}.clipped(w)
	lines := wrap(clean(d.words.marks.line(v)), detailSize, w)
	of := Group{ID: FindingAnchor(v, d.rec), Class: "finding"}
	if a := d.Anchor(v.Subject); a != "" {
		of.Href = "#" + a
	}
	h := 13 + 11*float64(len(lines))
	return item{w: w, h: h, paint: func(c Canvas, at Point) {
		g := of
		g.Area = Rect{at.X, at.Y, w, h}
		c.Open(g)
		head.paint(c, Point{at.X, at.Y + 9})
		for i, line := range lines {
			c.Text(Point{at.X, at.Y + 20 + 11*float64(i)}, line, Type{Ink: Words, Size: detailSize})
		}
		c.Close()
	}}
}
