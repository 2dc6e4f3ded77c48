package diagram

import (
	"cmp"
	"slices"
)

// Paint paints the whole diagram.
func (d *Diagram) Paint(c Canvas) {
	w, h := d.Size()
	c.Rect(Rect{0, 0, w, h}, 0, Paper, Pen{})
	d.paintTitle(shifted{c, margin, margin})
	d.plan.paint(shifted{c, margin + (d.width-d.plan.width)/2, margin + titleHeight})
	d.foot.paint(shifted{c, margin, margin + titleHeight + d.plan.height})
}

func (p *plan) paint(c Canvas) {
	regions := slices.Clone(p.regions)
	slices.SortStableFunc(regions, func(a, b *region) int { return cmp.Compare(p.size(b), p.size(a)) })
	for _, r := range regions {
		p.paintRegion(c, r)
	}
	for _, e := range p.net.edges {
		p.paintEdge(c, e)
	}
	for _, nd := range p.net.nodes {
		p.paintNode(c, nd)
	}
}

func (p *plan) paintRegion(c Canvas, r *region) {
	g := Group{Class: "space", Title: p.words.withFindings("space "+r.space.ID, r.space.Path), Area: Rect{0, p.rowTop[r.first.top], 1, 1}}
	if r.main {
		g.ID = AnchorOf(r.space.Path)
	}
	c.Open(g)
	outer, holes := outlines(p.areas(r))
	for _, ring := range outer {
		c.Polygon(ring, bandInk(r.index), Pen{Ink: Edge, Width: 0.7, Dash: []float64{2, 2}})
	}
	for _, ring := range holes {
		if p.holds(ring) {
			c.Polygon(ring, Paper, Pen{Ink: Edge, Width: 0.7, Dash: []float64{2, 2}})
		}
	}
	r.name(p.words).paint(c, Point{p.colX[r.first.col], p.rowTop[r.first.top] + smallSize + 1})
	c.Close()
}

// penOf is how the line of a conductor is drawn.
func penOf(s side) Pen {
	switch s {
	case control:
		return Pen{Ink: Wire, Width: 1.1, Dash: []float64{5, 2.5}}
	case returning:
		return Pen{Ink: Return, Width: 1.4}
	case bonding:
		return Pen{Ink: Return, Width: 1.1, Dash: []float64{8, 2.5, 1.5, 2.5}}
	}
	return Pen{Ink: Wire, Width: 1.4}
}

func (p *plan) paintEdge(c Canvas, e *edge) {
	l := p.labels[e]
	c.Open(Group{ID: AnchorOf(e.cond.Path), Class: "conductor", Title: p.words.conductorTitle(e.cond), Area: Rect{p.gapAfter(e.u.col).x, p.rowTop[e.row], 1, 1}})
	c.Polyline(p.path(e), penOf(p.net.side(e)))
	g := p.gapAfter(e.u.col)
	x, y := g.x+g.left+1, p.lineY[e.row]
	for i, line := range l.over {
		line.paint(c, Point{x, y - l.lift() - float64(len(l.over)-1-i)*lineHeight})
	}
	for i, line := range l.under {
		line.paint(c, Point{x, y + textGap + detailSize*ascent + float64(i)*lineHeight})
	}
	c.Close()
	for _, h := range l.holes {
		p.paintHole(c, h, y)
	}
}

// paintHole marks where a conductor goes through a panel.
func (p *plan) paintHole(c Canvas, h *holeMark, y float64) {
	g := Group{Class: "penetration", Title: p.words.holeTitle(h.hole), Area: Rect{h.x, y - tipHalf, 1, 1}}
	if h.main {
		g.ID = AnchorOf(h.hole.Path)
	}
	c.Open(g)
	c.Rect(Rect{h.x - 2, y - holeHalf, 4, 2 * holeHalf}, 0, Paper, Pen{Ink: Symbol, Width: 1})
	c.Line(Point{h.x - 2, y}, Point{h.x + 2, y}, Pen{Ink: Wire, Width: 1})
	down := y + holeHalf + textGap + smallSize*ascent - 1
	if h.tier > 0 {
		lower := down + float64(h.tier)*tierHeight
		c.Line(Point{h.x, y + holeHalf}, Point{h.x, lower - smallSize*ascent - 1}, Pen{Ink: Rule, Width: 0.6})
		down = lower
	}
	h.words.middle(c, Point{h.x, down})
	c.Close()
}

