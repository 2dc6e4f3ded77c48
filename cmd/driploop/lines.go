package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"driploop/model/record"
)

// maxLine bounds a line of a stream of records: the longest record, with what
// escapes make of it.
const maxLine = 2*record.MaxBytes + 64<<10

// line is one line of a stream of records.
type line struct {
	number int
	text   []byte // without its end
	long   bool   // beyond maxLine; the text is then not kept
}

// lineReader reads lines and holds no more than one of them, up to maxLine.
type lineReader struct {
	from   *bufio.Reader
	number int
	err    error // of the stream, other than its end
}

func newLineReader(from io.Reader) *lineReader {
	return &lineReader{from: bufio.NewReaderSize(from, 64<<10)}
}

// all yields the lines in order. The last one needs no end.
func (r *lineReader) all(yield func(line) bool) {
	for {
		l, more := r.next()
		if !more || !yield(l) {
			return
		}
	}
}

func (r *lineReader) next() (l line, more bool) {
	for {
		part, err := r.from.ReadSlice('\n')
		if len(part) > 0 && !more {
			r.number++
			l.number, more = r.number, true
		}
		switch {
		case l.long:
		case len(l.text)+len(part) > maxLine:
			l.text, l.long = nil, true
		default:
			l.text = append(l.text, part...)
		}
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		if err != nil && !errors.Is(err, io.EOF) {
			r.err = err
			return l, false // what is cut off is no line
		}
		l.text = bytes.TrimSuffix(l.text, []byte("\n"))
		return l, more
	}
}

// record returns the name and the text of the record that a line holds: either
// as {"path": NAME, "text": YAML}, or as an object that is the record itself.
func (l line) record() (path string, text []byte, err error) {
	path = fmt.Sprintf("line %d", l.number)
	switch {
	case l.long:
		return path, nil, fmt.Errorf("is too long: a line has at most %d MiB", maxLine>>20)
	case len(bytes.TrimSpace(l.text)) == 0:
		return path, nil, errors.New("is empty: each line holds one record")
	case !utf8.Valid(l.text):
		return path, nil, errors.New("is no JSON: it is not UTF-8")
	}
	entries, err := topLevel(l.text)
	if err != nil {
		return path, nil, err
	}
	_, wrapped := entries["text"]
	if _, itself := entries["driploop"]; itself && !wrapped {
		return path, spelledForYAML(l.text), nil
	}
	if !wrapped {
		return path, nil, errors.New(`holds no record: write {"path": NAME, "text": YAML}, or the record itself, with its key "driploop"`)
	}
	var yaml string
	for key, value := range entries {
		into := map[string]*string{"path": &path, "text": &yaml}[key]
		if into == nil {
			return path, nil, fmt.Errorf(`has an entry %q beside "text"; only "path" may stand there`, key)
		}
		if err := json.Unmarshal(value, into); err != nil || value[0] != '"' {
			return path, nil, fmt.Errorf("has no text under %q", key)
		}
	}
	if len(yaml) > record.MaxBytes {
		return path, nil, fmt.Errorf("is %w: it has more than %d MiB", record.ErrTooLarge, record.MaxBytes>>20)
	}
	return path, []byte(yaml), nil
}

// topLevel returns the entries of an object, each key once.
func topLevel(text []byte) (map[string]json.RawMessage, error) {
	if !json.Valid(text) {
		err := json.Unmarshal(text, new(any))
		var syntax *json.SyntaxError
		if errors.As(err, &syntax) {
			return nil, fmt.Errorf("is no JSON: %w, at byte %d", err, syntax.Offset)
		}
		return nil, fmt.Errorf("is no JSON: %w", err)
	}
	if bytes.TrimSpace(text)[0] != '{' {
		return nil, errors.New("is JSON, and no object: each line holds one record")
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	_, err := decoder.Token() // the brace
	entries := map[string]json.RawMessage{}
	for err == nil && decoder.More() {
		var key json.Token
		var value json.RawMessage
		if key, err = decoder.Token(); err != nil {
			break
		}
		if err = decoder.Decode(&value); err != nil {
			break
		}
		name, _ := key.(string) // JSON has no other keys
		if _, twice := entries[name]; twice {
			return nil, fmt.Errorf("has the entry %q twice", name)
		}
		entries[name] = value
	}
	if err != nil {
		return nil, fmt.Errorf("is no JSON: %w", err)
	}
	return entries, nil
}

// spelledForYAML writes out the escapes of JSON that the reader of YAML does not
// know: a slash, and a character beyond the first plane as two halves.
func spelledForYAML(text []byte) []byte {
	out := make([]byte, 0, len(text))
	for len(text) > 0 {
		size := 1
		switch {
		case text[0] != '\\':
		case text[1] == '/':
			text = text[1:]
		case text[1] != 'u':
			size = 2
		case isHalf(text, '8'):
			size = 6
			if isHalf(text[6:], 'c') {
				size = 12
			}
			var r string
			if err := json.Unmarshal([]byte(`"`+string(text[:size])+`"`), &r); err != nil {
				panic(err) // the text is JSON
			}
			out, text = append(out, r...), text[size:]
			continue
		}
		out, text = append(out, text[:size]...), text[size:]
	}
	return out
}

// isHalf tells whether a text begins with half a character as JSON escapes it:
// D800 to DFFF; from DC00 on it is a second half.
func isHalf(text []byte, from byte) bool {
	return len(text) >= 6 && text[0] == '\\' && text[1] == 'u' && text[2]|0x20 == 'd' && text[3]|0x20 >= from
}
