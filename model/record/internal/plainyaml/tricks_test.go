package plainyaml

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

type trick struct {
	name, text string
	taken      bool
}

const (
	taken  = true
	handed = false
)

// tricks are texts that are easily read wrong, and whether they are taken.
func tricks() []trick {
	long := strings.Repeat("k", maxKey)
	deep := func(depth int) string {
		return "a: " + strings.Repeat("[", depth) + strings.Repeat("]", depth) + "\n"
	}
	var blocks strings.Builder
	for i := range maxDepth + 1 {
		blocks.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return []trick{
		// Documents.
		{"nothing", "", handed},
		{"a comment only", "# c\n", handed},
		{"a word", "a", handed},
		{"a list", "- a\n", handed},
		{"brackets", "{a: b}\n", handed},
		{"one key", "a: b", taken},
		{"no line end", "a:\n  - b", taken},
		{"begun", "---\na: b\n", taken},
		{"begun behind comments", "# c\n\n--- # d\n# e\na: b\n", taken},
		{"begun on the line", "--- a: b\n", handed},
		{"begun twice", "---\n---\na: b\n", handed},
		{"only begun", "---\n", handed},
		{"only begun, no line end", "---", handed},
		{"four dashes", "----\na: b\n", handed},
		{"begun not at the left", " ---\na: b\n", handed},
		{"two documents", "a: b\n---\nc: d\n", handed},
		{"a second document within brackets", "a: [b,\n--- ,\nc]\n", handed},
		{"ended", "a: b\n...\n", handed},
		{"ended within brackets", "a: [b,\n...\n,c]\n", handed},
		{"dots as a key", "...: b\n", handed},
		{"a directive", "%YAML 1.1\n---\na: b\n", handed},
		{"indented", "  a: b\n  c: d\n", handed},
		{"a byte order mark", "\ufeffa: b\n", handed},
		{"a byte order mark within", "a: \ufeffb\n", handed},

		// Characters.
		{"a tab for indentation", "a:\n\tb: c\n", handed},
		{"a tab behind a colon", "a:\tb\n", handed},
		{"a tab behind a value", "a: b\t\n", handed},
		{"a tab before a comment", "a: b\t# c\n", handed},
		{"a tab in a comment", "a: b #\tc\n", taken},
		{"a tab in quotation marks", "a: 'b\tc'\n", handed},
		{"CR LF", "a: b\r\nc: d\r\n", handed},
		{"CR", "a: b\rc: d\r", handed},
		{"CR in a comment", "a: b # c\rd: e\n", handed},
		{"NUL", "a: b\x00\n", handed},
		{"NUL in a comment", "a: b # \x00\n", handed},
		{"DEL", "a: b\x7f\n", handed},
		{"escape", "a: 'b\x1b'\n", handed},
		{"next line", "a: b\u0085c: d\n", handed},
		{"line separator", "a: b\u2028c: d\n", handed},
		{"line separator in a comment", "a: b # \u2029c: d\n", handed},
		{"no UTF-8", "a: b\xff\n", handed},
		{"no UTF-8 in a comment", "a: b # \xc3\n", handed},
		{"half a character", "a: \xc3", handed},
		{"an overlong form", "a: \xc0\xaf\n", handed},
		{"a surrogate", "a: \xed\xa0\x80\n", handed},
		{"no character", "a: \uffff\n", handed},
		{"beyond ASCII", "é: {ü: '日本', ö: \"\U0001f600\"} # ñ\n日: [ä, b]\n", taken},
		{"no-break space", "a: \u00a0b\u00a0\n", taken},

		// Comments.
		{"comments everywhere", "# a\na: # b\n  # c\n\n# d\n  b: c # e\n # f\n  d: [e, # g\n # h\n f] # i\n#", taken},
		{"no comment", "a: b#c\nd#e: 'f' \n", taken},
		{"a comment at a bracket", "a: [b]#c\n", handed},
		{"a comment at an opening bracket", "a: [#c\nb]\n", handed},
		{"a comment at a comma", "a: [b,#c\nd]\n", handed},
		{"a comment at a quotation mark", "a: 'b'#c\n", handed},
		{"a comment at a colon", "a:#c\n", handed},
		{"a comment at a colon within brackets", "a: {b:#c\nd}\n", handed},
		{"a comment behind a colon", "a: #c\n", taken},
		{"a comment behind a dash", "a:\n- #c\n  b\n-   #d\n", taken},
		{"a comment behind an alias", "a: &b c\nd: *b#e\n", handed},
		{"a comment in a text", "a: b\n  # c\nd: e\n", taken},
		{"a comment in a text of two lines", "a: b\n  # c\n  d\n", handed},
		{"a comment far away", "a: b" + strings.Repeat(" ", 700) + "# c\n" + strings.Repeat("\n", 700) + "# d\ne: f\n", taken},
		{"comments in and out", "a:\n  b: c\n  # in\n# out\n   # far\n  d: e\n", taken},

		// Block mappings.
		{"nested", "a:\n  b:\n    c: d\n  e: f\ng: h\n", taken},
		{"no values", "a:\nb:\n  c:\n  d:\n", taken},
		{"a value on its own line", "a:\n  b\nc:\n  'd' # e\nf:\n  {g: h}\n", taken},
		{"a value on its own line, not indented", "a:\nb\n", handed},
		{"brackets on their own line, not indented", "a:\n{b: c}\n", handed},
		{"indented too far", "a: b\n  c: d\n", handed},
		{"indented too little", "a:\n  b: c\n d: e\n", handed},
		{"a value and more below", "a: [b]\n  c: d\n", handed},
		{"two lines", "a: b\n  c\n", handed},
		{"two lines beyond an empty one", "a: b\n\n  c\n", handed},
		{"quotation over two lines", "a: 'b\n  c'\nd: \"e\n  f\"\n", handed},
		{"a colon in a value", "a: b: c\n", handed},
		{"a colon at the end", "a: b:\n", handed},
		{"colons within", "a: b:c\nd:e: http://f\n", taken},
		{"a colon without key", ": a\n", handed},
		{"blank before the colon", "a : b\n", handed},
		{"no blank behind the colon", "a:b\n", handed},
		{"no blank behind a quoted key", "'a':b\n", handed},
		{"quoted keys", "'a b': c\n\"d: #e\": f\n'': g\n", taken},
		{"a key twice", "a: b\na: c\n", taken},
		{"an explicit key", "? a\n: b\n", handed},
		{"a mark of a key in a value", "a: ?\n", handed},
		{"a question", "a: b?\n", taken},
		{"a list as a key", "[a]: b\n", handed},
		{"a literal", "a: |\n  b\n", handed},
		{"a folded text", "a: >-\n  b\n", handed},
		{"a tag", "a: !!str 1\n", handed},
		{"a tag of one's own", "a: !b c\n", handed},
		{"reserved", "a: @b\n", handed},
		{"reserved, too", "a: `b\n", handed},
		{"percent", "a: %b\n", handed},
		{"percent within", "a: 5 %\n", taken},
		{"a bracket in a block value", "a: b, c] d} {e\n", taken},
		{"a comma first", "a: ,b\n", handed},
		{"the longest key", long + ": a\n", taken},
		{"too long a key", long + "k: a\n", handed},
		{"the longest key in characters", strings.Repeat("é", maxKey/2) + ": a\n", taken},
		{"too long a key in a list", "a:\n- " + long + "k: b\n", handed},
		{"too long a key in brackets", "a: {" + long + "k: b}\n", handed},
		{"a long value", "a: " + long + long + "\n", taken},
		{"deep", "a:" + blocks.String()[2:], handed},

		// Block lists.
		{"a list", "a:\n  - b\n  - c\n", taken},
		{"a list not indented", "a:\n- b\n- c\nd: e\n", taken},
		{"a list of nothing", "a:\n-\n-\n", taken},
		{"a list of nothing, no line end", "a:\n  -", taken},
		{"an item below its dash", "a:\n-\n  b: c\n-\n  - d\n-\n  e\n", taken},
		{"an item at its dash", "a:\n-\nb: c\n", taken},
		{"mappings", "a:\n  - b: c\n    d:\n    - e\n    f: g\n  -   h: i\n      j:\n", taken},
		{"lists", "a:\n  - - - b\n      - c\n    - d\n  - e\n", taken},
		{"an item too far", "a:\n  - b\n    - c\n", handed},
		{"an item too near", "a:\n  - b\n - c\n", handed},
		{"a key among items", "a:\n  - b\n  c: d\n", handed},
		{"items among keys", "a:\n  c: d\n  - b\n", handed},
		{"an item on the line", "a: - b\n", handed},
		{"a key below an item", "a:\n  - b\n   c: d\n", handed},
		{"two lines in an item", "a:\n- b\n  c\n", handed},
		{"a dash without blank", "a:\n  -b\n", taken},
		{"a negative number", "a: -5 degC\nb: [-5, -.5]\n", taken},
		{"only a dash", "a: -\n", handed},
		{"two dashes", "a: --b\n", handed},
		{"a dash within brackets", "a: [- b]\n", handed},
		{"only a dash within brackets", "a: [-, b]\n", handed},

		// Brackets.
		{"empty", "a: {}\nb: []\nc: { }\nd: [ ]\ne: [\n]\n", taken},
		{"nested brackets", "a: {b: [c, {d: e}, []], f: {}}\n", taken},
		{"over lines", "a: {b: c,\n   d: e\n  , f:\n   g\n}\n", taken},
		{"over lines, not indented", "a: {b: c,\nd: e,\n f: g}\nh: i\n", taken},
		{"a comma at the end", "a: [b, c,]\nd: {e: f,\n}\n", taken},
		{"two commas", "a: [b,, c]\n", handed},
		{"only a comma", "a: [,]\n", handed},
		{"no comma", "a: [b\n c]\n", handed},
		{"not closed", "a: [b\n", handed},
		{"closed by the other", "a: [b}\n", handed},
		{"closed twice", "a: [b]]\n", handed},
		{"text behind", "a: [b] c\n", handed},
		{"brackets as a key", "a:\n  {b: c}: d\n", handed},
		{"a pair in a list", "a: [b: c]\n", handed},
		{"a key alone", "a: {b, c: d}\n", handed},
		{"a key without value", "a: {b: , c: d}\n", handed},
		{"a colon at a comma", "a: {b:, c: d}\n", handed},
		{"a colon at a bracket", "a: {b: c:}\n", handed},
		{"no blank behind a colon within brackets", "a: {b:c}\n", handed},
		{"no blank behind a quoted key within brackets", "a: {'b':c}\n", handed},
		{"a colon on the next line", "a: {b\n : c}\n", handed},
		{"colons within texts", "a: [b:c, 12:30, ::d]\n", handed},
		{"a time", "a: [b:c, 12:30]\n", taken},
		{"a question within brackets", "a: [b?]\n", handed},
		{"a bracket in a text", "a: [b[0]]\n", handed},
		{"quotation marks within brackets", "a: ['b, c', \"d] }\", 'e''f']\n", taken},
		{"text at quotation marks", "a: ['b'c]\n", handed},
		{"as deep as can be", deep(maxDepth - 1), taken},
		{"too deep", deep(maxDepth), handed},

		// Quotation marks.
		{"marks within", "a: 'it''s'\nb: \"say \\\"no\\\" \\\\\"\nc: ''''\nd: ''\ne: \"\"\nf: it's \"g\"\n", taken},
		{"blanks at the ends", "a: '  b  '\nc: \"  d  \"\n", taken},
		{"not closed", "a: 'b\n", handed},
		{"not closed, no line end", "a: \"b", handed},
		{"escapes at the end", "a: \"b\\", handed},
		{"other escapes", "a: \"b\\n\"\n", handed},
		{"text behind marks", "a: 'b' c\n", handed},
		{"marks that were not meant", "a: 'b'c'\n", handed},

		// Anchors and aliases.
		{"anchors", "a: &x {b: c}\nd: *x\ne: {<<: *x, f: g}\nh:\n  <<: [*x, *x]\n", taken},
		{"an anchor of a block", "a: &x\n  b: c\nd: &y # e\n- f\ng: [*x, *y]\n", taken},
		{"an anchor of an item", "a:\n  - &x\n    b: c\n  - &y d\n  - *x\n  - &z\n    - e\n", taken},
		{"an anchor of a first key", "a:\n  - &x b: c\n", handed},
		{"an anchor of a key", "&x a: b\n", handed},
		{"an anchor on its own line", "a:\n  &x b\n", handed},
		{"an anchor of brackets below", "a: &x\n  {b: c}\n", taken},
		{"an anchor of nothing", "a: &x\nb: c\n", handed},
		{"an anchor of nothing at the end", "a: &x", handed},
		{"an anchor of an item that is nothing", "a:\n- &x\n- b\n", handed},
		{"an anchor of an alias", "a: &x b\nc: &y *x\n", handed},
		{"an anchor of an alias below", "a: &x b\nc: &y\n  *x\n", handed},
		{"two anchors", "a: &x &y b\n", handed},
		{"an anchor twice", "a: &x b\nc: &x d\ne: *x\n", taken},
		{"an anchor within itself", "a: &x [*x]\n", taken},
		{"an anchor within one of its name", "a: &x b\nc: &x {d: *x}\n", taken},
		{"an unknown anchor", "a: *x\n", handed},
		{"an anchor that comes later", "a: *x\nb: &x c\n", handed},
		{"an alias as a key", "a: &x b\n*x : c\n", handed},
		{"an alias as a key within brackets", "a: &x b\nc: {*x : d}\n", handed},
		{"an alias on its own line", "a: &x b\nc:\n  *x\n", taken},
		{"an alias and more", "a: &x b\nc: *x d\n", handed},
		{"an alias at a comma", "a: &x b\nc: [*x,*x ]\n", taken},
		{"an alias at a comma outside", "a: &x b\nc: *x,\n", handed},
		{"a name with a dot", "a: &x.y b\n", handed},
		{"no name", "a: & b\n", handed},
		{"a name at the end of a line within brackets", "a: [&x\n b]\n", handed},
		{"a merge key in a value", "a: <<\nb: [<<, '<<', <]\n", taken},
	}
}

func TestTricks(t *testing.T) {
	for _, c := range tricks() {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.taken, isTaken([]byte(c.text)))
			assert.Empty(t, differs([]byte(c.text)))
		})
	}
}

