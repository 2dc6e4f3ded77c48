package record

import (
	"fmt"
	"regexp"
	"sort"
	"strings"
	"unicode/utf8"

	"driploop/model/verdict"
)

// maxSearched is the size up to which the place of a syntax error is searched:
// each step of the search parses the file again.
const maxSearched = 1 << 20

var atLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?`)

// syntaxFault says in plain words what the YAML parser says, and where. The
// parser tells at most the line where the mapping or list around the error
// begins; so the place is taken as the end of the shortest beginning of the
// file that fails in the same way.
func syntaxFault(name string, src *source, err error) Fault {
	text, says := src.text, err.Error()
	if len(text) > maxSearched {
		text = text[:0]
	}
	fails := func(length int) bool {
		_, _, err := documents(text[:length])
		return err != nil && err.Error() == says
	}
	line := sort.Search(len(src.lines), func(i int) bool { return len(text) == 0 || fails(src.lineEnd(i+1)) })
	if len(text) == 0 || line == len(src.lines) {
		return Fault{name, reportedLine(says), plainWords(says, 0)}
	}
	start, end := src.lines[line], src.lineEnd(line+1)
	at := start + sort.Search(end-start, func(i int) bool { return fails(start + i + 1) })
	for at > start && at < len(text) && !utf8.RuneStart(text[at]) {
		at--
	}
	at = min(at, max(end-1, start))
	var c byte
	if at < len(text) {
		c = text[at]
	}
	return Fault{name, src.span(at, at), plainWords(says, c)}
}

// reportedLine is the place that the parser reports.
func reportedLine(says string) verdict.Range {
	line := 1
	if m := atLine.FindStringSubmatch(says); m != nil && m[1] != "" {
		fmt.Sscan(m[1], &line) //nolint:errcheck // digits
	}
	p := verdict.Position{Line: max(line, 1), Column: 1}
	return verdict.Range{Start: p, End: p}
}

// plainWords turns a message of the parser into advice. The character is the
// one that the parser stumbled over.
func plainWords(says string, c byte) string {
	says = atLine.ReplaceAllString(says, "")
	has := func(part string) bool { return strings.Contains(says, part) }
	switch {
	case c == '\t' && (has("cannot start any token") || has("tab")):
		return "a tab stands here; indent with spaces"
	case has("cannot start any token"):
		return fmt.Sprintf("a value cannot begin with %q; put it in quotation marks", string(c))
	case has("mapping values are not allowed"):
		return "a colon stands where no key can be: put a value that holds a colon in quotation marks, or write one key a line and line keys up"
	case has("could not find expected ':'"):
		return "a key without its colon and value: write \"key: value\""
	case has("did not find expected key"):
		return "this does not line up with the keys above it: check its indentation, and that quotation marks are closed"
	case has("did not find expected '-' indicator"), has("block sequence entries are not allowed"):
		return "this does not line up with a list above it: check its indentation"
	case has("',' or '}'"):
		return "a comma or the closing } is missing"
	case has("',' or ']'"):
		return "a comma or the closing ] is missing"
	case has("unexpected end of stream"):
		return "a quotation mark opens here and is not closed"
	case has("unknown escape character"), has("escape code"):
		return "a backslash in double quotation marks begins an escape; use single quotation marks"
	case has("unknown anchor"):
		return says[strings.Index(says, "unknown"):] + ": write \"&name\" before its first use"
	case has("expected <document start>"):
		return "the record ended before this line: check its indentation"
	}
	return says
}
