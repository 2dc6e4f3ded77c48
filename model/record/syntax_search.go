package record

import (
	"bytes"
	"io"
	"slices"
	"sort"
	"unicode/utf8"
)

// failure returns the offset of the last character of the shortest beginning of
// the text that fails with the message. What is open at its end is closed, so
// that only what stands in it counts.
//
// Seams spare reading what stands before them again and again; without any the
// answer is the same.
func failure(text []byte, says string, seams []seam) int {
	s := search{text, says, seams}
	// What the parser read when it gave up is a few characters too long: go back
	// from there in growing steps, then halve the last one.
	longest := s.readBeforeFailure()
	if !s.fails(longest) {
		if seams != nil {
			return failure(text, says, nil) // the parser thinks otherwise of what they leave out
		}
		longest = len(text)
	}
	shorter, step := longest-1, 1
	for shorter > 0 && s.fails(shorter) {
		longest, shorter, step = shorter, max(shorter-step, 0), 2*step
	}
	length := shorter + 1 + sort.Search(longest-shorter-1, func(i int) bool { return s.fails(shorter + 1 + i) })
	at := max(length-1, 0)
	for at > 0 && at < len(text) && !utf8.RuneStart(text[at]) {
		at--
	}
	return at
}

// search looks for the beginning of a text that fails with a message.
type search struct {
	text  []byte
	says  string
	seams []seam
}

// from returns a text for the parser that stands for the one up to an offset, and
// what was put in the place of its beginning.
func (s *search) from(length int) (start []byte, seam seam) {
	i := sort.Search(len(s.seams), func(i int) bool { return s.seams[i].at > length })
	if i > 0 {
		seam = s.seams[i-1]
	}
	return slices.Concat(seam.instead(), s.text[seam.at:length]), seam
}

func (s *search) fails(length int) bool {
	start, _ := s.from(length)
	for _, bracket := range slices.Backward(unclosed(s.text[:length])) {
		start = append(start, s.text[bracket]+2) // ASCII: [ and ], { and } are two apart
	}
	_, _, err := documents(bytes.NewReader(start))
	return err != nil && err.Error() == s.says
}

// readBeforeFailure returns how much of the text the parser reads before it fails.
func (s *search) readBeforeFailure() int {
	start, seam := s.from(len(s.text))
	left := bytes.NewReader(start)
	_, _, _ = documents(sipping{left})
	return max(len(s.text)-left.Len(), seam.at)
}

// sipping gives one byte at a time: so the parser takes no more than it needs.
type sipping struct{ from io.Reader }

func (s sipping) Read(p []byte) (int, error) { return s.from.Read(p[:min(len(p), 1)]) }