// words are texts without quotation marks that might be numbers, dates or words
// of YAML.
func words() []string {
	return []string{
		"", "~", "null", "Null", "NULL", "nUll", "nulls", "true", "True", "TRUE", "tRUE", "false", "False", "FALSE", "falses",
		"yes", "Yes", "no", "NO", "on", "off", "y", "n", "Y", "N", "<<", "<", "<<<", "<< ", "=",
		"0", "1", "00", "01", "08", "0777", "0o17", "0o8", "-0o17", "0x1F", "0X1f", "0xg", "0b11", "-0b1", "0b2", "1_000", "_1", "1_", "+1", "-1", "--1", "+-1", "+", "-",
		"999999999999999999", "9223372036854775807", "9223372036854775808", "18446744073709551615", "18446744073709551616", "-9223372036854775809", "123456789012345678901234567890",
		"1.5", "1.", ".5", "-.5", "+.5", ".", "..", "...", "1e3", "1E+3", "1e", ".e3", "1e999", "-1e-999", "0x1p-2", ".0x1", "1_0.5_0",
		".inf", ".Inf", ".INF", "+.inf", "-.inf", "-.INF", ".nan", ".NaN", ".NAN", "+.nan", "inf", "nan", "NaN", "Infinity", "-inf",
		"2026-06-18", "2026-06-00", "2026-06-01", "2026-00-01", "2026-13-01", "2026-12-28", "2026-02-29", "2024-02-29", "2026-12-31", "0000-01-01", "9999-12-28", "2026/06/18", "2026-0a-18", "2026-06-1a", "2026-6-1", "2026-06-31", "2026-06", "2026-06-18T01:02:03Z", "2026-06-18t01:02:03.5+02:00", "2026-06-18 01:02:03", "2026-06-18  01:02:03.25", "2026-06-18 1:2:3 Z",
		"2026-06-18 noon", "2026-06-18 T01:02:03", "1999-1-1 a", "0000-01-01", "20260618", "12:30", "190:20:30.15",
		"12 V", "2/0 AWG", "16 mm2", "-5 degC", "+5 degC", ".5 in", "5/16 in", "1 2", "1 _", "1 .5", "0x1 F", "1e3 A", "5 %", "1 é", "12V", "M8", "8 ", "é", "frp", "from", "t", "T", "f", "o",
	}
}

func TestTagsAreThoseOfYAML(t *testing.T) {
	for _, value := range words() {
		assert.Equalf(t, tagByYAML(value), tagOf(value), "%q", value)
	}
}
