package record

import (
	"bytes"
	"encoding/binary"
	"sort"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// source is the text of a file with what it takes to find places in it. Lines
// and columns count from 1, columns in characters, as yaml.Node counts them; a
// byte order mark counts as nothing.
//
// A node knows only where it starts. Where it ends is read from the text.
type source struct {
	text  []byte
	lines []int // byte offset of the start of each line
	// For texts beyond ASCII: the character count before each line, and the byte
	// offset of every 64th character, so that finding a column does not scan a
	// long line again and again.
	chars []int
	marks []int
}

const markEvery = 64

func newSource(text []byte) *source {
	s := &source{text: text, lines: make([]int, 1, 1+bytes.Count(text, []byte{'\n'}))}
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
	return s
}

// returns begins a line behind every carriage return that stands alone in a part
// of the text up to a line feed or the end.
func (s *source) returns(from, to int) {
	for {
		at := bytes.IndexByte(s.text[from:to], '\r')
		if from += at + 1; at < 0 || from == to && to < len(s.text) {
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

func (s *source) count() {
	s.chars = make([]int, 0, len(s.lines))
	line, n := 0, 0
	for i := range string(s.text) {
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

// offset returns the byte offset of a position.
func (s *source) offset(p verdict.Position) int {
	if p.Line < 1 || p.Line > len(s.lines) {
		return len(s.text)
	}
	if s.marks == nil {
		return min(s.lines[p.Line-1]+p.Column-1, len(s.text))
	}
	n := s.chars[p.Line-1] + p.Column - 1
	if n/markEvery >= len(s.marks) {
		return len(s.text)
	}
	at := s.marks[n/markEvery]
	for range n % markEvery {
		if at >= len(s.text) {
			break
		}
		_, size := utf8.DecodeRune(s.text[at:])
		at += size
	}
	return at
}

// position returns the position of a byte offset.
func (s *source) position(at int) verdict.Position {
	line := sort.Search(len(s.lines), func(i int) bool { return s.lines[i] > at })
	start := s.lines[line-1]
	if s.marks == nil {
		return verdict.Position{Line: line, Column: at - start + 1}
	}
	// Count from the last mark before the offset, or from the line's start.
	mark := sort.Search(len(s.marks), func(i int) bool { return s.marks[i] > at }) - 1
	n := mark*markEvery + utf8.RuneCount(s.text[s.marks[mark]:at])
	return verdict.Position{Line: line, Column: n - s.chars[line-1] + 1}
}

// span returns the range between two byte offsets.
func (s *source) span(from, to int) verdict.Range {
	return verdict.Range{Start: s.position(from), End: s.position(to)}
}

// rangeOf returns the range of a node as written, without its anchor and tag.
func (s *source) rangeOf(n *yaml.Node) verdict.Range {
	start := verdict.Position{Line: n.Line, Column: n.Column}
	at := s.offset(start)
	// The common case first: a plain word on one line.
	if n.Kind == yaml.ScalarNode && n.Style == 0 && n.Anchor == "" && n.Value != "" && s.starts(at, n.Value) {
		columns := len(n.Value)
		if s.marks != nil {
			columns = utf8.RuneCountInString(n.Value)
		}
		return verdict.Range{Start: start, End: verdict.Position{Line: n.Line, Column: n.Column + columns}}
	}
	from := s.skipProperties(n, at)
	to := max(s.end(n), from)
	if from != at {
		start = s.position(from)
	}
	return verdict.Range{Start: start, End: s.position(to)}
}

// starts reports whether the text goes on with a word at the offset.
func (s *source) starts(at int, word string) bool {
	return len(s.text)-at >= len(word) && string(s.text[at:at+len(word)]) == word
}

// skipProperties returns the offset after the anchor and tag of a node.
func (s *source) skipProperties(n *yaml.Node, at int) int {
	block := n.Kind != yaml.ScalarNode && n.Style&yaml.FlowStyle == 0
	if block && n.Anchor == "" && n.Style&yaml.TaggedStyle == 0 {
		return at // an anchor here is that of its first key
	}
	empty := n.Kind == yaml.ScalarNode && n.Value == "" && n.Style&^yaml.TaggedStyle == 0
	for at < len(s.text) && (s.text[at] == '&' || s.text[at] == '!') {
		at = s.skipProperty(at)
		if next := s.skipBlank(at); !empty || next < len(s.text) && (s.text[next] == '&' || s.text[next] == '!') {
			at = next
		}
	}
	return at
}

// skipProperty returns the offset after the anchor or tag at the offset. The
// parser takes commas and square brackets for part of a tag.
func (s *source) skipProperty(at int) int {
	anchor := s.text[at] == '&'
	for at++; at < len(s.text); at++ {
		if c := s.text[at]; anchor && !isAnchor(c) || isBlank(c) || c == '{' || c == '}' {
			break
		}
	}
	return at
}

// isAnchor reports whether the parser takes a character for part of an anchor.
func isAnchor(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '_' || c == '-'
}

// skipBlank returns the offset of the next character that is neither blank nor
// part of a comment.
func (s *source) skipBlank(at int) int {
	for at < len(s.text) {
		switch s.text[at] {
		case ' ', '\t', '\r', '\n':
			at++
		case '#':
			for at < len(s.text) && s.text[at] != '\n' && s.text[at] != '\r' {
				at++
			}
		default:
			return at
		}
	}
	return at
}

// end returns the offset behind a node.
func (s *source) end(n *yaml.Node) int {
	at := s.skipProperties(n, s.offset(verdict.Position{Line: n.Line, Column: n.Column}))
	switch {
	case n.Kind == yaml.AliasNode:
		return min(at+1+len(n.Value), len(s.text))
	case n.Kind == yaml.ScalarNode:
		return s.scalarEnd(n, at)
	case len(n.Content) > 0:
		last := n.Content[len(n.Content)-1]
		at = max(at, s.end(last))
		if n.Kind == yaml.MappingNode && last.Value == "" {
			at = max(at, s.end(n.Content[len(n.Content)-2])) // a key without value
		}
	case at < len(s.text) && n.Style&yaml.FlowStyle != 0:
		at++ // the opening bracket
	}
	if n.Style&yaml.FlowStyle == 0 {
		return at
	}
	for at = s.skipBlank(at); at < len(s.text) && bytes.IndexByte([]byte(",:?"), s.text[at]) >= 0; {
		at = s.skipBlank(at + 1)
	}
	return min(at+1, len(s.text)) // the closing bracket
}

func (s *source) scalarEnd(n *yaml.Node, at int) int {
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		for at++; at < len(s.text) && s.text[at] != '"'; at++ {
			if s.text[at] == '\\' {
				at++
			}
		}
		return min(at+1, len(s.text))
	case n.Style&yaml.SingleQuotedStyle != 0:
		for at++; at < len(s.text); at++ {
			if s.text[at] != '\'' {
				continue
			}
			if at+1 >= len(s.text) || s.text[at+1] != '\'' {
				break
			}
			at++
		}
		return min(at+1, len(s.text))
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return s.blockEnd(at)
	}
	return s.plainEnd(n.Value, at)
}

// plainEnd walks the text along the value, which may be folded over lines.
func (s *source) plainEnd(value string, at int) int {
	for i := 0; i < len(value) && at < len(s.text); {
		switch {
		case isBlank(s.text[at]):
			for at < len(s.text) && isBlank(s.text[at]) {
				at++
			}
			for i < len(value) && isBlank(value[i]) {
				i++
			}
		case s.text[at] == value[i]:
			at++
			i++
		default:
			return at
		}
	}
	return at
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// blockEnd returns the end of a literal or folded text: the end of the last
// line that is not empty and is indented like its first one.
func (s *source) blockEnd(at int) int {
	line := s.position(at).Line
	end, indent := s.lineEnd(line), -1
	for line++; line <= len(s.lines); line++ {
		start, stop := s.lines[line-1], s.lineEnd(line)
		width := 0
		for start+width < stop && s.text[start+width] == ' ' {
			width++
		}
		if start+width == stop {
			continue
		}
		if indent < 0 {
			if indent = width; indent == 0 {
				break
			}
		}
		if width < indent {
			break
		}
		end = stop
	}
	return end
}

// lineEnd returns the offset behind the last character of a line.
func (s *source) lineEnd(line int) int {
	end := len(s.text)
	if line < len(s.lines) {
		end = s.lines[line]
	}
	for end > s.lines[line-1] && (s.text[end-1] == '\n' || s.text[end-1] == '\r') {
		end--
	}
	return end
}
