package diagram

// Point is a place on a canvas, in units; y runs down.
type Point struct{ X, Y float64 }

// Rect is an area from its upper left corner.
type Rect struct{ X, Y, W, H float64 }

// right and bottom are the far edges of an area.
func (r Rect) right() float64  { return r.X + r.W }
func (r Rect) bottom() float64 { return r.Y + r.H }

// Pen is how a line is drawn; without an ink there is none.
type Pen struct {
	Ink   Ink
	Width float64
	Dash  []float64 // lengths drawn and left out, in turn
}

// Anchor is the point of a text that its place means.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Type is how a text is set.
type Type struct {
	Ink    Ink
	Size   float64 // of the font, in units
	Bold   bool
	Anchor Anchor
}

// Group says what the shapes until its end belong to. Any part may be empty.
type Group struct {
	ID    string // to link to
	Class string // such as "component"
	Title string // in full, for whoever points at it or cannot see it
	Href  string // what it links to
	Area  Rect   // where it can be clicked, for back ends that do not know
}

// Canvas is what a diagram is painted on. Each back end gives the inks their
// colours. A place of a text is the anchor on its base line.
type Canvas interface {
	Open(g Group)
	Close()
	Line(from, to Point, p Pen)
	Polyline(points []Point, p Pen)
	Polygon(points []Point, fill Ink, p Pen)
	Rect(r Rect, radius float64, fill Ink, p Pen)
	Circle(centre Point, radius float64, fill Ink, p Pen)
	// Arc runs clockwise between two angles in degrees; 0 points right, 90 down.
	Arc(centre Point, radius, from, to float64, p Pen)
	Text(at Point, text string, t Type)
}
