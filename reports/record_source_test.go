package reports

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The lines of a source are those of its text, however they end.
func TestLinesOfASource(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("a\n\r é")), 0, 30, -1).Draw(t, "text")
		src := NewSource([]byte(text), nil)
		want := strings.Split(text, "\n")
		assert.Equal(t, len(want), src.lines())
		for i, line := range want {
			got, ok := src.line(i + 1)
			assert.True(t, ok)
			assert.Equal(t, strings.TrimSuffix(line, "\r"), got)
		}
		for _, none := range []int{-1, 0, len(want) + 1} {
			_, ok := src.line(none)
			assert.False(t, ok, none)
		}
	})
	var none *Source
	_, ok := none.line(1)
	assert.False(t, ok)
	few := NewSource([]byte("one\ntwo\nthree"), nil).Few(2, 9)
	assert.Equal(t, map[int]string{2: "two"}, few.FewLines())
	second, ok := few.line(2)
	assert.True(t, ok)
	assert.Equal(t, "two", second)
	_, ok = few.line(1)
	assert.False(t, ok)
}
