package diagram

import "strings"

// Ink names what something is drawn for. "" draws nothing.
type Ink string

// The inks. Those of spaces and of insulation are made by bandInk and swatchInk.
const (
	Paper   Ink = "paper"
	Words   Ink = "words"
	Faint   Ink = "faint"  // words of less weight
	Wire    Ink = "wire"   // conductors
	Return  Ink = "return" // conductors of the return side
	Symbol  Ink = "symbol"
	Edge    Ink = "edge" // outlines of spaces
	Rule    Ink = "rule" // lines of the page, borders of swatches
	Danger  Ink = "danger"
	Warning Ink = "warning"
	Caution Ink = "caution"
	Notice  Ink = "notice"
	OnMark  Ink = "on-mark" // words on the fill of a mark
)

// bands is the number of tints that spaces take in turn.
const bands = 6

func bandInk(i int) Ink { return Ink("band-" + string(rune('a'+i%bands))) }

// swatchInk is the ink of a colour of insulation.
func swatchInk(colour string) Ink { return Ink("of-" + colour) }

// shade is a colour on light and on dark paper, as six hexadecimal digits.
type shade struct {
	ink         Ink
	light, dark string
}

// shades lists the colour of each ink. Words keep a contrast of at least 4.5 to
// 1 on paper and on every band, marks with the words on them (WCAG 2.2, 1.4.3).
func shades() []shade {
	list := []shade{
		{Paper, "ffffff", "14181c"},
		{Words, "15191d", "e9edf0"},
		{Faint, "4a5560", "b3bec8"},
		{Wire, "15191d", "e9edf0"},
		{Return, "3a5a78", "9dbbd6"},
		{Symbol, "15191d", "e9edf0"},
		{Edge, "8b98a3", "5d6a75"},
		{Rule, "8b98a3", "6f7c87"},
		{Danger, "b3121d", "ff8a80"},
		{Warning, "a34700", "ffab5c"},
		{Caution, "735a00", "f0cf4a"},
		{Notice, "1d5a96", "8fc1f5"},
		{OnMark, "ffffff", "14181c"},
	}
	for i, pair := range [bands][2]string{
		{"eef3f7", "1d262e"},
		{"f6f1e6", "2b2619"},
		{"edf4ea", "1d291e"},
		{"f5eef3", "2b2029"},
		{"e9f4f4", "182a2b"},
		{"f4f0ee", "292220"},
	} {
		list = append(list, shade{bandInk(i), pair[0], pair[1]})
	}
	for colour, hex := range insulation() {
		list = append(list, shade{swatchInk(colour), hex, hex})
	}
	return list
}

// insulation gives each colour of a record a shade; a swatch never stands
// without the word.
func insulation() map[string]string {
	return map[string]string{
		"black": "111111", "blue": "1f5fd0", "brown": "7a4a21", "dark-blue": "12306e", "green": "1f8f3a", "grey": "8a8a8a",
		"light-blue": "7db9f0", "orange": "f08a1d", "pink": "f29fc0", "purple": "7a3fb0", "red": "d11f2a", "tan": "cfae7d",
		"violet": "7a3fb0", "white": "ffffff", "yellow": "f5d327", "clear": "f3f3f3", "bare": "b8733a",
	}
}

// stripes splits a colour into its main colour and that of its stripe.
func stripes(colour string) (main, stripe string) {
	main, stripe, _ = strings.Cut(colour, "/")
	return main, stripe
}
