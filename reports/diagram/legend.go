package diagram

import (
	"slices"

	"driploop/model/record"
	"driploop/model/verdict"
)

// legend explains the symbols, lines and marks that occur.
func (d *Diagram) legend() []item {
	items := d.legendSymbols()
	for _, s := range []struct {
		side side
		says string
	}{{distribution, "distribution"}, {control, "control"}, {returning, "return"}, {bonding, "bonding"}} {
		if slices.ContainsFunc(d.net.edges, func(e *edge) bool { return d.net.side(e) == s.side }) {
			items = append(items, sample(s.says, func(c Canvas, b symbolBox) {
				c.Line(Point{b.left, b.y}, Point{b.right, b.y}, penOf(s.side))
			}))
		}
	}
	if len(d.rec.Penetrations) > 0 {
		items = append(items, sample("penetration", func(c Canvas, b symbolBox) {
			m := b.mid()
			c.Line(Point{b.left, b.y}, Point{b.right, b.y}, penOf(distribution))
			c.Rect(Rect{m.X - 2, m.Y - holeHalf, 4, 2 * holeHalf}, 0, Paper, Pen{Ink: Symbol, Width: 1})
		}))
	}
	if len(d.plan.regions) > 0 {
		items = append(items, sample("space", func(c Canvas, b symbolBox) {
			c.Rect(Rect{b.left, b.y - 7, b.right - b.left, 14}, 0, bandInk(0), Pen{Ink: Edge, Width: 0.7, Dash: []float64{2, 2}})
		}))
	}
	return append(items, d.legendMarks()...)
}

// legendSymbols shows the symbol of each kind that occurs.
func (d *Diagram) legendSymbols() []item {
	var items []item
	for _, k := range record.Kinds() {
		if slices.ContainsFunc(d.rec.Components, func(c *record.Component) bool { return c.Kind.V == k.Name }) {
			items = append(items, sample(k.Name, func(c Canvas, b symbolBox) {
				paintSymbol(c, k.Name, b, lined(k), lined(k))
			}))
		}
	}
	return items
}

// lined tells whether the line of a conductor shows at the symbol of a kind.
func lined(k record.Kind) bool {
	return k.Protective || k.Switching && k.Name != "controller" || k.Name == "connector" || k.Name == "battery"
}

// legendMarks explains the marks that occur.
func (d *Diagram) legendMarks() []item {
	var items []item
	add := func(m *mark, says string) {
		t := text{{mark: m}, plain(says)}
		items = append(items, item{w: t.width(), h: 24, paint: func(c Canvas, at Point) { t.paint(c, Point{at.X, at.Y + 14}) }})
	}
	waived, several := false, false
	worst := map[verdict.Severity]bool{}
	for path := range d.words.marks.by {
		m := d.words.marks.of(path)
		worst[m.severity] = worst[m.severity] || m.breaches > 0
		several = several || m.breaches > 1
		waived = waived || m.breaches == 0
	}
	for s := verdict.Danger; ; s-- {
		if worst[s] {
			add(&mark{severity: s, breaches: 1}, s.String())
		}
		if s == verdict.Notice {
			break
		}
	}
	if several {
		t := text{plain("a number counts the findings, the letter is that of the worst")}
		items = append(items, item{w: t.width(), h: 24, paint: func(c Canvas, at Point) { t.paint(c, Point{at.X, at.Y + 14}) }})
	}
	if waived {
		add(&mark{severity: verdict.Notice}, "a breach that a waiver lets stand")
	}
	return items
}

// sample is a symbol with what it means.
func sample(says string, show func(c Canvas, b symbolBox)) item {
	t := text{plain(says)}
	return item{w: symbolWide + 5 + t.width(), h: 24, paint: func(c Canvas, at Point) {
		show(c, symbolBox{at.X, at.X + symbolWide, at.Y + 11})
		t.paint(c, Point{at.X + symbolWide + 5, at.Y + 14})
	}}
}
