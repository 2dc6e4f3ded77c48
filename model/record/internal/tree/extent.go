package tree

import (
	"bytes"
	"unicode/utf8"

	"driploop/model/verdict"
)

// RangeOf returns the range of a node as written, without its anchor and tag.
// yaml.v3 tells only where a node starts: where it ends is read from the text.
func (s *Source) RangeOf(n *Node) verdict.Range {
	if !n.Located() {
		s.Locate(n)
	}
	return n.At.Range()
}

// Locate finds the range of a node.
func (s *Source) Locate(n *Node) { n.At = Of(s.written(n)) }

func (s *Source) written(n *Node) verdict.Range {
	start := n.Begin()
	at := s.Offset(start)
	// The common case first: a plain word on one line.
	if n.Kind == Scalar && n.Style == 0 && n.Anchor() == "" && n.Value != "" && s.starts(at, n.Value) {
		columns := len(n.Value)
		if s.marks != nil {
			columns = utf8.RuneCountInString(n.Value)
		}
		return verdict.Range{Start: start, End: verdict.Position{Line: start.Line, Column: start.Column + columns}}
	}
	from := s.skipProperties(n, at)
	to := max(s.end(n), from)
	if from != at {
		start = s.Position(from)
	}
	return verdict.Range{Start: start, End: s.Position(to)}
}

// End returns the offset behind a node.
func (s *Source) End(n *Node) int { return s.Offset(s.RangeOf(n).End) }

// starts reports whether the text goes on with a word at the offset.
func (s *Source) starts(at int, word string) bool {
	return len(s.Text)-at >= len(word) && string(s.Text[at:at+len(word)]) == word
}

// skipProperties returns the offset after the anchor and tag of a node.
func (s *Source) skipProperties(n *Node, at int) int {
	block := n.Kind != Scalar && n.Style&Flow == 0
	if block && n.Anchor() == "" && n.Style&Tagged == 0 {
		return at // an anchor here is that of its first key
	}
	empty := n.Kind == Scalar && n.Value == "" && n.Style&^Tagged == 0
	for at < len(s.Text) && (s.Text[at] == '&' || s.Text[at] == '!') {
		at = s.skipProperty(at)
		if next := s.SkipBlank(at); !empty || next < len(s.Text) && (s.Text[next] == '&' || s.Text[next] == '!') {
			at = next
		}
	}
	return at
}

// skipProperty returns the offset after the anchor or tag at the offset. The
// parser takes commas and square brackets for part of a tag.
func (s *Source) skipProperty(at int) int {
	anchor := s.Text[at] == '&'
	for at++; at < len(s.Text); at++ {
		if c := s.Text[at]; anchor && !isAnchor(c) || isBlank(c) || c == '{' || c == '}' {
			break
		}
	}
	return at
}

// isAnchor reports whether the parser takes a character for part of an anchor.
func isAnchor(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '_' || c == '-'
}

// SkipBlank returns the offset of the next character that is neither blank nor
// part of a comment.
func (s *Source) SkipBlank(at int) int {
	for at < len(s.Text) {
		switch s.Text[at] {
		case ' ', '\t', '\r', '\n':
			at++
		case '#':
			for at < len(s.Text) && s.Text[at] != '\n' && s.Text[at] != '\r' {
				at++
			}
		default:
			return at
		}
	}
	return at
}

// end reads the offset behind a node.
func (s *Source) end(n *Node) int {
	at := s.skipProperties(n, s.Offset(n.Begin()))
	switch {
	case n.Kind == Alias:
		return min(at+1+len(n.Value), len(s.Text))
	case n.Kind == Scalar:
		return s.scalarEnd(n, at)
	case n.First != nil:
		before, last := n.lastTwo()
		at = max(at, s.End(last))
		if n.Kind == Mapping && last.Value == "" {
			at = max(at, s.End(before)) // a key without value
		}
	case at < len(s.Text) && n.Style&Flow != 0:
		at++ // the opening bracket
	}
	if n.Style&Flow == 0 {
		return at
	}
	for at = s.SkipBlank(at); at < len(s.Text) && bytes.IndexByte([]byte(",:?"), s.Text[at]) >= 0; {
		at = s.SkipBlank(at + 1)
	}
	return min(at+1, len(s.Text)) // the closing bracket
}

func (s *Source) scalarEnd(n *Node, at int) int {
	switch {
	case n.Style&DoubleQuoted != 0:
		for at++; at < len(s.Text) && s.Text[at] != '"'; at++ {
			if s.Text[at] == '\\' {
				at++
			}
		}
		return min(at+1, len(s.Text))
	case n.Style&SingleQuoted != 0:
		for at++; at < len(s.Text); at++ {
			if s.Text[at] != '\'' {
				continue
			}
			if at+1 >= len(s.Text) || s.Text[at+1] != '\'' {
				break
			}
			at++
		}
		return min(at+1, len(s.Text))
	case n.Style&(Literal|Folded) != 0:
		return s.blockEnd(at)
	}
	return s.plainEnd(n.Value, at)
}

// plainEnd walks the text along the value, which may be folded over lines.
func (s *Source) plainEnd(value string, at int) int {
	for i := 0; i < len(value) && at < len(s.Text); {
		switch {
		case isBlank(s.Text[at]):
			for at < len(s.Text) && isBlank(s.Text[at]) {
				at++
			}
			for i < len(value) && isBlank(value[i]) {
				i++
			}
		case s.Text[at] == value[i]:
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
func (s *Source) blockEnd(at int) int {
	line := s.Position(at).Line
	end, indent := s.LineEnd(line), -1
	for line++; line <= len(s.lines); line++ {
		start, stop := s.lines[line-1], s.LineEnd(line)
		width := 0
		for start+width < stop && s.Text[start+width] == ' ' {
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
