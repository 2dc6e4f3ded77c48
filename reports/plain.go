package reports

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// glue keeps the words of a quantity on one line; it is printed as a space.
const glue = '\u00a0'

// Plain makes a text from a record safe to show: whatever a terminal would act
// on, or would show as nothing, is written as an escape. Control characters,
// line ends, direction overrides and broken UTF-8 are such.
func Plain(s string) string {
	if _, plain := columns(s); plain {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			b.WriteString(`\x` + strconv.FormatUint(uint64(s[i])|0x100, 16)[1:])
		case unicode.IsGraphic(r):
			b.WriteRune(r)
		default:
			quoted := strconv.QuoteRuneToASCII(r)
			b.WriteString(quoted[1 : len(quoted)-1])
		}
		i += size
	}
	return b.String()
}

// columns counts those of a text of printable ASCII and glue; false for another.
func columns(s string) (count int, plain bool) {
	const first, second = 0xc2, 0xa0 // the bytes of glue
	count = len(s)
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case ' ' <= c && c <= '~':
		case c == first && i+1 < len(s) && s[i+1] == second:
			count--
			i++
		default:
			return 0, false
		}
	}
	return count, true
}

// flow brings the prose of a rule, which may stand on several lines, to one.
func flow(s string) string { return strings.Join(strings.Fields(s), " ") }

// Columns is the width of a text on a terminal.
func Columns(s string) int {
	if count, plain := columns(s); plain {
		return count
	}
	return uniseg.StringWidth(s)
}
