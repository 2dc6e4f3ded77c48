package plainyaml

import (
	"strings"
	"unicode/utf8"

	"driploop/model/record/internal/tree"
)

// scalar reads a key, a value or an item that is a text on one line; within
// brackets it ends at commas and brackets, too.
func (s *scanner) scalar(flow bool) *tree.Node {
	n := s.nodes.Node(tree.Scalar, tree.Str)
	line := int32(s.line)
	n.At = tree.Extent{Line: line, Column: int32(s.column() + 1), EndLine: line}
	var ok bool
	switch s.peek() {
	case '"':
		n.Style = tree.DoubleQuoted
		n.Value, ok = s.doubleQuoted()
	case '\'':
		n.Style = tree.SingleQuoted
		n.Value, ok = s.singleQuoted()
	default:
		if ok = s.beginsWord(); ok {
			n.Value, ok = s.word(flow)
			n.Tag = tagOf(n.Value)
		}
	}
	if !ok {
		return nil
	}
	n.At.EndColumn = int32(s.column() + 1)
	return n
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

// plain tells of each character whether it needs no second look within a text
// without quotation marks.
var plain = func() (all [256]bool) {
	for c := '!'; c < 0x7f; c++ {
		all[c] = !strings.ContainsRune("#:,[]{}?", c)
	}
	return all
}()

// word reads a text without quotation marks, of which blanks at the end are no
// part.
func (s *scanner) word(flow bool) (string, bool) {
	text, from, at := s.text, s.at, s.at
scan:
	for at < len(text) {
		c := text[at]
		if plain[c] {
			at++
			continue
		}
		behind := at // the blanks, if there are some
		for behind < len(text) && text[behind] == ' ' {
			behind++
		}
		if behind == len(text) {
			break
		}
		switch c := text[behind]; {
		case c == '\n', c == '#' && behind > at:
			break scan
		case c == ':' && s.blankAt(behind+1):
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
			if flow && strings.IndexByte(",[]{}?", text[behind+1]) >= 0 {
				return "", false
			}
		case c >= utf8.RuneSelf:
			if !s.wide(&behind) {
				return "", false
			}
		case c < ' ', c == 0x7f:
			return "", false
		}
		at = behind + 1
	}
	s.at = at
	return text[from:at], true
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
