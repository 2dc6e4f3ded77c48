package diagram

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// svg is a canvas that writes Scalable Vector Graphics.
type svg struct {
	body  strings.Builder
	inks  map[Ink]bool
	open  []string // closing tags of the groups
	links bool
}

// SVG writes the diagram as one <svg> element: no script, no reference to
// anything outside, dark where the reader prefers that, light in print.
func (d *Diagram) SVG(w io.Writer) error {
	c := &svg{inks: map[Ink]bool{}}
	d.Paint(c)
	wide, high := d.Size()
	var out strings.Builder
	if !d.options.Embedded {
		out.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	}
	sheet := d.sheet
	size := fmt.Sprintf(`width="%s" height="%s"`, short(wide*embeddedScale), short(high*embeddedScale))
	if !d.options.Embedded {
		size = fmt.Sprintf(`width="%smm" height="%smm"`, short(wide*sheet.scale), short(high*sheet.scale))
	}
	// A picture with links in it is no mere image to assistive programs.
	role := "img"
	if c.links {
		role = "graphics-document"
	}
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" class="dl-diagram" role="%s" aria-labelledby="draw-title draw-desc" viewBox="0 0 %s %s" %s>`+"\n",
		role, short(wide), short(high), size)
	fmt.Fprintf(&out, `<title id="draw-title">%s</title>`+"\n"+`<desc id="draw-desc">%s</desc>`+"\n", escape(d.Title()), escape(d.About()))
	out.WriteString("<style>" + c.style(d.options.Embedded, sheet) + "</style>\n")
	out.WriteString(c.body.String())
	out.WriteString("</svg>\n")
	_, err := io.WriteString(w, out.String())
	return err
}

// embeddedScale is CSS pixels by unit where a page does not say otherwise.
const embeddedScale = 1.3

// style holds the rules for the inks that were used.
func (s *svg) style(embedded bool, sheet paper) string {
	var light, dark, rules strings.Builder
	list := shades()
	slices.SortFunc(list, func(a, b shade) int { return strings.Compare(string(a.ink), string(b.ink)) })
	for _, sh := range list {
		if !s.inks[sh.ink] {
			continue
		}
		fmt.Fprintf(&rules, ".dl-diagram .f-%[1]s{fill:#%[2]s;fill:var(--dl-%[1]s,#%[2]s)}.dl-diagram .s-%[1]s{stroke:#%[2]s;stroke:var(--dl-%[1]s,#%[2]s)}\n", sh.ink, sh.light)
		fmt.Fprintf(&light, "--dl-%s:#%s;", sh.ink, sh.light)
		fmt.Fprintf(&dark, "--dl-%s:#%s;", sh.ink, sh.dark)
	}
	base := ".dl-diagram text{font-family:Go,'Helvetica Neue',Arial,'Liberation Sans','DejaVu Sans Condensed',sans-serif;white-space:pre}\n" +
		".dl-diagram .b{font-weight:bold}\n.dl-diagram a{text-decoration:none}\n" +
		".dl-diagram a:hover rect,.dl-diagram a:focus rect{stroke-width:2}\n" +
		".dl-diagram :target{outline:2px solid currentColor;outline-offset:2px}\n"
	page := ""
	if !embedded {
		page = "@page{size:" + sheet.name + ";margin:" + strconv.Itoa(pageMargin) + "mm}\n"
	}
	return "\n" + page + base + rules.String() +
		".dl-diagram{color-scheme:light dark;" + light.String() + "}\n" +
		"@media screen and (prefers-color-scheme:dark){.dl-diagram{" + dark.String() + "}}\n"
}

// escape makes a text safe within an element or a quoted attribute.
func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder has no errors
	return b.String()
}

