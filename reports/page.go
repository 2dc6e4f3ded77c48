package reports

import (
	"bufio"
	"io"
	"strings"
)

// The width of a page is kept between these: narrower cannot hold a finding,
// wider is hard to read.
const (
	defaultWidth = 80
	minWidth     = 48
	maxWidth     = 100
)

// margin is the column at which text begins; labels and signal words stand to
// the left of it.
const margin = 9

// span is a piece of text in one ink.
type span struct {
	text string
	ink  ink
}

func in(i ink, text string) span { return span{text: text, ink: i} }
func txt(text string) span       { return span{text: text} }

// page writes text of a limited width. All text goes through Plain, so that
// nothing in a record can reach the terminal as a control character.
type page struct {
	out   *bufio.Writer
	width int
	inks  inks
}

func newPage(w io.Writer, o Options) *page {
	width := o.Width
	if width == 0 {
		width = defaultWidth
	}
	return &page{out: bufio.NewWriter(w), width: min(max(width, minWidth), maxWidth), inks: newInks(o.Colour)}
}

// close writes what is left and returns the first error of the writer.
func (p *page) close() error { return p.out.Flush() }

// raw writes text as it is. The writer keeps its first error for close.
func (p *page) raw(text string) { _, _ = p.out.WriteString(text) }

func (p *page) blank() { p.raw("\n") }

// heading begins a section.
func (p *page) heading(title, about string) {
	p.blank()
	if about != "" {
		about = ": " + about
	}
	p.hang(0, 0, in(strong, title), txt(about))
	p.blank()
}

// entry writes a labelled paragraph, the label left of the margin.
func (p *page) entry(label span, body ...span) {
	p.labelled(label, margin, body...)
}

// labelled is entry with another margin.
func (p *page) labelled(label span, indent int, body ...span) {
	if len(body) == 0 {
		body = []span{txt("")}
	}
	text := Plain(label.text)
	p.raw(p.inks.paint(label.ink, text))
	gap := indent - Columns(text)
	if gap < 1 && text != "" {
		gap = 1
	}
	p.fill(Columns(text)+gap, gap, indent, body)
}

// hang writes a paragraph whose first line begins at the column first and the
// others at rest.
func (p *page) hang(first, rest int, body ...span) { p.fill(first, first, rest, body) }

// fill wraps the body: pad spaces, which bring the line to the column at, stand
// before its first word.
func (p *page) fill(at, pad, indent int, body []span) {
	start := at
	for _, w := range words(body) {
		need := w.width
		if at > start {
			need++
		}
		if at > start && at+need > p.width {
			p.raw("\n")
			at, start, pad = indent, indent, indent
			need = w.width
		} else if at > start {
			pad = 1
		}
		p.raw(strings.Repeat(" ", max(pad, 0)))
		pad = 0
		for _, piece := range w.pieces {
			p.raw(p.inks.paint(piece.ink, unglued(piece.text)))
		}
		at += need
	}
	p.raw("\n")
}

// unglued returns a text as it is printed.
func unglued(text string) string {
	if n, plain := columns(text); plain && n == len(text) {
		return text
	}
	return strings.ReplaceAll(text, string(glue), " ")
}

// word is what is never broken: pieces of text without a space between.
type word struct {
	pieces []span
	width  int
}

func words(body []span) []word {
	length := 0
	for _, s := range body {
		length += len(s.text)
	}
	const usual = 6 // letters of a word
	all, pieces := make([]word, 0, length/usual+1), make([]span, 0, length/usual+len(body))
	begun, width := 0, 0 // of the word at hand: its first piece, and its width
	end := func() {
		if len(pieces) > begun {
			all = append(all, word{pieces[begun:len(pieces):len(pieces)], width})
		}
		begun, width = len(pieces), 0
	}
	for _, s := range body {
		text := Plain(s.text)
		for more := true; more; {
			var part string
			if part, text, more = strings.Cut(text, " "); part != "" {
				pieces = append(pieces, span{text: part, ink: s.ink})
				width += Columns(part)
			}
			if more {
				end()
			}
		}
	}
	end()
	return all
}

// Wrap breaks the lines of a text that are longer than a page is wide.
func Wrap(text string) string {
	var b strings.Builder
	p := newPage(&b, Options{})
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if Columns(line) > p.width {
			p.hang(0, 0, txt(line))
		} else {
			p.raw(line + "\n")
		}
	}
	_ = p.close() // a strings.Builder takes everything
	return b.String()
}
