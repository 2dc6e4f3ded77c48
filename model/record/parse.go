package record

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/plainyaml"
	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// Bounds of a file, looked at before it is parsed. A record of 400 conductors
// has some 200 KB and 60,000 keys and values; the parser takes 250 bytes for each.
const (
	MaxBytes = 4 << 20
	maxNodes = 1 << 20
	maxDepth = 100 // of brackets within each other
)

// parse turns the text of a file into the root of its one document, a mapping,
// with nodes of an arena. The root is nil if there is none.
func parse(name string, text []byte, nodes *tree.Arena) (*tree.Node, *tree.Source, Faults) {
	at := func(line, column int) verdict.Range {
		p := verdict.Position{Line: line, Column: column}
		return verdict.Range{Start: p, End: p}
	}
	if len(text) > MaxBytes {
		return nil, nil, Faults{{name, at(1, 1), fmt.Sprintf("the file has %d bytes; a record has at most %d", len(text), MaxBytes)}}
	}
	if says := encoding(text); says != "" {
		return nil, nil, Faults{{name, at(1, 1), says}}
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	src := tree.NewSource(text)
	if bounded(text) {
		if root := plainyaml.Parse(string(text), nodes); root != nil {
			return root, src, nil // it holds no stray character and bounds its depth
		}
	}
	for _, scan := range []func([]byte) (int, string){stray, crowd} {
		if off, says := scan(text); says != "" {
			return nil, src, Faults{{name, src.Span(off, off), says}}
		}
	}
	doc, second, err := documents(bytes.NewReader(text))
	switch {
	case err != nil:
		return nil, src, Faults{syntaxFault(name, src, err)}
	case doc == nil, second == nil && isNothing(doc.Content[0]):
		return nil, src, Faults{{name, at(1, 1), "the file holds no record; begin it with \"driploop: 1\""}}
	}
	root := nodes.Read(doc.Content[0])
	if root.Kind != tree.Mapping {
		return nil, src, Faults{{name, src.RangeOf(root), fmt.Sprintf("a record is a mapping that begins with \"driploop: 1\"; here stands %s", noun(root))}}
	}
	if second != nil {
		return root, src, Faults{{name, at(second.Line, second.Column), "a second document begins here; write one record a file"}}
	}
	return root, src, nil
}

func isNothing(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// documents returns the first two documents of a text, as far as it has them.
// The parser panics on some hostile texts.
func documents(from io.Reader) (first, second *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			first, second, err = nil, nil, fmt.Errorf("yaml: cannot be read: %v", p)
		}
	}()
	decoder := yaml.NewDecoder(from)
	for _, doc := range []**yaml.Node{&first, &second} {
		var node yaml.Node
		if err := decoder.Decode(&node); errors.Is(err, io.EOF) {
			return first, second, nil
		} else if err != nil {
			return nil, nil, err
		}
		*doc = &node
	}
	return first, second, nil
}

// encoding says what is wrong with the encoding of a text as a whole.
func encoding(text []byte) string {
	for _, mark := range []string{"\xff\xfe", "\xfe\xff", "\x00\x00\xfe\xff"} {
		if bytes.HasPrefix(text, []byte(mark)) {
			return "the file is in UTF-16 or UTF-32; save it as UTF-8"
		}
	}
	return ""
}

// stray finds the first byte or character that a YAML text cannot hold.
func stray(text []byte) (int, string) {
	for i := 0; i < len(text); {
		c := text[i]
		if c < utf8.RuneSelf {
			if c >= ' ' && c < 0x7f {
				i++
				continue
			}
			if c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f {
				if c == 0 {
					return i, "a NUL byte stands here; save the file as plain text in UTF-8"
				}
				return i, fmt.Sprintf("the control character U+%04X stands here; delete it", c)
			}
			i++
			continue
		}
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			return i, fmt.Sprintf("the byte %#02x is not UTF-8; save the file as UTF-8", c)
		case r < 0xa0, r == '\u2028', r == '\u2029', r == '\ufeff', r == '\ufffe', r == '\uffff':
			return i, fmt.Sprintf("the character U+%04X stands here; delete it", r)
		}
		i += size
	}
	return 0, ""
}

// bounded reports whether a text cannot have more keys and values than maxNodes,
// or does not. No character counts for more than two of them.
func bounded(text []byte) bool {
	if len(text) <= maxNodes/2 {
		return true
	}
	_, says := crowd(text)
	return says == ""
}

// crowd finds where a text has more keys, values or nesting than a record can
// have. It counts what could begin a node and knows quotation only roughly, so
// that it may let through what the parser will refuse, not the reverse.
func crowd(text []byte) (int, string) {
	// The characters that count, as bits: most do not, and are passed quickly.
	const low = 1<<':' | 1<<',' | 1<<'?' | 1<<'-' | 1<<'\n'
	const high = 1<<('['-64) | 1<<(']'-64) | 1<<('{'-64) | 1<<('}'-64)
	counts := [4]uint64{low, high}
	nodes, depth := 0, 0
	for i, c := range text {
		if counts[c/64]>>(c%64)&1 == 0 {
			continue
		}
		switch c {
		case ':':
			nodes += 2
		case ',', '?', '-':
			nodes++
		case '[', '{':
			nodes++
			depth++
		case ']', '}':
			depth = max(depth-1, 0)
		case '\n':
			// A key in the first column is outside all brackets.
			if i+1 < len(text) && (text[i+1] >= 'a' && text[i+1] <= 'z') {
				depth = 0
			}
		}
		if depth > maxDepth {
			return i, fmt.Sprintf("brackets stand more than %d deep within each other; a record has fewer than ten", maxDepth)
		}
		if nodes > maxNodes {
			return i, "the file has more than a million keys and values up to here; split it"
		}
	}
	return 0, ""
}
