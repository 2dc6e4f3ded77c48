package editor

import (
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"driploop/model/verdict"
)

// lines of a text, without their ends.
func linesOf(text string) []string {
	all := strings.Split(text, "\n")
	for i := range all {
		all[i] = strings.TrimSuffix(all[i], "\r")
	}
	return all
}

// offsetIn is the byte offset in a line of a column of UTF-16 units.
func offsetIn(line string, character int) int {
	units := 0
	for i, r := range line {
		if units >= character {
			return i
		}
		units += utf16.RuneLen(r)
	}
	return len(line)
}

// lspPosition turns a place in a record, in characters from 1, into one of the
// protocol.
func lspPosition(lines []string, p verdict.Position) position {
	if p.Line < 1 || p.Line > len(lines) {
		return position{Line: max(p.Line-1, 0)}
	}
	units, n := 0, 1
	for _, r := range lines[p.Line-1] {
		if n >= p.Column {
			break
		}
		units += utf16.RuneLen(r)
		n++
	}
	return position{Line: p.Line - 1, Character: units}
}

func lspRange(lines []string, r verdict.Range) textRange {
	end := r.End
	if end.Line == 0 {
		end = r.Start
	}
	return textRange{lspPosition(lines, r.Start), lspPosition(lines, end)}
}

// recordPosition turns a place of the protocol into one in a record.
func recordPosition(lines []string, p position) verdict.Position {
	if p.Line < 0 || p.Line >= len(lines) {
		return verdict.Position{Line: p.Line + 1, Column: 1}
	}
	at := offsetIn(lines[p.Line], p.Character)
	return verdict.Position{Line: p.Line + 1, Column: utf8.RuneCountInString(lines[p.Line][:at]) + 1}
}

// changed replaces a range of a text.
func changed(text string, r textRange, with string) string {
	return text[:byteOffset(text, r.Start)] + with + text[byteOffset(text, r.End):]
}

func byteOffset(text string, p position) int {
	at := 0
	for range p.Line {
		next := strings.IndexByte(text[at:], '\n')
		if next < 0 {
			return len(text)
		}
		at += next + 1
	}
	line, _, _ := strings.Cut(text[at:], "\n")
	return at + offsetIn(line, p.Character)
}

// whole is the range of all of a text.
func whole(text string) textRange {
	lines := strings.Split(text, "\n")
	last := lines[len(lines)-1]
	return textRange{End: position{Line: len(lines) - 1, Character: len(utf16.Encode([]rune(last)))}}
}
