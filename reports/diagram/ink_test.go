package diagram

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// contrast of two colours by WCAG 2.2, "contrast ratio" and "relative luminance".
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	luminance := func(hex string) float64 {
		v, err := strconv.ParseUint(hex, 16, 32)
		require.NoError(t, err)
		channel := func(shift uint) float64 {
			c := float64(v>>shift&0xff) / 255
			if c <= 0.04045 {
				return c / 12.92
			}
			return math.Pow((c+0.055)/1.055, 2.4)
		}
		return 0.2126*channel(16) + 0.7152*channel(8) + 0.0722*channel(0)
	}
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func TestContrastOfWCAG(t *testing.T) {
	assert.InDelta(t, 21, contrast(t, "000000", "ffffff"), 0.01)
	assert.InDelta(t, 4.54, contrast(t, "767676", "ffffff"), 0.01, "the lightest grey that passes on white")
}

func TestInksCanBeReadOnLightAndOnDark(t *testing.T) {
	light, dark := map[Ink]string{}, map[Ink]string{}
	for _, s := range shades() {
		light[s.ink], dark[s.ink] = s.light, s.dark
	}
	grounds := []Ink{Paper}
	for i := range bands {
		grounds = append(grounds, bandInk(i))
	}
	for _, theme := range []map[Ink]string{light, dark} {
		for _, ground := range grounds {
			for _, ink := range []Ink{Words, Faint} {
				assert.GreaterOrEqual(t, contrast(t, theme[ink], theme[ground]), 4.5, "%s on %s", ink, ground)
			}
			for _, ink := range []Ink{Wire, Return, Symbol} { // graphics: 1.4.11
				assert.GreaterOrEqual(t, contrast(t, theme[ink], theme[ground]), 3.0, "%s on %s", ink, ground)
			}
		}
		for _, mark := range []Ink{Danger, Warning, Caution, Notice} {
			assert.GreaterOrEqual(t, contrast(t, theme[OnMark], theme[mark]), 4.5, "words on %s", mark)
			assert.GreaterOrEqual(t, contrast(t, theme[mark], theme[Paper]), 4.5, "%s as words, where waived", mark)
		}
	}
}

// Every colour that a record may name has a swatch, and is a word of the format.
func TestEveryColourHasASwatch(t *testing.T) {
	for colour := range insulation() {
		assert.NotContains(t, colour, "/")
		main, stripe := stripes(colour + "/yellow")
		assert.Equal(t, colour, main)
		assert.Equal(t, "yellow", stripe)
	}
	for _, colour := range strings.Fields("black blue brown dark-blue green grey light-blue orange pink purple red tan violet white yellow clear bare") {
		assert.NotEmpty(t, insulation()[colour], colour)
	}
}
