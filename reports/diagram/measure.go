package diagram

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// face measures the text of one font.
type face struct {
	mu      sync.Mutex
	font    *sfnt.Font
	buffer  sfnt.Buffer
	advance map[rune]float64 // share of the size
}

var (
	regularFace = sync.OnceValue(func() *face { return newFace(goregular.TTF) })
	boldFace    = sync.OnceValue(func() *face { return newFace(gobold.TTF) })
)

func newFace(ttf []byte) *face {
	parsed, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err) // the fonts are part of the program
	}
	return &face{font: parsed, advance: map[rune]float64{}}
}

// of returns the advance of a rune. What the font lacks is taken as a full em,
// which is what most other fonts take for it at most.
func (f *face) of(r rune) float64 {
	f.mu.Lock()
	defer f.mu.Unlock()
	if a, ok := f.advance[r]; ok {
		return a
	}
	const em = 1000
	a := 1.0
	if glyph, err := f.font.GlyphIndex(&f.buffer, r); err == nil && glyph != 0 {
		if units, err := f.font.GlyphAdvance(&f.buffer, glyph, fixed.I(em), font.HintingNone); err == nil {
			a = float64(units) / 64 / em
		}
	}
	f.advance[r] = a
	return a
}

// width is how wide a text is set, in units.
func width(text string, size float64, bold bool) float64 {
	f := regularFace()
	if bold {
		f = boldFace()
	}
	total := 0.0
	for _, r := range text {
		total += f.of(r)
	}
	return total * size
}

// clip shortens a text to a width, its end marked by an ellipsis.
func clip(text string, size float64, bold bool, most float64) string {
	if width(text, size, bold) <= most {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		if short := strings.TrimRight(string(runes[:n]), "-_. ") + "…"; width(short, size, bold) <= most {
			return short
		}
	}
	return "…"
}

// clean replaces what shows as nothing, or would turn what follows around.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsGraphic(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
