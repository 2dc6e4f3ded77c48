package diagram

import (
	"slices"
	"strings"

	"driploop/model/record"
)

// foot is what stands below the lines: what they could not show, the legend,
// the findings and the caution.
type foot struct {
	items  []item
	height float64
}

// item is a part of the foot and where it stands.
type item struct {
	x, y, w, h float64
	paint      func(c Canvas, at Point) // at its upper left corner
}

const (
	itemGap    = 14.0
	sectionGap = 12.0
)

func newFoot(d *Diagram) *foot {
	f := &foot{height: sectionGap}
	f.section(d, "NOT ON A LINE ABOVE", d.shelf())
	f.section(d, "CONDUCTORS NOT DRAWN AS LINES", d.hiddenConductors())
	f.section(d, "PENETRATIONS THAT NO LINE ABOVE PASSES", d.hiddenHoles())
	f.section(d, "SPACES WITHOUT A COMPONENT ABOVE", d.hiddenSpaces())
	f.section(d, "FINDINGS THAT CONCERN NO ONE PART", d.otherFindings())
	f.section(d, "LEGEND", d.legend())
	if !d.options.Embedded {
		if !d.options.Unlisted {
			f.section(d, "FINDINGS", d.findings())
		}
		f.caution(d)
	}
	return f
}

func (f *foot) paint(c Canvas) {
	for _, it := range f.items {
		it.paint(c, Point{it.x, it.y})
	}
}

// section adds items below a heading, as many in a line as there is room for.
func (f *foot) section(d *Diagram, heading string, items []item) {
	if len(items) == 0 {
		return
	}
	f.items = append(f.items, item{y: f.height, paint: func(c Canvas, at Point) {
		c.Line(at, Point{at.X + d.width, at.Y}, Pen{Ink: Rule, Width: 0.7})
		c.Text(Point{at.X, at.Y + 11}, heading, Type{Ink: Faint, Size: smallSize, Bold: true})
	}})
	x, y, tallest := 0.0, f.height+17, 0.0
	for _, it := range items {
		if x > 0 && x+it.w > d.width {
			x, y, tallest = 0, y+tallest+3, 0
		}
		it.x, it.y = x, y
		f.items = append(f.items, it)
		x += it.w + itemGap
		tallest = max(tallest, it.h)
	}
	f.height = y + tallest + sectionGap
}

// caution adds the caution line.
func (f *foot) caution(d *Diagram) {
	if d.options.Caution == "" {
		return
	}
	lines := wrap(d.options.Caution, detailSize, d.width)
	f.items = append(f.items, item{y: f.height, paint: func(c Canvas, at Point) {
		c.Line(at, Point{at.X + d.width, at.Y}, Pen{Ink: Rule, Width: 0.7})
		for i, line := range lines {
			c.Text(Point{at.X, at.Y + 12 + float64(i)*12}, line, Type{Ink: Words, Size: detailSize})
		}
	}})
	f.height += 14 + float64(len(lines))*12
}

// shelf holds the components on no drawn conductor.
func (d *Diagram) shelf() []item {
	var items []item
	for _, nd := range d.net.apart {
		lines := []text{append(d.words.marks.piece(nd.comp.Path), bold(nd.comp.ID)).clipped(mostSide)}
		var second text
		second = append(second, d.words.detail(nd.comp)...)
		if nd.comp.Space.Is() {
			second = append(second, small("in "+nd.comp.Space.V))
		}
		w := lines[0].width()
		if len(second) > 0 {
			second = second.clipped(mostSide)
			lines = append(lines, second)
			w = max(w, second.width())
		}
		items = append(items, item{w: symbolWide + 4 + w, h: 26, paint: func(c Canvas, at Point) {
			c.Open(Group{ID: AnchorOf(nd.comp.Path), Class: "component", Title: d.words.componentTitle(nd.comp), Area: Rect{at.X, at.Y, 1, 1}})
			paintSymbol(c, nd.kind.Name, symbolBox{at.X, at.X + symbolWide, at.Y + 11}, false, false)
			for i, line := range lines {
				line.paint(c, Point{at.X + symbolWide + 4, at.Y + 9 + 11*float64(i)})
			}
			c.Close()
		}})
	}
	return items
}

// chip is one line of text that stands for an entry of the record.
func chip(t text, of Group) item {
	return item{w: t.width(), h: 12, paint: func(c Canvas, at Point) {
		g := of
		g.Area = Rect{at.X, at.Y, t.width(), 12}
		c.Open(g)
		t.paint(c, Point{at.X, at.Y + 9})
		c.Close()
	}}
}

func (d *Diagram) hiddenConductors() []item {
	var items []item
	for _, cond := range d.net.hidden {
		t, _ := d.words.lines(cond)
		items = append(items, chip(t, Group{ID: AnchorOf(cond.Path), Class: "conductor", Title: d.words.conductorTitle(cond)}))
	}
	return items
}

func (d *Diagram) hiddenHoles() []item {
	shown := map[*record.Penetration]bool{}
	for _, l := range d.plan.labels {
		for _, h := range l.holes {
			shown[h.hole] = true
		}
	}
	var items []item
	for _, p := range d.rec.Penetrations {
		if !shown[p] {
			t := append(d.words.marks.piece(p.Path), bold(p.ID))
			if p.From.Is() && p.To.Is() {
				t = append(t, small(p.From.V+" to "+p.To.V))
			}
			items = append(items, chip(t.clipped(280), Group{ID: AnchorOf(p.Path), Class: "penetration", Title: d.words.holeTitle(p)}))
		}
	}
	return items
}

func (d *Diagram) hiddenSpaces() []item {
	var items []item
	for i, s := range d.rec.Spaces {
		if slices.ContainsFunc(d.plan.regions, func(r *region) bool { return r.index == i }) {
			continue
		}
		t := append(d.words.marks.piece(s.Path), plain(s.ID)).clipped(280)
		items = append(items, chip(t, Group{ID: AnchorOf(s.Path), Class: "space", Title: d.words.withFindings("space "+s.ID, s.Path)}))
	}
	return items
}

// isDrawn tells whether an entry of that path has an anchor.
func isDrawn(path string) bool {
	kind, id, found := strings.Cut(path, ".")
	return found && id != "" && slices.Contains([]string{"components", "conductors", "penetrations", "spaces"}, kind)
}

// otherFindings are marks of what no entry drawn stands for.
func (d *Diagram) otherFindings() []item {
	var items []item
	seen := map[string]bool{}
	for i := range d.verdicts {
		path := entryOf(d.verdicts[i].Subject)
		if seen[path] || isDrawn(path) {
			continue
		}
		seen[path] = true
		if m := d.words.marks.of(path); m != nil {
			items = append(items, chip(text{{mark: m}, plain(path)}.clipped(280), Group{Class: "finding", Title: m.title}))
		}
	}
	return items
}

// wrap breaks a text into lines of a width.
func wrap(s string, size, most float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && width(line+" "+word, size, false) > most {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += clip(word, size, false, most)
	}
	return append(lines, line)
}
