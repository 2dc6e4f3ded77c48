package diagram

import (
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
)

// The widest that texts get before they are clipped.
const (
	mostID     = 76.0
	wrapID     = 50.0 // from which an id is set on two lines
	mostDetail = 92.0
	mostSide   = 128.0
	mostWire   = 46.0
	mostHole   = 64.0
	mostInside = 46.0 // terminals of a box
	mostSpace  = 110.0
)

// words makes the texts of a diagram from its record.
type words struct {
	rec   *record.Record
	units quantity.System
	marks marks
}

// head is the mark and id of a component, on two lines if that is much narrower.
func (w words) head(c *record.Component) []text {
	first, second := halves(c.ID)
	if width(c.ID, idSize, true) <= wrapID || second == "" {
		return []text{append(w.marks.piece(c.Path), text{bold(c.ID)}.clipped(mostID)...)}
	}
	return []text{append(w.marks.piece(c.Path), text{bold(first)}.clipped(mostID)...), text{bold(second)}.clipped(mostID)}
}

// halves breaks an id behind a hyphen or underscore so that its wider part is as
// narrow as can be.
func halves(id string) (first, second string) {
	first = id
	for i, r := range id {
		if (r == '-' || r == '_') && i+1 < len(id) {
			a, b := id[:i+1], id[i+1:]
			if max(width(a, idSize, true), width(b, idSize, true)) < max(width(first, idSize, true), width(second, idSize, true)) {
				first, second = a, b
			}
		}
	}
	return first, second
}

// detail is what a component is rated for, in few words.
func (w words) detail(c *record.Component) text {
	var parts []string
	add := func(m record.Measure) {
		if m.Is() {
			parts = append(parts, m.V.Format(w.units))
		}
	}
	switch c.Kind.V {
	case "battery":
		add(c.Nominal)
		add(c.Capacity)
	case "alternator", "charger", "solar", "generator":
		add(c.Output)
	case "fuse", "breaker", "busbar", "connector":
		add(c.Rating)
	case "switch", "relay", "controller":
		if c.Continuous.Is() {
			add(c.Continuous)
		} else {
			add(c.Rating)
		}
	default:
		if c.Current.Is() {
			add(c.Current)
		} else {
			add(c.Power)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return text{plain(strings.Join(parts, " "))}.clipped(mostDetail)
}

// beside is the text right of a load: its id, then what it is and draws.
func (w words) beside(c *record.Component) []text {
	lines := []text{append(w.marks.piece(c.Path), bold(c.ID)).clipped(mostSide)}
	var second text
	if label := c.Label.Or(""); label != "" && label != "none" && !strings.EqualFold(label, strings.ReplaceAll(c.ID, "-", " ")) {
		second = append(second, plain(label))
	}
	if d := w.detail(c); d != nil {
		if len(second) > 0 {
			second[0].text = clip(second[0].text+",", detailSize, false, mostSide-pieceGap-d.width())
		}
		second = append(second, d...)
	}
	if len(second) > 0 {
		lines = append(lines, second.clipped(mostSide))
	}
	return lines
}

// lines is the label of a conductor: which it is, then the rest.
func (w words) lines(c *record.Conductor) (up, down text) {
	size := "size ?"
	if c.Size.Is() {
		size = strings.Replace(c.Size.V.String(), "mm2", "mm²", 1)
	}
	up = append(w.marks.piece(c.Path), bold(clip(c.ID, idSize, true, mostWire)), plain(size))
	length := "length ?"
	if c.Length.Is() {
		length = c.Length.V.Format(w.units)
	}
	down = text{plain(length)}
	if c.Colour.Is() {
		down = append(down, colour(c.Colour.V), plain(c.Colour.V))
	} else {
		down = append(down, plain("colour ?"))
	}
	return up, down
}

// hole is the id of a penetration, with its mark.
func (w words) hole(p *record.Penetration) text {
	return append(w.marks.piece(p.Path), text{small(p.ID)}.clipped(mostHole)...)
}

// componentTitle says in full what a component is.
func (w words) componentTitle(c *record.Component) string {
	parts := []string{c.ID + ": " + c.Kind.V}
	if label := c.Label.Or(""); label != "" && label != "none" {
		parts = append(parts, label)
	}
	for _, p := range w.detail(c) {
		parts = append(parts, p.text)
	}
	if c.Chemistry.Is() {
		parts = append(parts, c.Chemistry.V)
	}
	if c.Space.Is() {
		parts = append(parts, "in "+c.Space.V)
	}
	return w.withFindings(strings.Join(parts, ", "), c.Path)
}

// conductorTitle says in full what a conductor is and where it runs.
func (w words) conductorTitle(c *record.Conductor) string {
	parts := []string{c.ID + ": " + c.From.String() + " to " + c.To.String()}
	for _, v := range []record.Text{c.Role, c.Colour} {
		if v.Is() {
			parts = append(parts, v.V)
		}
	}
	if c.Size.Is() {
		parts = append(parts, c.Size.V.String())
	}
	if c.Length.Is() {
		parts = append(parts, c.Length.V.Format(w.units))
	}
	if way := spacesOf(c); len(way) > 0 {
		parts = append(parts, "through "+strings.Join(way, ", "))
	}
	return w.withFindings(strings.Join(parts, ", "), c.Path)
}

// holeTitle says in full what a penetration is.
func (w words) holeTitle(p *record.Penetration) string {
	title := p.ID + ": penetration"
	if p.From.Is() && p.To.Is() {
		title += " from " + p.From.V + " to " + p.To.V
	}
	return w.withFindings(title, p.Path)
}

func (w words) withFindings(title, path string) string {
	if m := w.marks.of(path); m != nil {
		title += "\n" + m.title
	}
	return title
}

// spacesOf lists the spaces that a conductor runs through, in order.
func spacesOf(c *record.Conductor) []string {
	var way []string
	for _, s := range c.Route {
		if id, ok := s.Space.Get(); ok && (len(way) == 0 || way[len(way)-1] != id) {
			way = append(way, id)
		}
	}
	return way
}