// short prints a measure with no more digits than it takes.
func short(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func (s *svg) Open(g Group) {
	end := "</g>\n"
	s.body.WriteString("<g")
	if g.ID != "" {
		s.body.WriteString(` id="` + escape(g.ID) + `"`)
	}
	if g.Class != "" {
		s.body.WriteString(` class="dl-` + escape(g.Class) + `"`)
	}
	s.body.WriteString(">")
	if g.Href != "" {
		s.links = true
		s.body.WriteString(`<a href="` + escape(g.Href) + `">`)
		end = "</a></g>\n"
	}
	if g.Title != "" {
		s.body.WriteString("<title>" + escape(g.Title) + "</title>")
	}
	s.body.WriteString("\n")
	s.open = append(s.open, end)
}

func (s *svg) Close() {
	last := len(s.open) - 1
	s.body.WriteString(s.open[last])
	s.open = s.open[:last]
}

// look is the attributes of fill and pen.
func (s *svg) look(fill Ink, p Pen) string {
	out := ` class="`
	var classes []string
	if fill != "" {
		s.inks[fill] = true
		classes = append(classes, "f-"+string(fill))
	}
	if p.Ink != "" {
		s.inks[p.Ink] = true
		classes = append(classes, "s-"+string(p.Ink))
	}
	out += strings.Join(classes, " ") + `"`
	if fill == "" {
		out += ` fill="none"`
	}
	if p.Ink != "" {
		out += ` stroke-width="` + short(p.Width) + `"`
	}
	if len(p.Dash) > 0 {
		var parts []string
		for _, d := range p.Dash {
			parts = append(parts, short(d))
		}
		out += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return out
}

func (s *svg) Line(from, to Point, p Pen) {
	fmt.Fprintf(&s.body, `<path d="M%s %sL%s %s"%s/>`+"\n", short(from.X), short(from.Y), short(to.X), short(to.Y), s.look("", p))
}

func points(points []Point) string {
	var b strings.Builder
	for i, p := range points {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(short(p.X) + "," + short(p.Y))
	}
	return b.String()
}

func (s *svg) Polyline(at []Point, p Pen) {
	fmt.Fprintf(&s.body, `<polyline points="%s"%s stroke-linejoin="round"/>`+"\n", points(at), s.look("", p))
}

func (s *svg) Polygon(at []Point, fill Ink, p Pen) {
	fmt.Fprintf(&s.body, `<polygon points="%s"%s stroke-linejoin="round"/>`+"\n", points(at), s.look(fill, p))
}

func (s *svg) Rect(r Rect, radius float64, fill Ink, p Pen) {
	round := ""
	if radius > 0 {
		round = ` rx="` + short(radius) + `"`
	}
	fmt.Fprintf(&s.body, `<rect x="%s" y="%s" width="%s" height="%s"%s%s/>`+"\n", short(r.X), short(r.Y), short(r.W), short(r.H), round, s.look(fill, p))
}

func (s *svg) Circle(c Point, radius float64, fill Ink, p Pen) {
	fmt.Fprintf(&s.body, `<circle cx="%s" cy="%s" r="%s"%s/>`+"\n", short(c.X), short(c.Y), short(radius), s.look(fill, p))
}

func (s *svg) Arc(c Point, radius, from, to float64, p Pen) {
	a, b := onCircle(c, radius, from), onCircle(c, radius, to)
	large := 0
	if turn(from, to) > 180 {
		large = 1
	}
	fmt.Fprintf(&s.body, `<path d="M%s %sA%s %s 0 %d 1 %s %s"%s/>`+"\n", short(a.X), short(a.Y), short(radius), short(radius), large, short(b.X), short(b.Y), s.look("", p))
}

// Text fixes the width that was measured, so that another font on the reader's
// machine runs over nothing.
func (s *svg) Text(at Point, text string, t Type) {
	s.inks[t.Ink] = true
	class := "f-" + string(t.Ink)
	if t.Bold {
		class += " b"
	}
	anchor := ""
	switch t.Anchor {
	case Middle:
		anchor = ` text-anchor="middle"`
	case End:
		anchor = ` text-anchor="end"`
	}
	fmt.Fprintf(&s.body, `<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" class="%s"%s>%s</text>`+"\n",
		short(at.X), short(at.Y), short(t.Size), short(width(text, t.Size, t.Bold)), class, anchor, escape(text))
}
