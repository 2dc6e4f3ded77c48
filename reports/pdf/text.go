package pdf

import (
	"strconv"
	"strings"
	"sync"

	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

func itoa(n int) string { return strconv.Itoa(n) }

// glyphs tells which characters the fonts have.
var glyphs = sync.OnceValue(func() func(rune) bool {
	fonts := make([]*sfnt.Font, 0, 2)
	for _, data := range [][]byte{goregular.TTF, gomono.TTF} {
		f, err := sfnt.Parse(data)
		if err != nil {
			panic(err) // the fonts are part of the program
		}
		fonts = append(fonts, f)
	}
	return func(r rune) bool {
		for _, f := range fonts {
			if at, err := f.GlyphIndex(nil, r); err != nil || at == 0 {
				return false
			}
		}
		return true
	}
})

// shown writes what the fonts do not have as its number, so that nothing is left
// out in silence.
func shown(text string) string {
	has := glyphs()
	plain := true
	for _, r := range text {
		if r > '~' && r != ' ' && !has(r) {
			plain = false
		}
	}
	if plain {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if r <= '~' || r == ' ' || has(r) {
			b.WriteRune(r)
		} else {
			b.WriteString("<U+" + strings.ToUpper(strconv.FormatInt(int64(r), 16)) + ">")
		}
	}
	return b.String()
}

// wrap breaks a text into lines of a width; first is the width of the first line.
// A word that is wider than a line is broken.
func (d *doc) wrap(text string, f face, first, width float64) []string {
	d.use(f)
	space := d.GetStringWidth(" ")
	var lines []string
	line, used, room := "", 0.0, first
	end := func() {
		lines = append(lines, line)
		line, used, room = "", 0, width
	}
	for _, word := range strings.FieldsFunc(shown(text), func(r rune) bool { return r == ' ' || r == '\n' }) {
		w := d.GetStringWidth(word)
		if used > 0 && used+space+w > room || used == 0 && w > room && len(lines) == 0 && first < width {
			end()
		}
		for w > room && used == 0 {
			part := d.head(word, room)
			line = part
			end()
			word = word[len(part):]
			w = d.GetStringWidth(word)
		}
		if used > 0 {
			line += " "
			used += space
		}
		line += word
		used += w
	}
	if line != "" || len(lines) == 0 {
		end()
	}
	return lines
}

// head is what of a word fits into a width: one character at least, and up to a
// dot, dash or stroke if there is one in the second half.
func (d *doc) head(word string, width float64) string {
	runes := []rune(word)
	n := 1
	used := d.GetStringWidth(string(runes[0]))
	for n < len(runes) {
		w := d.GetStringWidth(string(runes[n]))
		if used+w > width {
			break
		}
		used += w
		n++
	}
	for i := n; i > n/2 && n < len(runes); i-- {
		if strings.ContainsRune("./-_", runes[i-1]) {
			return string(runes[:i])
		}
	}
	return string(runes[:n])
}

// clip shortens a text to a width.
func (d *doc) clip(text string, width float64) string {
	text = shown(text)
	if d.GetStringWidth(text) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && d.GetStringWidth(string(runes)+"…") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// para writes a paragraph, indented, linked to the place of an id if one is
// given.
func (d *doc) para(f face, indent float64, text, to string) {
	if text == "" {
		return
	}
	width := d.column() - indent
	for _, line := range d.wrap(text, f, width, width) {
		d.line(f, indent, line, to)
	}
}

// line writes one line.
func (d *doc) line(f face, indent float64, text, to string) {
	d.need(f.leading())
	d.use(f)
	d.SetXY(d.x()+indent, d.y)
	d.CellFormat(d.GetStringWidth(text), f.leading(), text, "", 0, "L", false, d.link(to), "")
	d.y += f.leading()
}

// labelled writes a paragraph that begins with a label in another face.
func (d *doc) labelled(l face, label string, f face, indent float64, text string) {
	width := d.column() - indent
	d.use(l)
	label = shown(label)
	used := d.GetStringWidth(label) + 1.2
	for i, line := range d.wrap(text, f, width-used, width) {
		d.need(f.leading())
		d.SetXY(d.x()+indent, d.y)
		at := indent
		if i == 0 {
			d.use(l)
			d.CellFormat(used, f.leading(), label, "", 0, "L", false, 0, "")
			at += used
		}
		d.use(f)
		d.SetXY(d.x()+at, d.y)
		d.CellFormat(d.GetStringWidth(line), f.leading(), line, "", 0, "L", false, 0, "")
		d.y += f.leading()
	}
}

// lines is how many lines a text takes.
func (d *doc) lines(f face, indent float64, text string) int {
	width := d.column() - indent
	return len(d.wrap(text, f, width, width))
}

// bullets writes a list.
func (d *doc) bullets(f face, indent float64, texts []string) {
	for _, text := range texts {
		d.need(f.leading())
		d.use(f)
		d.SetXY(d.x()+indent, d.y)
		d.CellFormat(3, f.leading(), "•", "", 0, "L", false, 0, "")
		d.para(f, indent+3.5, text, "")
	}
}
