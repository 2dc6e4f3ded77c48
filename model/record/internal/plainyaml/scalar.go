package plainyaml

import (
	"strings"
	"unicode/utf8"

	"driploop/model/record/internal/tree"
)

// scalar is a text on one line.
type scalar struct {
	value  string
	style  tree.Style
	from   int // byte offset
	line   int // from 1
	column int // from 0
	end    int // column behind it
}

// scalar reads a key, a value or an item that is a text; within brackets it ends
// at commas and brackets, too.
func (s *scanner) scalar(flow bool) (scalar, bool) {
	text := scalar{from: s.at, line: s.line, column: s.column()}
	var ok bool
	switch s.peek() {
	case '"':
		text.style = tree.DoubleQuoted
		text.value, ok = s.doubleQuoted()
	case '\'':
		text.style = tree.SingleQuoted
		text.value, ok = s.singleQuoted()
	default:
		if ok = s.beginsWord(); ok {
			text.value, ok = s.word(flow)
		}
	}
	text.end = s.column()
	return text, ok
}

// beginsWord reports whether a text without quotation marks begins here.
func (s *scanner) beginsWord() bool {
	switch c := s.peek(); c {
	case '?', ':', ',', '[', ']', '{', '}', '#', '&', '*', '!', '|', '>', '\'', '"', '%', '@', '`':
		return false
	case '-':
		return s.at+1 < len(s.text) && isWord(s.text[s.at+1])
	case '.':
		return s.column() > 0 // "..." in the first column ends a document
	default:
		return c > ' ' && c != 0x7f
	}
}

// isWord reports whether a character has no meaning of its own anywhere.
func isWord(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c == '.'
}

// word reads a text without quotation marks, of which blanks at the end are no
// part.
func (s *scanner) word(flow bool) (string, bool) {
	from, end := s.at, s.at
	at := s.at
scan:
	for ; at < len(s.text); at++ {
		c := s.text[at]
		if isWord(c) {
			end = at + 1
			continue
		}
		switch {
		case c == ' ':
			continue
		case c == '\n', c == '#' && s.text[at-1] == ' ':
			break scan
		case c == ':' && s.blankAt(at+1):
			break scan
		case c == ',', c == ']', c == '}':
			if flow {
				break scan
			}
		case c == '[', c == '{', c == '?':
			if flow {
				return "", false
			}
		case c == ':':
			if flow && strings.IndexByte(",[]{}?", s.text[at+1]) >= 0 {
				return "", false
			}
		case c >= utf8.RuneSelf:
			if !s.wide(&at) {
				return "", false
			}
		case c < ' ', c == 0x7f:
			return "", false
		}
		end = at + 1
	}
	s.at = end
	return s.text[from:end], true
}

// singleQuoted reads a text in which only the mark itself is written twice.
func (s *scanner) singleQuoted() (string, bool) {
	from, twice := s.at+1, false
	for at := from; at < len(s.text); at++ {
		switch c := s.text[at]; {
		case c == '\'' && at+1 < len(s.text) && s.text[at+1] == '\'':
			twice = true
			at++
		case c == '\'':
			s.at = at + 1
			if twice {
				return strings.ReplaceAll(s.text[from:at], "''", "'"), true
			}
			return s.text[from:at], true
		case c >= utf8.RuneSelf:
			if !s.wide(&at) {
				return "", false
			}
		case c < ' ', c == 0x7f:
			return "", false
		}
	}
	return "", false
}

// doubleQuoted reads a text in which a backslash stands only before a quotation
// mark or another backslash.
func (s *scanner) doubleQuoted() (string, bool) {
	from := s.at + 1
	var escaped []byte // the text before from, if there was a backslash
	for at := from; at < len(s.text); at++ {
		switch c := s.text[at]; {
		case c == '\\':
			if at+1 >= len(s.text) || s.text[at+1] != '"' && s.text[at+1] != '\\' {
				return "", false
			}
			escaped = append(escaped, s.text[from:at]...)
			at++
			from = at
		case c == '"':
			s.at = at + 1
			if escaped != nil {
				return string(append(escaped, s.text[from:at]...)), true
			}
			return s.text[from:at], true
		case c >= utf8.RuneSelf:
			if !s.wide(&at) {
				return "", false
			}
		case c < ' ', c == 0x7f:
			return "", false
		}
	}
	return "", false
}
