package diagram

import (
	"slices"
	"strconv"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// PDFLinks ties a diagram to the rest of a document. Either may be nil, and 0 is
// no link.
type PDFLinks struct {
	To func(href string) int // the link to follow from a mark, such as to "#finding-…"
	At func(id string) int   // the link that leads to a group of the diagram
}

// pdfFont is the family under which the fonts of diagrams are registered.
const pdfFont = "diagram"

// pdf is a canvas on the current page of a document.
type pdf struct {
	doc         *fpdf.Fpdf
	x, y, scale float64
	perPoint    float64 // units of the document
	links       PDFLinks
	colours     map[Ink]string
}

// NewPDF returns a canvas on the current page of a document: its origin at x and
// y, a unit of the diagram as large as scale, all in units of the document.
func NewPDF(doc *fpdf.Fpdf, x, y, scale float64, links PDFLinks) Canvas {
	// The library writes into the fonts that it is given.
	doc.AddUTF8FontFromBytes(pdfFont, "", slices.Clone(goregular.TTF))
	doc.AddUTF8FontFromBytes(pdfFont, "B", slices.Clone(gobold.TTF))
	colours := map[Ink]string{}
	for _, s := range shades() {
		colours[s.ink] = s.light
	}
	return &pdf{doc: doc, x: x, y: y, scale: scale, perPoint: doc.PointConvert(1), links: links, colours: colours}
}

func (p *pdf) at(q Point) (x, y float64) { return p.x + q.X*p.scale, p.y + q.Y*p.scale }

// rgb is the colour of an ink on paper.
func (p *pdf) rgb(ink Ink) (r, g, b int) {
	v, err := strconv.ParseUint(p.colours[ink], 16, 32)
	if err != nil {
		panic("diagram: no colour for ink " + string(ink))
	}
	return int(v >> 16), int(v >> 8 & 0xff), int(v & 0xff)
}

// style sets fill and pen, and returns how to draw with them.
func (p *pdf) style(fill Ink, pen Pen) string {
	how := ""
	if fill != "" {
		p.doc.SetFillColor(p.rgb(fill))
		how = "F"
	}
	if pen.Ink != "" {
		p.doc.SetDrawColor(p.rgb(pen.Ink))
		p.doc.SetLineWidth(pen.Width * p.scale)
		dash := make([]float64, len(pen.Dash))
		for i, d := range pen.Dash {
			dash[i] = d * p.scale
		}
		p.doc.SetDashPattern(dash, 0)
		how += "D"
	}
	return how
}

func (p *pdf) Open(g Group) {
	if g.ID != "" && p.links.At != nil {
		if link := p.links.At(g.ID); link != 0 {
			_, y := p.at(Point{g.Area.X, g.Area.Y})
			p.doc.SetLink(link, y, p.doc.PageNo())
		}
	}
	if g.Href != "" && p.links.To != nil {
		if link := p.links.To(g.Href); link != 0 {
			x, y := p.at(Point{g.Area.X, g.Area.Y})
			p.doc.Link(x, y, g.Area.W*p.scale, g.Area.H*p.scale, link)
		}
	}
}

func (p *pdf) Close() {}

func (p *pdf) Line(from, to Point, pen Pen) { p.Polyline([]Point{from, to}, pen) }

func (p *pdf) Polyline(points []Point, pen Pen) {
	how := p.style("", pen)
	if how == "" || len(points) == 0 {
		return
	}
	p.doc.MoveTo(p.at(points[0]))
	for _, q := range points[1:] {
		p.doc.LineTo(p.at(q))
	}
	p.doc.DrawPath(how)
}

func (p *pdf) Polygon(points []Point, fill Ink, pen Pen) {
	how := p.style(fill, pen)
	if how == "" {
		return
	}
	corners := make([]fpdf.PointType, len(points))
	for i, q := range points {
		corners[i].X, corners[i].Y = p.at(q)
	}
	p.doc.Polygon(corners, how)
}

func (p *pdf) Rect(r Rect, radius float64, fill Ink, pen Pen) {
	how := p.style(fill, pen)
	if how == "" {
		return
	}
	x, y := p.at(Point{r.X, r.Y})
	if radius > 0 {
		p.doc.RoundedRect(x, y, r.W*p.scale, r.H*p.scale, radius*p.scale, "1234", how)
		return
	}
	p.doc.Rect(x, y, r.W*p.scale, r.H*p.scale, how)
}

func (p *pdf) Circle(c Point, radius float64, fill Ink, pen Pen) {
	if how := p.style(fill, pen); how != "" {
		x, y := p.at(c)
		p.doc.Circle(x, y, radius*p.scale, how)
	}
}

// Arc turns the angles: those of the library run counter-clockwise.
func (p *pdf) Arc(c Point, radius, from, to float64, pen Pen) {
	if how := p.style("", pen); how != "" {
		x, y := p.at(c)
		p.doc.Arc(x, y, radius*p.scale, radius*p.scale, 0, -from-turn(from, to), -from, how)
	}
}

func (p *pdf) Text(at Point, text string, t Type) {
	style := ""
	if t.Bold {
		style = "B"
	}
	p.doc.SetFont(pdfFont, style, t.Size*p.scale/p.perPoint)
	p.doc.SetTextColor(p.rgb(t.Ink))
	w := width(text, t.Size, t.Bold)
	switch t.Anchor {
	case Middle:
		at.X -= w / 2
	case End:
		at.X -= w
	}
	x, y := p.at(at)
	p.doc.Text(x, y, text)
}
