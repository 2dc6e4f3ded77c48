package reports

import (
	"strings"

	"github.com/rivo/uniseg"

	"driploop/model/verdict"
)

// longestLine is the longest line, in bytes, that is still worth an excerpt.
const longestLine = 4096

// excerpt shows the line of the record at a place, with a marker under the
// value. Without the text, or where it is unreadable, it shows nothing.
func (p *page) excerpt(src *Source, at verdict.Range, i ink) {
	before, value, after, ok := src.cut(at)
	if !ok {
		return
	}
	const indent = margin + 2
	before, value, after = window(before, value, after, p.width-indent)
	pad := strings.Repeat(" ", indent)
	p.raw(pad + p.inks.paint(faint, before) + value + p.inks.paint(faint, after) + "\n")
	mark := strings.Repeat("‾", markWidth(value))
	p.raw(pad + strings.Repeat(" ", Columns(before)) + p.inks.paint(i, mark) + "\n")
}

// markWidth is the width of the marker under a value, one at least.
func markWidth(value string) int { return max(Columns(value), 1) }

// cut splits the line at a place into what stands before the value, the value
// and the rest, all safe to show.
func (src *Source) cut(at verdict.Range) (before, value, after string, ok bool) {
	text, ok := src.line(at.Start.Line)
	if !ok || at.Start.Column < 1 || len(text) > longestLine {
		return "", "", "", false
	}
	line := []rune(strings.ReplaceAll(text, "\t", " "))
	start := min(at.Start.Column-1, len(line))
	end := len(line)
	if at.End.Line == at.Start.Line && at.End.Column >= at.Start.Column {
		end = min(at.End.Column-1, end)
	}
	before = strings.TrimLeft(string(line[:start]), " ")
	return Plain(before), Plain(strings.TrimRight(string(line[start:end]), " ")), Plain(string(line[end:])), true
}

// window shortens an excerpt to the room there is, the value last.
func window(before, value, after string, room int) (string, string, string) {
	if Columns(before)+markWidth(value)+Columns(after) <= room {
		return before, value, after
	}
	value = head(value, room)
	left := room - markWidth(value)
	before = tail(before, max(left-min(Columns(after), left/3), 0))
	return before, value, head(after, left-Columns(before))
}

const ellipsis = "…"

// head returns the beginning of a text, at most width columns.
func head(s string, width int) string {
	if Columns(s) <= width {
		return s
	}
	used, end := 0, 0
	for g := uniseg.NewGraphemes(s); g.Next(); {
		if used+g.Width() > width-1 {
			break
		}
		used += g.Width()
		_, end = g.Positions()
	}
	if width < 1 {
		return ""
	}
	return s[:end] + ellipsis
}

// tail returns the end of a text, at most width columns.
func tail(s string, width int) string {
	if Columns(s) <= width {
		return s
	}
	if width < 1 {
		return ""
	}
	used := Columns(s)
	for g := uniseg.NewGraphemes(s); g.Next(); {
		used -= g.Width()
		if used <= width-1 {
			_, end := g.Positions()
			return ellipsis + s[end:]
		}
	}
	return ""
}
