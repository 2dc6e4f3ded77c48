package diagram

// The sizes of text, in units.
const (
	idSize     = 10.0
	detailSize = 9.0
	smallSize  = 8.0
)

// piece is a part of a line of text: words, a swatch or a mark.
type piece struct {
	text   string
	size   float64
	bold   bool
	ink    Ink
	swatch string // colour of insulation
	mark   *mark
}

// text is a line of pieces, set one after the other.
type text []piece

const (
	pieceGap     = 3.5
	swatchWidth  = 9.0
	swatchHeight = 6.0
	markPad      = 2.5
)

func bold(s string) piece   { return piece{text: clean(s), size: idSize, bold: true, ink: Words} }
func plain(s string) piece  { return piece{text: clean(s), size: detailSize, ink: Words} }
func small(s string) piece  { return piece{text: clean(s), size: smallSize, ink: Faint} }
func colour(s string) piece { return piece{swatch: s} }

func (p piece) width() float64 {
	switch {
	case p.mark != nil:
		return width(p.mark.letter(), smallSize, true) + 2*markPad
	case p.swatch != "":
		return swatchWidth
	}
	return width(p.text, p.size, p.bold)
}

func (t text) width() float64 {
	total := 0.0
	for i, p := range t {
		if i > 0 {
			total += pieceGap
		}
		total += p.width()
	}
	return total
}

// clipped shortens the last words of a line that is wider than most.
func (t text) clipped(most float64) text {
	excess := t.width() - most
	if excess <= 0 {
		return t
	}
	out := append(text{}, t...)
	for i := len(out) - 1; i >= 0 && excess > 0; i-- {
		p := &out[i]
		if p.text == "" {
			continue
		}
		was := p.width()
		p.text = clip(p.text, p.size, p.bold, max(was-excess, 3*smallSize))
		excess -= was - p.width()
	}
	return out
}

// paint sets a line with its left end at a place on the base line.
func (t text) paint(c Canvas, at Point) {
	for i, p := range t {
		if i > 0 {
			at.X += pieceGap
		}
		p.paint(c, at)
		at.X += p.width()
	}
}

// middle sets a line centred on a place.
func (t text) middle(c Canvas, at Point) { t.paint(c, Point{at.X - t.width()/2, at.Y}) }

func (p piece) paint(c Canvas, at Point) {
	switch {
	case p.mark != nil:
		p.mark.paint(c, at)
	case p.swatch != "":
		paintSwatch(c, at, p.swatch)
	case p.text != "":
		c.Text(at, p.text, Type{Ink: p.ink, Size: p.size, Bold: p.bold})
	}
}

// paintSwatch shows a colour of insulation, with its stripe.
func paintSwatch(c Canvas, at Point, colour string) {
	main, stripe := stripes(colour)
	area := Rect{at.X, at.Y - swatchHeight - 0.3, swatchWidth, swatchHeight}
	border := Pen{Ink: Rule, Width: 0.6}
	if insulation()[main] == "" {
		c.Rect(area, 0, Paper, border)
		return
	}
	c.Rect(area, 0, swatchInk(main), border)
	if insulation()[stripe] != "" {
		c.Rect(Rect{area.X, area.Y + swatchHeight/3, swatchWidth, swatchHeight / 3}, 0, swatchInk(stripe), Pen{})
	}
}
