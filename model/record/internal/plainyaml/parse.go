// Package plainyaml reads the part of YAML that records are written in, several
// times as fast as a parser of all of YAML.
//
// It knows block and bracketed mappings and lists, texts on one line, plain or
// quoted, anchors, aliases and comments. A text that holds anything else, that is
// not YAML, or that leaves any doubt is handed on: Parse returns nil, and yaml.v3
// reads all of it. So every message about faulty YAML stays that of yaml.v3, and
// what Parse returns tells what yaml.v3 would have returned; the tests hold the two
// together, node by node.
package plainyaml

import (
	"unicode/utf8"

	"driploop/model/record/internal/tree"
)

const (
	// maxDepth bounds how deep nodes stand within each other; those of a record
	// stand less than ten deep.
	maxDepth = 64
	// maxKey is the length up to which YAML takes a text for a key, in characters.
	maxKey = 1024
)

// Parse returns the root of a text, a mapping, with what yaml.v3 tells of its nodes
// but comments, made by an arena; nil if the text has to be read by yaml.v3.
func Parse(text string, nodes *tree.Arena) *tree.Node {
	s := &scanner{text: text, line: 1, nodes: nodes}
	if !s.next() {
		return nil
	}
	line := s.line
	if s.column() == 0 && s.rest("---") && s.blankAt(s.at+3) {
		s.at += 3
		if !s.next() || s.line == line {
			return nil
		}
	}
	if s.indent() != 0 {
		return nil // empty, or beginning in an unusual place
	}
	from := s.at
	key := s.scalar(false)
	if key == nil || !s.colon(from) {
		return nil
	}
	root := s.mapping(key)
	if root == nil || !s.done() {
		return nil
	}
	return root
}

// scanner goes through a text once, never back. Its methods stand at the first
// character of what they read and leave at the next one; a nil node or false
// means that the text is handed on.
type scanner struct {
	text string
	at   int // byte offset
	line int // from 1
	// zero is the offset that the line would begin at if all characters before at
	// had one byte, so that at-zero is the column in characters.
	zero int

	depth   int
	anchors map[string]*tree.Node
	pending anchor // of the node that comes next
	nodes   *tree.Arena
}

func (s *scanner) done() bool { return s.at >= len(s.text) }

// column is the place in the line, from 0.
func (s *scanner) column() int { return s.at - s.zero }

// indent is the column, or -1 at the end of the text.
func (s *scanner) indent() int {
	if s.done() {
		return -1
	}
	return s.column()
}

// peek returns the byte here, 0 at the end of the text.
func (s *scanner) peek() byte {
	if s.done() {
		return 0
	}
	return s.text[s.at]
}

// rest reports whether the text goes on with a word.
func (s *scanner) rest(word string) bool {
	return len(s.text)-s.at >= len(word) && s.text[s.at:s.at+len(word)] == word
}

// blankAt reports whether a blank, the end of a line or of the text is at an
// offset. A tab is none of these: it is never read but in comments.
func (s *scanner) blankAt(at int) bool {
	return at >= len(s.text) || s.text[at] == ' ' || s.text[at] == '\n'
}

// next goes to the next character that is neither blank nor in a comment.
func (s *scanner) next() bool {
	for {
		for s.at < len(s.text) && s.text[s.at] == ' ' {
			s.at++
		}
		switch s.peek() {
		case '#':
			if s.at > 0 && !s.blankAt(s.at-1) || !s.comment() {
				return false
			}
		case '\n':
			s.at++
			s.line++
			s.zero = s.at
		default:
			return true
		}
	}
}

// endLine goes to the next character that is neither blank nor in a comment,
// which has to be on a further line.
func (s *scanner) endLine() bool {
	line := s.line
	return s.next() && (s.line > line || s.done())
}

// comment goes to the end of the line.
func (s *scanner) comment() bool {
	for ; !s.done(); s.at++ {
		c := s.text[s.at]
		switch {
		case c == '\n':
			return true
		case c >= utf8.RuneSelf:
			if !s.wide(&s.at) {
				return false
			}
		case c < ' ' && c != '\t', c == 0x7f:
			return false
		}
	}
	return true
}

// wide goes from the first to the last byte of a character beyond ASCII, and
// reports whether YAML allows it and takes it for no line break.
func (s *scanner) wide(at *int) bool {
	r, size := utf8.DecodeRuneInString(s.text[*at:])
	*at += size - 1
	s.zero += size - 1
	switch {
	case r == utf8.RuneError && size == 1, r < 0xa0, r == '\u2028', r == '\u2029', r == '\ufeff', r == '\ufffe', r == '\uffff':
		return false
	}
	return true
}
