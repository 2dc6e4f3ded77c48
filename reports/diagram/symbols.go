package diagram

import "math"

// Symbols follow IEC 60617 where it has one; the number is that of its database
// as far as known, from memory, unverified. What it has none for is a frame with
// a letter that the legend explains.

// thin and bold are the pens of symbols.
func thin() Pen  { return Pen{Ink: Symbol, Width: 1.2} }
func heavy() Pen { return Pen{Ink: Symbol, Width: 2.4} }

// symbolBox is where a symbol is painted: on a line at y, from left to right.
type symbolBox struct{ left, right, y float64 }

func (b symbolBox) mid() Point { return Point{(b.left + b.right) / 2, b.y} }

// letters are those in the frames of kinds without a symbol of their own.
func letters() map[string]string {
	return map[string]string{"pump": "P", "blower": "V", "electronics": "E", "refrigerator": "R", "controller": "C"}
}

// paintSymbol paints the symbol of a kind of component; leads tells that the
// line runs on to both sides.
func paintSymbol(c Canvas, kind string, b symbolBox, left, right bool) {
	m := b.mid()
	half := symbolReach(kind)
	if left {
		c.Line(Point{b.left, b.y}, Point{m.X - half, b.y}, thin())
	}
	if right {
		c.Line(Point{m.X + half, b.y}, Point{b.right, b.y}, thin())
	}
	switch kind {
	case "battery":
		paintBattery(c, m)
	case "fuse":
		c.Rect(Rect{m.X - 10, m.Y - 4, 20, 8}, 0, Paper, thin())
		c.Line(Point{m.X - 10, m.Y}, Point{m.X + 10, m.Y}, thin())
	case "switch":
		paintContact(c, m)
	case "breaker":
		paintContact(c, m)
		c.Line(Point{m.X + 5.2, m.Y - 2.8}, Point{m.X + 10.8, m.Y + 2.8}, thin())
		c.Line(Point{m.X + 5.2, m.Y + 2.8}, Point{m.X + 10.8, m.Y - 2.8}, thin())
	case "relay":
		paintContact(c, m)
		c.Rect(Rect{m.X - 5, m.Y + 2.5, 10, 5.5}, 0, Paper, thin())
		c.Line(Point{m.X, m.Y + 2.5}, Point{m.X, m.Y - 3}, Pen{Ink: Symbol, Width: 0.8, Dash: []float64{1.5, 1.2}})
	case "connector":
		c.Line(Point{m.X - 7, m.Y}, Point{m.X + 1, m.Y}, Pen{Ink: Symbol, Width: 3})
		c.Arc(m, 5, 270, 90, thin())
		c.Line(Point{m.X + 5, m.Y}, Point{m.X + 7, m.Y}, thin())
	case "busbar":
		c.Rect(Rect{m.X - barWide/2, m.Y - overBar, barWide, 2 * overBar}, 0, Symbol, Pen{})
	case "ground":
		c.Line(Point{m.X - 4, m.Y - 8}, Point{m.X - 4, m.Y + 8}, thin())
		c.Line(Point{m.X, m.Y - 5}, Point{m.X, m.Y + 5}, thin())
		c.Line(Point{m.X + 4, m.Y - 2}, Point{m.X + 4, m.Y + 2}, thin())
	case "motor":
		paintMachine(c, m, "M")
	case "alternator", "generator":
		paintMachine(c, m, "G")
	case "lamp":
		c.Circle(m, tipHalf, Paper, thin())
		d := tipHalf * math.Sqrt2 / 2
		c.Line(Point{m.X - d, m.Y - d}, Point{m.X + d, m.Y + d}, thin())
		c.Line(Point{m.X - d, m.Y + d}, Point{m.X + d, m.Y - d}, thin())
	case "heater":
		c.Rect(Rect{m.X - 11, m.Y - 4.5, 22, 9}, 0, Paper, thin())
		for _, x := range []float64{-5.5, 0, 5.5} {
			c.Line(Point{m.X + x, m.Y - 4.5}, Point{m.X + x, m.Y + 4.5}, thin())
		}
	case "charger":
		paintConverter(c, m, true)
	case "inverter":
		paintConverter(c, m, false)
	case "solar":
		paintSolar(c, m)
	default:
		c.Rect(Rect{m.X - 9, m.Y - 9, 18, 18}, 0, Paper, thin())
		c.Text(Point{m.X, m.Y + 3.6}, letters()[kind], Type{Ink: Words, Size: idSize, Anchor: Middle})
	}
}

