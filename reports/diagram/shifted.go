package diagram

// shifted paints on a canvas at an offset.
type shifted struct {
	to     Canvas
	dx, dy float64
}

func (s shifted) at(p Point) Point { return Point{p.X + s.dx, p.Y + s.dy} }

func (s shifted) area(r Rect) Rect { return Rect{r.X + s.dx, r.Y + s.dy, r.W, r.H} }

func (s shifted) all(points []Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = s.at(p)
	}
	return out
}

func (s shifted) Open(g Group) {
	g.Area = s.area(g.Area)
	s.to.Open(g)
}
func (s shifted) Close()                                  { s.to.Close() }
func (s shifted) Line(from, to Point, p Pen)              { s.to.Line(s.at(from), s.at(to), p) }
func (s shifted) Polyline(points []Point, p Pen)          { s.to.Polyline(s.all(points), p) }
func (s shifted) Polygon(points []Point, fill Ink, p Pen) { s.to.Polygon(s.all(points), fill, p) }

func (s shifted) Rect(r Rect, radius float64, f Ink, p Pen) { s.to.Rect(s.area(r), radius, f, p) }

func (s shifted) Circle(at Point, radius float64, f Ink, p Pen) { s.to.Circle(s.at(at), radius, f, p) }

func (s shifted) Arc(at Point, radius, from, to float64, p Pen) {
	s.to.Arc(s.at(at), radius, from, to, p)
}
func (s shifted) Text(at Point, text string, t Type) { s.to.Text(s.at(at), text, t) }
