package tree

import (
	"bytes"
	"encoding/binary"
	"sort"
	"unicode/utf8"

	"driploop/model/verdict"
)

// Source is the text of a file with what it takes to find places in it. Lines
// and columns count from 1, columns in characters, as yaml.Node counts them; a
// byte order mark counts as nothing.
type Source struct {
	Text []byte

	lines []int // byte offset of the start of each line; nil until a place is looked for
	// For texts beyond ASCII: the character count before each line, and the byte
	// offset of every 64th character, so that finding a column does not scan a
	// long line again and again.
	chars []int
	marks []int
}

const markEvery = 64

// NewSource returns a source of a text without a byte order mark. It looks at the
// text when it is asked for a place: of many a record nothing is.
func NewSource(text []byte) *Source { return &Source{Text: text} }

// look finds the lines, if that was not done before.
func (s *Source) look() {
	if s.lines != nil {
		return
	}
	text := s.Text
	s.lines = make([]int, 1, 1+bytes.Count(text, []byte{'\n'}))
	for at := 0; at < len(text); {
		end := bytes.IndexByte(text[at:], '\n')
		if end < 0 {
			end = len(text) - at
		}
		s.returns(at, at+end)
		if at += end + 1; at <= len(text) {
			s.lines = append(s.lines, at)
		}
	}
	if !isASCII(text) {
		s.count()
	}
}

// returns begins a line behind every carriage return that stands alone in a part
// of the text up to a line feed or the end.
func (s *Source) returns(from, to int) {
	for {
		at := bytes.IndexByte(s.Text[from:to], '\r')
		if from += at + 1; at < 0 || from == to && to < len(s.Text) {
			return
		}
		s.lines = append(s.lines, from)
	}
}

func isASCII(text []byte) bool {
	for len(text) >= 8 {
		if binary.LittleEndian.Uint64(text)&0x8080808080808080 != 0 {
			return false
		}
		text = text[8:]
	}
	for _, c := range text {
		if c >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

func (s *Source) count() {
	s.chars = make([]int, 0, len(s.lines))
	line, n := 0, 0
	for i := range string(s.Text) {
		if n%markEvery == 0 {
			s.marks = append(s.marks, i)
		}
		if line < len(s.lines) && i == s.lines[line] {
			s.chars = append(s.chars, n)
			line++
		}
		n++
	}
	for ; line < len(s.lines); line++ {
		s.chars = append(s.chars, n)
	}
}

// Offset returns the byte offset of a position.
func (s *Source) Offset(p verdict.Position) int {
	s.look()
	if p.Line < 1 || p.Line > len(s.lines) {
		return len(s.Text)
	}
	if s.marks == nil {
		return min(s.lines[p.Line-1]+p.Column-1, len(s.Text))
	}
	n := s.chars[p.Line-1] + p.Column - 1
	if n/markEvery >= len(s.marks) {
		return len(s.Text)
	}
	at := s.marks[n/markEvery]
	for range n % markEvery {
		if at >= len(s.Text) {
			break
		}
		_, size := utf8.DecodeRune(s.Text[at:])
		at += size
	}
	return at
}

// Position returns the position of a byte offset.
func (s *Source) Position(at int) verdict.Position {
	s.look()
	line := sort.Search(len(s.lines), func(i int) bool { return s.lines[i] > at })
	start := s.lines[line-1]
	if s.marks == nil {
		return verdict.Position{Line: line, Column: at - start + 1}
	}
	// Count from the last mark before the offset, or from the line's start.
	mark := sort.Search(len(s.marks), func(i int) bool { return s.marks[i] > at }) - 1
	n := mark*markEvery + utf8.RuneCount(s.Text[s.marks[mark]:at])
	return verdict.Position{Line: line, Column: n - s.chars[line-1] + 1}
}

// Span returns the range between two byte offsets.
func (s *Source) Span(from, to int) verdict.Range {
	return verdict.Range{Start: s.Position(from), End: s.Position(to)}
}

// LineEnd returns the offset behind the last character of a line.
func (s *Source) LineEnd(line int) int {
	s.look()
	end := len(s.Text)
	if line < len(s.lines) {
		end = s.lines[line]
	}
	for end > s.lines[line-1] && (s.Text[end-1] == '\n' || s.Text[end-1] == '\r') {
		end--
	}
	return end
}