// symbolReach is how far a symbol reaches from its middle along the line.
func symbolReach(kind string) float64 {
	switch kind {
	case "battery", "connector":
		return 7
	case "switch", "breaker", "relay":
		return 8
	case "fuse", "motor", "alternator", "generator", "lamp":
		return 10
	case "ground":
		return 4
	case "busbar":
		return barWide / 2
	case "heater":
		return 11
	case "solar":
		return 4
	}
	return 9
}

// symbolHeight is how far a symbol reaches above and below the line.
func symbolHeight(kind string) float64 {
	switch kind {
	case "fuse", "breaker", "switch", "relay", "connector", "heater":
		return symbolHalf
	}
	return tipHalf
}

// paintBattery paints two cells; the long thin plate is positive, on the right.
func paintBattery(c Canvas, m Point) {
	for _, x := range []float64{-7, 3} {
		c.Line(Point{m.X + x, m.Y - 4}, Point{m.X + x, m.Y + 4}, heavy())
		c.Line(Point{m.X + x + 4, m.Y - 9}, Point{m.X + x + 4, m.Y + 9}, thin())
	}
	c.Line(Point{m.X - 3, m.Y}, Point{m.X + 3, m.Y}, Pen{Ink: Symbol, Width: 1.2, Dash: []float64{1.5, 1.5}})
}

// paintContact paints a contact that closes.
func paintContact(c Canvas, m Point) {
	c.Line(Point{m.X - 8, m.Y}, Point{m.X + 6.5, m.Y - 6.5}, thin())
}

// paintMachine paints a rotating machine for direct current.
func paintMachine(c Canvas, m Point, letter string) {
	c.Circle(m, tipHalf, Paper, thin())
	c.Text(Point{m.X, m.Y + 2.4}, letter, Type{Ink: Words, Size: idSize, Anchor: Middle})
	c.Line(Point{m.X - 3.5, m.Y + 4.6}, Point{m.X + 3.5, m.Y + 4.6}, Pen{Ink: Symbol, Width: 0.9})
	c.Line(Point{m.X - 3.5, m.Y + 6.4}, Point{m.X + 3.5, m.Y + 6.4}, Pen{Ink: Symbol, Width: 0.9, Dash: []float64{1.6, 1.1}})
}

// paintConverter paints a converter from alternating to direct current, or the
// other way.
func paintConverter(c Canvas, m Point, charging bool) {
	c.Rect(Rect{m.X - 9, m.Y - 9, 18, 18}, 0, Paper, thin())
	c.Line(Point{m.X - 9, m.Y + 9}, Point{m.X + 9, m.Y - 9}, thin())
	wave, level := Point{m.X - 4, m.Y - 4}, Point{m.X + 4, m.Y + 4}
	if !charging {
		wave, level = level, wave
	}
	c.Arc(Point{wave.X - 1.7, wave.Y}, 1.7, 180, 360, Pen{Ink: Symbol, Width: 1})
	c.Arc(Point{wave.X + 1.7, wave.Y}, 1.7, 0, 180, Pen{Ink: Symbol, Width: 1})
	c.Line(Point{level.X - 3, level.Y - 1}, Point{level.X + 3, level.Y - 1}, Pen{Ink: Symbol, Width: 1})
	c.Line(Point{level.X - 3, level.Y + 1.2}, Point{level.X + 3, level.Y + 1.2}, Pen{Ink: Symbol, Width: 1, Dash: []float64{1.5, 0.8}})
}

// paintSolar paints a photovoltaic cell.
func paintSolar(c Canvas, m Point) {
	c.Line(Point{m.X - 4, m.Y - 3}, Point{m.X - 4, m.Y + 3}, heavy())
	c.Line(Point{m.X + 4, m.Y - 6}, Point{m.X + 4, m.Y + 6}, thin())
	c.Line(Point{m.X - 4, m.Y}, Point{m.X - 2, m.Y}, thin())
	for _, x := range []float64{-9, -4} {
		tail, head := Point{m.X + x, m.Y - 10}, Point{m.X + x + 4, m.Y - 5.5}
		c.Line(tail, head, Pen{Ink: Symbol, Width: 0.9})
		c.Line(head, Point{head.X - 2.8, head.Y - 0.6}, Pen{Ink: Symbol, Width: 0.9})
		c.Line(head, Point{head.X - 0.6, head.Y - 2.8}, Pen{Ink: Symbol, Width: 0.9})
	}
}
