package record

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// maxSearched is the size up to which the place of a syntax error is searched:
// each step of the search parses the file again.
const maxSearched = 1 << 20

var reported = regexp.MustCompile(`^yaml: (?:line (\d+): )?`)

// syntaxFault says in plain words what the YAML parser says, and where. The
// parser tells at most the line where the mapping or list around the error
// begins; so the place is taken as the end of the shortest beginning of the
// file that fails in the same way.
func syntaxFault(name string, src *tree.Source, err error) Fault {
	says := err.Error()
	if len(src.Text) > maxSearched {
		return Fault{name, reportedLine(says), plainWords(says, 0, "")}
	}
	at := failure(src.Text, says, seamsOf(src.Text))
	if strings.Contains(says, "unknown anchor") {
		at = max(bytes.LastIndexByte(src.Text[:at+1], '*'), 0)
	}
	end := at
	if at < len(src.Text) && src.Text[at] != '\n' && src.Text[at] != '\r' {
		_, size := utf8.DecodeRune(src.Text[at:])
		end += size
	}
	var opened string
	if open := unclosed(src.Text[:at]); len(open) > 0 {
		last := open[len(open)-1]
		p := src.Position(last)
		opened = fmt.Sprintf("the %c in line %d, column %d", src.Text[last], p.Line, p.Column)
	}
	return Fault{name, src.Span(at, end), plainWords(says, charAt(src.Text, at), opened)}
}

// unclosed returns the offsets of the brackets that are open at the end of a
// text. It knows quotation and comments as they are commonly written.
func unclosed(text []byte) []int {
	var open []int
	for i := 0; i < len(text); i++ {
		fresh := i == 0 || bytes.IndexByte([]byte(" \n\r\t,[{:"), text[i-1]) >= 0
		switch c := text[i]; {
		case (c == '"' || c == '\'') && fresh:
			end := bytes.IndexByte(text[i+1:], c)
			if end < 0 {
				return open
			}
			i += end + 1
		case c == '#' && fresh:
			end := bytes.IndexByte(text[i:], '\n')
			if end < 0 {
				return open
			}
			i += end
		case c == '[' || c == '{':
			open = append(open, i)
		case (c == ']' || c == '}') && len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	return open
}

func charAt(text []byte, at int) byte {
	if at < len(text) {
		return text[at]
	}
	return 0
}

// reportedLine is the place that the parser reports.
func reportedLine(says string) verdict.Range {
	line := 1
	if m := reported.FindStringSubmatch(says); m != nil && m[1] != "" {
		if n, err := strconv.Atoi(m[1]); err == nil && n > 0 {
			line = n
		}
	}
	p := verdict.Position{Line: line, Column: 1}
	return verdict.Range{Start: p, End: p}
}

// plainWords turns a message of the parser into advice. The character is the
// one that it stumbled over, opened the bracket around it, if any.
func plainWords(says string, c byte, opened string) string {
	says = reported.ReplaceAllString(says, "")
	has := func(part string) bool { return strings.Contains(says, part) }
	switch {
	case c == '\t' && (has("cannot start any token") || has("tab")):
		return "a tab stands here; indent with spaces"
	case has("cannot start any token") && c != 0:
		return fmt.Sprintf("a value cannot begin with %q; put it in quotation marks", string(c))
	case has("mapping values are not allowed"):
		return "no key can stand here: the line above lacks its colon, this one is indented too far, or a value that holds a colon lacks its quotation marks"
	case has("could not find expected ':'"):
		return `a key stands here without its colon and value; write "key: value"`
	case has("did not find expected key"):
		return "this does not line up with the keys above it: check its indentation, and that quotation marks are closed"
	case has("did not find expected '-' indicator"), has("block sequence entries are not allowed"):
		return "this does not line up with a list above it: check its indentation"
	case (has("',' or '}'") || has("',' or ']'")) && opened != "":
		return "a comma is missing before here, or " + opened + " is not closed"
	case has("unexpected end of stream"):
		return "a quotation mark opens here and is not closed"
	case has("unknown escape character"), has("escape code"):
		return "a backslash in double quotation marks begins an escape; use single quotation marks"
	case has("unknown anchor"):
		_, anchor, _ := strings.Cut(says, "unknown ")
		return strings.TrimSuffix(anchor, " referenced") + ` is not known here: write "&" and its name before the part that it stands for`
	case has("expected <document start>"):
		return "the record ended before this line: check its indentation"
	}
	return "not YAML: " + says
}
