package reports

import (
	"bufio"
	"io"
	"strings"
)

// sarifWriter writes a log result by result, each on a line of its own. What
// results refer to by number is known at the end only, and stands behind them:
// the order of the properties of an object means nothing in JSON.
type sarifWriter struct {
	w       *bufio.Writer
	results int
	err     error
}

func newSARIFWriter(w io.Writer) *sarifWriter {
	s := &sarifWriter{w: bufio.NewWriterSize(w, 64<<10)}
	s.raw("{\n  \"$schema\": \"" + sarifSchema + "\",\n  \"version\": \"2.1.0\",\n  \"runs\": [\n    {\n")
	s.raw("      \"columnKind\": \"unicodeCodePoints\",\n      \"originalUriBaseIds\": ")
	s.tree(map[string]sarifArtifact{baseID: {Description: &sarifText{Text: "The folder that the records were judged from."}}}, indented("      "))
	s.raw(",\n      \"results\": [")
	return s
}

func (s *sarifWriter) result(r sarifResult) {
	if s.results > 0 {
		s.raw(",")
	}
	s.raw("\n        ")
	s.results++
	s.tree(r, compact)
}

// close writes the rest of the run, which goes on within the object that the
// results stand in, and ends the log.
func (s *sarifWriter) close(rest sarifRun) error {
	if s.results > 0 {
		s.raw("\n      ")
	}
	s.raw("],\n      ")
	text, err := jsonText(rest, indented("    "))
	if err != nil {
		return err
	}
	s.raw(strings.TrimPrefix(string(text), "{\n      "))
	s.raw("\n  ]\n}\n")
	if s.err == nil {
		s.err = s.w.Flush()
	}
	return s.err
}

func (s *sarifWriter) tree(tree any, lay layout) {
	text, err := jsonText(tree, lay)
	if s.err == nil {
		s.err = err
	}
	s.raw(string(text))
}

func (s *sarifWriter) raw(text string) {
	if s.err == nil {
		_, s.err = s.w.WriteString(text)
	}
}
