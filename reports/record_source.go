package reports

import (
	"bytes"
	"strings"
	"sync"

	"driploop/model/verdict"
)

// Source is the text of one record and where its entries stand in it.
type Source struct {
	text   []byte
	starts func() []int // of the lines in the text; nil where only a few are held

	find func(path string) (verdict.Range, bool) // where an entry of the record stands; may be nil
	few  map[int]string                          // some of the lines by their number
}

// NewSource returns the source of a record with its text, which stays as it is.
// Where entries stand is told by find, which may be nil.
func NewSource(text []byte, find func(path string) (verdict.Range, bool)) *Source {
	// Most lines are never shown, and of many records none is.
	return &Source{text: text, find: find, starts: sync.OnceValue(func() []int { return startsOf(text) })}
}

// startsOf returns where the lines of a text start.
func startsOf(text []byte) []int {
	starts := make([]int, 1, 1+bytes.Count(text, []byte{'\n'}))
	for at := 0; ; {
		n := bytes.IndexByte(text[at:], '\n')
		if n < 0 {
			return starts
		}
		at += n + 1
		starts = append(starts, at)
	}
}

// Few returns a source that holds some lines only, and no places: it takes little
// memory and shares none.
func (src *Source) Few(numbers ...int) *Source {
	few := &Source{few: map[int]string{}}
	for _, n := range numbers {
		if text, ok := src.line(n); ok {
			few.few[n] = text
		}
	}
	return few
}

// FewLines returns the lines of a source made by Few.
func (src *Source) FewLines() map[int]string { return src.few }

// SourceOf returns a source of some lines.
func SourceOf(few map[int]string) *Source { return &Source{few: few} }

// lines is how many lines the source holds from the first one on.
func (src *Source) lines() int {
	if src == nil || src.starts == nil {
		return 0
	}
	return len(src.starts())
}

// line returns a line of the text, counted from 1, if the source holds it.
func (src *Source) line(n int) (string, bool) {
	switch {
	case src == nil:
		return "", false
	case n < 1 || n > src.lines():
		text, ok := src.few[n]
		return text, ok
	}
	starts, end := src.starts(), len(src.text)
	if n < len(starts) {
		end = starts[n] - 1
	}
	return strings.TrimSuffix(string(src.text[starts[n-1]:end]), "\r"), true
}

// Find returns where an entry stands, if the source knows.
func (src *Source) Find(path string) (verdict.Range, bool) {
	if src.find == nil {
		return verdict.Range{}, false
	}
	return src.find(path)
}

// At is the range of Find.
func (src *Source) At(path string) verdict.Range {
	at, _ := src.Find(path)
	return at
}
