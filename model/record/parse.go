package record

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// MaxBytes is the size up to which a file is read as a record. A record of 400
// conductors has some 200 KB.
const MaxBytes = 8 << 20

// parse turns the text of a file into the node of its one document, a mapping.
// The node is nil if there is none.
func parse(name string, text []byte) (*yaml.Node, *source, Faults) {
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
	src := newSource(text)
	if off, says := stray(text); says != "" {
		return nil, src, Faults{{name, src.span(off, off), says}}
	}
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	doc, err := next(decoder)
	switch {
	case errors.Is(err, io.EOF), err == nil && isNull(doc.Content[0]):
		return nil, src, Faults{{name, at(1, 1), "the file holds no record; begin it with \"driploop: 1\""}}
	case err != nil:
		return nil, src, Faults{syntaxFault(name, src, err)}
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode {
		return nil, src, Faults{{name, src.rangeOf(root), fmt.Sprintf("a record is a mapping that begins with \"driploop: 1\"; here stands %s", noun(root))}}
	}
	switch second, err := next(decoder); {
	case err == nil:
		where := at(second.Line, second.Column)
		return root, src, Faults{{name, where, "a second document begins here; write one record a file"}}
	case !errors.Is(err, io.EOF):
		return nil, src, Faults{syntaxFault(name, src, err)}
	}
	return root, src, nil
}

// next reads the next document. The parser panics on some hostile texts.
func next(decoder *yaml.Decoder) (doc *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			doc, err = nil, fmt.Errorf("yaml: cannot be read: %v", p)
		}
	}()
	doc = &yaml.Node{}
	if err := decoder.Decode(doc); err != nil {
		return nil, err
	}
	return doc, nil
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

// syntaxFault places what the YAML parser says.
func syntaxFault(name string, src *source, err error) Fault {
	says := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 1
	if _, scanErr := fmt.Sscanf(says, "line %d:", &line); scanErr == nil {
		_, says, _ = strings.Cut(says, ": ")
	}
	p := verdict.Position{Line: line, Column: 1}
	return Fault{name, verdict.Range{Start: p, End: p}, says}
}
