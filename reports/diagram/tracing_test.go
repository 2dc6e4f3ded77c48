package diagram_test

import (
	"math"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"driploop/reports/diagram"
)

// tracing is a canvas that notes what is painted on it.
type tracing struct {
	open  []diagram.Group
	ids   map[string]int
	texts []tracedText
	lines []tracedLine
	page  diagram.Rect
	area  diagram.Rect // around all that was painted
	faces map[bool]font.Face
}

type tracedText struct {
	text string
	box  diagram.Rect
}

// tracedLine is a piece of a line, and what it belongs to.
type tracedLine struct {
	of       diagram.Group
	from, to diagram.Point
	poly     int // number of the polyline that it is a piece of
}

func trace(d *diagram.Diagram) *tracing {
	t := &tracing{ids: map[string]int{}, faces: map[bool]font.Face{}}
	for isBold, ttf := range map[bool][]byte{false: goregular.TTF, true: gobold.TTF} {
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			panic(err)
		}
		if t.faces[isBold], err = opentype.NewFace(parsed, &opentype.FaceOptions{Size: 100, DPI: 72}); err != nil {
			panic(err)
		}
	}
	w, h := d.Size()
	t.page = diagram.Rect{W: w, H: h}
	t.area = diagram.Rect{X: w / 2, Y: h / 2}
	d.Paint(t)
	return t
}

// group is the innermost group of a class that anchors something.
func (t *tracing) group() diagram.Group {
	if len(t.open) == 0 {
		return diagram.Group{}
	}
	return t.open[len(t.open)-1]
}

func (t *tracing) Open(g diagram.Group) {
	t.open = append(t.open, g)
	if g.ID != "" {
		t.ids[g.ID]++
	}
}
func (t *tracing) Close() { t.open = t.open[:len(t.open)-1] }

func (t *tracing) Line(from, to diagram.Point, p diagram.Pen) {
	t.Polyline([]diagram.Point{from, to}, p)
}

func (t *tracing) Polyline(points []diagram.Point, _ diagram.Pen) {
	poly := len(t.lines)
	for i := 1; i < len(points); i++ {
		t.lines = append(t.lines, tracedLine{of: t.group(), from: points[i-1], to: points[i], poly: poly})
	}
	for _, p := range points {
		t.cover(diagram.Rect{X: p.X, Y: p.Y})
	}
}

func (t *tracing) Polygon(points []diagram.Point, _ diagram.Ink, p diagram.Pen) {
	t.Polyline(append(append([]diagram.Point{}, points...), points[0]), p)
}

// Rect notes the sides of frames: a text may stand in one, but not across.
func (t *tracing) Rect(r diagram.Rect, _ float64, _ diagram.Ink, p diagram.Pen) {
	t.cover(r)
	if p.Ink != "" {
		a, b := diagram.Point{X: r.X, Y: r.Y}, diagram.Point{X: r.X + r.W, Y: r.Y + r.H}
		t.Polyline([]diagram.Point{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}, a}, p)
	}
}

func (t *tracing) Circle(c diagram.Point, r float64, _ diagram.Ink, _ diagram.Pen) {
	t.cover(diagram.Rect{X: c.X - r, Y: c.Y - r, W: 2 * r, H: 2 * r})
}

func (t *tracing) Arc(diagram.Point, float64, float64, float64, diagram.Pen) {}

// Text measures with the faces of the font library, kerning aside, and takes the
// height of capitals and descenders.
func (t *tracing) Text(at diagram.Point, text string, s diagram.Type) {
	var advance fixed.Int26_6
	for _, r := range text {
		a, ok := t.faces[s.Bold].GlyphAdvance(r)
		if !ok {
			a = fixed.I(100)
		}
		advance += a
	}
	w := float64(advance) / 64 / 100 * s.Size
	x := at.X
	switch s.Anchor {
	case diagram.Middle:
		x -= w / 2
	case diagram.End:
		x -= w
	}
	box := diagram.Rect{X: x, Y: at.Y - 0.72*s.Size, W: w, H: 0.9 * s.Size}
	t.texts = append(t.texts, tracedText{text, box})
	t.cover(box)
}

func (t *tracing) cover(r diagram.Rect) {
	right, bottom := math.Max(t.area.X+t.area.W, r.X+r.W), math.Max(t.area.Y+t.area.H, r.Y+r.H)
	t.area.X, t.area.Y = math.Min(t.area.X, r.X), math.Min(t.area.Y, r.Y)
	t.area.W, t.area.H = right-t.area.X, bottom-t.area.Y
}

// overlaps lists the pairs of texts that run into each other.
func (t *tracing) overlaps() []string {
	var found []string
	for i, a := range t.texts {
		for _, b := range t.texts[i+1:] {
			if meet(a.box, b.box) {
				found = append(found, a.text+" | "+b.text)
			}
		}
	}
	return found
}

func meet(a, b diagram.Rect) bool {
	const slack = 0.05
	return a.X+slack < b.X+b.W && b.X+slack < a.X+a.W && a.Y+slack < b.Y+b.H && b.Y+slack < a.Y+a.H
}

// crossed lists the texts that a line runs through.
func (t *tracing) crossed() []string {
	var found []string
	for _, text := range t.texts {
		for _, l := range t.lines {
			if through(text.box, l.from, l.to) {
				found = append(found, text.text+" by a line of "+l.of.Class+" "+l.of.ID)
			}
		}
	}
	return found
}

// through tells whether a line passes a box, by cutting it to the box's sides.
func through(r diagram.Rect, a, b diagram.Point) bool {
	const slack = 0.3
	from, to := 0.0, 1.0
	for _, side := range [][2]float64{
		{a.X - b.X, a.X - r.X - slack},
		{b.X - a.X, r.X + r.W - slack - a.X},
		{a.Y - b.Y, a.Y - r.Y - slack},
		{b.Y - a.Y, r.Y + r.H - slack - a.Y},
	} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return false
		case p < 0:
			from = math.Max(from, q/p)
		case p > 0:
			to = math.Min(to, q/p)
		}
	}
	return from < to
}

// conductors are the polylines of conductors, by anchor.
func (t *tracing) conductors() map[string][]tracedLine {
	all := map[string][]tracedLine{}
	for _, l := range t.lines {
		if l.of.Class == "conductor" && strings.HasPrefix(l.of.ID, "draw-conductors.") {
			all[l.of.ID] = append(all[l.of.ID], l)
		}
	}
	return all
}
