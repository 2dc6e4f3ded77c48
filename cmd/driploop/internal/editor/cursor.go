package editor

import (
	"strconv"
	"strings"
)

// cursor is what the cursor stands in, read from the layout alone, so that it
// is known while a line is half typed.
type cursor struct {
	path  []string // keys and indexes from the root to the mapping or value
	key   bool     // a key is typed; else the value of the last key of path
	word  string   // what stands before the cursor of the word being typed
	given []string // keys that the mapping has already on this line
}

func (c cursor) String() string {
	return strings.ReplaceAll(strings.Join(c.path, "."), ".[", "[")
}

// cursorAt reads the layout up to the cursor.
func cursorAt(lines []string, p position) cursor {
	if p.Line >= len(lines) {
		return cursor{key: true}
	}
	line := lines[p.Line]
	before := line[:offsetIn(line, p.Character)]
	indent := len(before) - len(strings.TrimLeft(before, " "))
	if strings.TrimSpace(before) == "" {
		indent = len(before)
	}
	path := blockPath(lines, p.Line, indent)
	rest := strings.TrimLeft(before, " ")
	for strings.HasPrefix(rest, "- ") || rest == "-" {
		// An item of the list that the block above holds.
		path = append(path, itemIndex(lines, p.Line, indent))
		rest = strings.TrimLeft(strings.TrimPrefix(rest, "-"), " ")
	}
	return alongLine(path, rest)
}

// blockPath is the path of the block mapping or list that a line with an
// indentation stands in.
func blockPath(lines []string, at, indent int) []string {
	var path []string
	for i := at - 1; i >= 0 && indent > 0; i-- {
		line := lines[i]
		bare := strings.TrimLeft(line, " ")
		if bare == "" || strings.HasPrefix(bare, "#") {
			continue
		}
		width := len(line) - len(bare)
		item := strings.HasPrefix(bare, "- ")
		keyAt := width
		if item {
			inner := strings.TrimLeft(bare[1:], " ")
			keyAt = len(line) - len(inner)
			bare = inner
		}
		// A key of an item's mapping, beside its first key.
		if item && keyAt == indent {
			path = append([]string{itemIndex(lines, i, width)}, path...)
			indent = width + 1
			if strings.HasPrefix(strings.TrimLeft(lines[at], " "), "- ") {
				indent = width
			}
			continue
		}
		if keyAt >= indent {
			continue
		}
		key, ok := keyOf(bare)
		if !ok {
			continue
		}
		path = append([]string{key}, path...)
		if indent = keyAt; item {
			path = append([]string{itemIndex(lines, i, width)}, path...)
			indent = width + 1
		}
	}
	return path
}

// itemIndex is the number of the item in its list, as a step of a path.
func itemIndex(lines []string, at, indent int) string {
	n := 0
	for i := at - 1; i >= 0; i-- {
		bare := strings.TrimLeft(lines[i], " ")
		width := len(lines[i]) - len(bare)
		if bare == "" || strings.HasPrefix(bare, "#") || width > indent {
			continue
		}
		if width < indent || !strings.HasPrefix(bare, "- ") {
			break
		}
		n++
	}
	return "[" + strconv.Itoa(n) + "]"
}

// keyOf is the key at the start of a text.
func keyOf(text string) (string, bool) {
	key, rest, ok := strings.Cut(text, ":")
	if !ok || rest != "" && rest[0] != ' ' {
		return "", false
	}
	return strings.Trim(key, `"' `), true
}

// alongLine follows keys and brackets within one line.
func alongLine(path []string, text string) cursor {
	c := cursor{path: path, key: true}
	var depth []int // length of the path at each bracket
	var lists []int // index of the item, -1 in a mapping
	var givens [][]string
	quote := byte(0)
	for i := 0; i < len(text); i++ {
		ch := text[i]
		switch {
		case quote != 0:
			if ch == quote {
				quote = 0
			}
			c.word += string(ch)
		case ch == '"' || ch == '\'':
			quote = ch
		case ch == ':' && (i+1 == len(text) || text[i+1] == ' ') && c.key:
			key := strings.TrimSpace(c.word)
			c.path = append(c.path[:len(c.path):len(c.path)], key)
			if n := len(givens); n > 0 {
				givens[n-1] = append(givens[n-1], key)
			}
			c.key, c.word = false, ""
		case ch == '{':
			depth, lists, givens = append(depth, len(c.path)), append(lists, -1), append(givens, nil)
			c.key, c.word = true, ""
		case ch == '[':
			depth, lists, givens = append(depth, len(c.path)), append(lists, 0), append(givens, nil)
			c.key, c.word = false, ""
		case (ch == '}' || ch == ']') && len(depth) > 0:
			n := len(depth) - 1
			c.path = c.path[:min(depth[n], len(c.path))]
			depth, lists, givens = depth[:n], lists[:n], givens[:n]
			c.key, c.word = false, ""
		case ch == ',' && len(depth) > 0:
			n := len(depth) - 1
			c.path = c.path[:min(depth[n], len(c.path))]
			c.key, c.word = lists[n] < 0, ""
		case ch == '&' && strings.TrimSpace(c.word) == "":
			for i < len(text) && text[i] != ' ' {
				i++
			}
		default:
			c.word += string(ch)
		}
	}
	c.word = strings.TrimLeft(c.word, " ")
	if n := len(givens); n > 0 {
		c.given = givens[n-1]
	}
	return c
}