func (p *plan) paintNode(c Canvas, nd *node) {
	b := p.bodies[nd]
	c.Open(Group{ID: AnchorOf(nd.comp.Path), Class: "component", Title: p.words.componentTitle(nd.comp), Area: Rect{p.colX[nd.col], p.rowTop[nd.top], 1, 1}})
	top, bottom, half := p.extent(nd)
	x := p.symbolX(nd)
	middle := x + b.wide/2
	switch nd.shape {
	case bar:
		c.Rect(Rect{x, p.lineY[top] - half, b.wide, p.lineY[bottom] - p.lineY[top] + 2*half}, 1, Symbol, Pen{})
	case box:
		p.paintBox(c, nd)
	default:
		p.paintStuds(c, nd)
		p.paintLead(c, nd)
		left, right := len(nd.in) > 0, len(nd.out) > 0
		if nd.shape == inline {
			left, right = true, true
		} else if len(nd.in) == 0 {
			left = slices.ContainsFunc(nd.out, func(e *edge) bool { return e.behind })
		}
		paintSymbol(c, nd.kind.Name, symbolBox{x, x + b.wide, p.lineY[nd.row]}, left, right)
	}
	if nd.isSided() {
		at := Point{x + b.wide + textGap + 2, p.lineY[nd.row] + idSize*ascent/2 - 0.5}
		if len(b.side) > 1 {
			at.Y = p.lineY[nd.row] - 1.5
		}
		for _, line := range b.side {
			line.paint(c, at)
			at.Y += idSize + 0.5
		}
	}
	for i, line := range b.head {
		line.middle(c, Point{middle, p.lineY[top] - half - textGap - float64(len(b.head)-1-i)*lineHeight})
	}
	b.foot.middle(c, Point{middle, p.lineY[bottom] + half + textGap - 0.5 + detailSize*ascent})
	c.Close()
}

// paintStuds paints the bars beside a symbol on which more than one conductor
// lands, with a dot for each.
func (p *plan) paintStuds(c Canvas, nd *node) {
	land, row := func(e *edge) int { return e.land }, func(e *edge) int { return e.row }
	if from, to, stud := nd.studs(nd.in, land); stud {
		p.paintStud(c, nd, p.leftOf(nd), p.symbolX(nd), [2]int{from, to}, nd.in, land)
	}
	if from, to, stud := nd.studs(nd.out, row); stud {
		p.paintStud(c, nd, p.rightOf(nd), p.symbolX(nd)+p.bodies[nd].wide, [2]int{from, to}, nd.out, row)
	}
}

// paintLead paints the line from the back of a source down to its returns.
func (p *plan) paintLead(c Canvas, nd *node) {
	last := nd.leadRow()
	if last == nd.row {
		return
	}
	x, y := p.leadX(nd), p.lineY[nd.row]
	c.Polyline([]Point{{p.symbolX(nd), y}, {x, y}, {x, p.lineY[last]}}, penOf(returning))
	for _, e := range nd.out {
		if e.behind && e.row < last {
			c.Circle(Point{x, p.lineY[e.row]}, 1.9, Return, Pen{})
		}
	}
}

// paintStud paints one such bar at x, with the lead to the symbol.
func (p *plan) paintStud(c Canvas, nd *node, x, symbol float64, rows [2]int, edges []*edge, row func(*edge) int) {
	pen := penOf(p.net.side(edges[0]))
	pen.Dash = nil
	y := p.lineY[nd.row]
	c.Line(Point{x, y}, Point{symbol, y}, pen)
	c.Line(Point{x, p.lineY[rows[0]]}, Point{x, p.lineY[rows[1]]}, pen)
	for _, e := range edges {
		if !e.behind || e.v == nd {
			c.Circle(Point{x, p.lineY[row(e)]}, 1.9, pen.Ink, Pen{})
		}
	}
}

// paintBox paints a frame with the names of the terminals and the symbol within.
func (p *plan) paintBox(c Canvas, nd *node) {
	b := p.bodies[nd]
	x := p.symbolX(nd)
	c.Rect(Rect{x, p.lineY[nd.top] - overBar, b.wide, p.lineY[nd.bottom] - p.lineY[nd.top] + 2*overBar}, 2, Paper, thin())
	const down = smallSize*ascent/2 - 0.5
	for _, e := range nd.in {
		b.left[e.vTerm].paint(c, Point{x + 3, p.lineY[e.land] + down})
	}
	for _, e := range nd.out {
		name := b.right[e.uTerm]
		name.paint(c, Point{x + b.wide - 3 - name.width(), p.lineY[e.row] + down})
	}
	middle := x + 5 + b.inner[0] + symbolWide/2
	y := (p.lineY[nd.top] + p.lineY[nd.bottom]) / 2
	paintSymbol(c, nd.kind.Name, symbolBox{middle - symbolWide/2, middle + symbolWide/2, y}, false, false)
}
