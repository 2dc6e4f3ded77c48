package record

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// cut returns what stands in a range of a text.
func cut(text string, at verdict.Range) string {
	s := tree.NewSource([]byte(strings.TrimPrefix(text, "\ufeff")))
	return string(s.Text[s.Offset(at.Start):s.Offset(at.End)])
}

func span4(line, column, endLine, endColumn int) verdict.Range {
	return verdict.Range{Start: verdict.Position{Line: line, Column: column}, End: verdict.Position{Line: endLine, Column: endColumn}}
}

func TestPlacesAndValuesOfASample(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "bow.yaml"))
	require.NoError(t, err)
	r, faults := Decode("bow.yaml", text)
	require.Empty(t, faults)

	stands := maps.Collect(r.Places.All())
	for path, at := range stands {
		last := path[strings.LastIndexByte(path, '.')+1:]
		if key, _, item := strings.Cut(last, "["); item {
			assert.NotEmpty(t, cut(string(text), at), path)
			assert.Contains(t, stands, path[:strings.LastIndexByte(path, '[')], key)
			continue
		}
		assert.Equal(t, last, cut(string(text), at), path)
	}
	n := 0
	for _, v := range values(r) {
		if v.state == Given && v.text != "" {
			n++
			assert.Equal(t, v.text, plain(cut(string(text), v.at)), "%s at %v", v.path, v.at)
		}
	}
	assert.Greater(t, n, 100)

	// A few by eye.
	assert.Equal(t, span4(2, 1, 2, 9), r.Places.At("driploop"))
	assert.Equal(t, span4(4, 3, 4, 9), r.Places.At("job.number"))
	assert.Equal(t, span4(32, 3, 32, 5), r.Places.At("conductors.P1"))
	assert.Equal(t, span4(41, 9, 41, 87), r.Places.At("conductors.P1.route[0]"))
	assert.Equal(t, span4(41, 33, 41, 39), r.Places.At("conductors.P1.route[0].length"))
	assert.Equal(t, span4(14, 12, 14, 22), r.Places.At("practice[0]"))
	assert.Equal(t, span4(41, 41, 41, 47), r.Conductor("P1").Route[0].Length.At())
	assert.Equal(t, span4(33, 11, 33, 20), r.Conductor("P1").From.At)
	p1 := r.Conductor("P1")
	assert.Equal(t, Entry{ID: "P1", Path: "conductors.P1", At: span4(32, 3, 32, 5), Body: span4(33, 5, 44, 131)}, p1.Entry)
	assert.Equal(t, Entry{Path: "conductors.P1.ends.to", At: span4(44, 7, 44, 9), Body: span4(44, 13, 44, 131)}, p1.Ends.To.Entry)
	assert.Equal(t, Entry{Path: "conductors.P7.ends.to"}, r.Conductor("P7").Ends.To.Entry, "what is absent has its path")
	assert.Equal(t, Entry{Path: "tests[0]", At: span4(65, 5, 65, 111), Body: span4(65, 5, 65, 111)}, r.Tests[0].Entry)
}

// plain undoes quotation and prints units as quantities do.
func plain(s string) string {
	return strings.NewReplacer(`"`, "", "degC", "°C", "N.m", "N·m").Replace(s)
}

func TestEntriesKeepTheOrderOfTheFile(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "bow.yaml"))
	require.NoError(t, err)
	r, _ := Decode("bow.yaml", text)
	assert.Equal(t, []string{"battery-locker", "engine-bay", "bow-locker", "foredeck"}, ids(r.Spaces))
	assert.Equal(t, []string{"P1", "P7", "N7"}, ids(r.Conductors))
	for _, c := range r.Conductors {
		assert.Same(t, c, r.Conductor(c.ID))
	}
	assert.Nil(t, r.Space("attic"))
	assert.Nil(t, r.Component("attic"))
	assert.Nil(t, r.Bundle("attic"))
}

// Each text holds one note whose range is looked at.
func TestPositionsInUnusualTexts(t *testing.T) {
	for _, c := range []struct {
		name, text string
		value      string
		at         verdict.Range
		cut        string
	}{
		{"letters beyond ASCII before it", "bundles: {B1: {note: é, carrying: 2}, B2: {note: ñandú}}\n", "ñandú", span4(4, 50, 4, 55), "ñandú"},
		{"letters beyond the basic plane", "bundles: {𝔅: {carrying: 2}, B2: {note: 𝔵𝔶}}\n", "𝔵𝔶", span4(4, 40, 4, 42), "𝔵𝔶"},
		{"double quotes with escapes", `bundles: {B: {note: "a \"b\" \u00e9"}}` + "\n", `a "b" é`, span4(4, 21, 4, 37), `"a \"b\" \u00e9"`},
		{"single quotes", "bundles: {B: {note: 'it''s'}}\n", "it's", span4(4, 21, 4, 28), "'it''s'"},
		{"quotes over two lines", "bundles:\n  B:\n    note: \"one\n      two\"\n", "one two", span4(6, 11, 7, 11), "\"one\n      two\""},
		{"plain over three lines", "bundles:\n  B:\n    note: one\n      two\n\n      three\n    carrying: 2\n", "one two\nthree", span4(6, 11, 9, 12), "one\n      two\n\n      three"},
		{"plain with a comment behind it", "bundles:\n  B:\n    note: one two # three\n", "one two", span4(6, 11, 6, 18), "one two"},
		{"literal", "bundles:\n  B:\n    note: |\n      one\n       two\n\n    carrying: 2\n", "one\n two\n", span4(6, 11, 8, 11), "|\n      one\n       two"},
		{"folded and stripped", "bundles:\n  B:\n    note: >-\n      one\n      two\n", "one two", span4(6, 11, 8, 10), ">-\n      one\n      two"},
		{"an anchor and a tag", "bundles: {B: {note: &x !!str one}}\n", "one", span4(4, 30, 4, 33), "one"},
		{"an alias", "bundles: {A: {note: &x one}, B: {note: *x}}\n", "one", span4(4, 40, 4, 42), "*x"},
		{"a tab behind the colon", "bundles: {B: {note:\tone}}\n", "one", span4(4, 21, 4, 24), "one"},
		{"an explicit key", "bundles:\n  B:\n    ? note\n    : one\n", "one", span4(7, 7, 7, 10), "one"},
	} {
		for _, variant := range []struct{ name, from, to, mark string }{{"", "\n", "\n", ""}, {" with CRLF", "\n", "\r\n", ""}, {" with BOM", "\n", "\n", "\ufeff"}} {
			t.Run(c.name+variant.name, func(t *testing.T) {
				text := variant.mark + strings.ReplaceAll(head+c.text, variant.from, variant.to)
				r, faults := Decode("r", []byte(text))
				require.Empty(t, faults)
				note := r.Bundles[len(r.Bundles)-1].Note
				assert.Equal(t, c.value, note.V)
				assert.Equal(t, c.at, note.At())
				assert.Equal(t, strings.ReplaceAll(c.cut, variant.from, variant.to), cut(text, note.At()))
			})
		}
	}
}

func TestRangesOfMappingsAndLists(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"flow", "bundles: {B: {note: one, members: [ ]}}\n", "{note: one, members: [ ]}"},
		{"flow over lines with comments", "bundles: {B: {note: one, # first\n  members: [\n  ] # none\n  }}\n", "{note: one, # first\n  members: [\n  ] # none\n  }"},
		{"flow with a trailing comma", "bundles: {B: {note: one , } }\n", "{note: one , }"},
		{"empty flow", "bundles: {B: { } }\n", "{ }"},
		{"block", "bundles:\n  B:\n    note: one\n    carrying: 2   # two\ntests: []\n", "note: one\n    carrying: 2"},
		{"block that ends in a list", "bundles:\n  B:\n    members:\n      []\ntests: []\n", "members:\n      []"},
		{"block with an anchor", "bundles:\n  B: &b\n    note: one\n", "note: one"},
		{"flow with an anchor", "bundles: {B: &b {note: one}}\n", "{note: one}"},
		{"alias", "bundles: {A: &b {note: one}, B: *b}\n", "*b"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, faults := Decode("r", []byte(head+c.text))
			require.Empty(t, faults)
			b := r.Bundles[len(r.Bundles)-1]
			assert.Equal(t, c.want, cut(head+c.text, b.Body))
			assert.Equal(t, "B", cut(head+c.text, b.At))
		})
	}
}

// Every offset of a text is found from its position, and the reverse.
func TestOffsetsAndPositionsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("ab é𝔅\n\r{")), 0, 400, -1).Draw(t, "text")
		s := tree.NewSource([]byte(text))
		line, column := 1, 1
		runes := []rune(text)
		at := 0
		for i, r := range runes {
			p := verdict.Position{Line: line, Column: column}
			require.Equal(t, p, s.Position(at), "offset %d of %q", at, text)
			require.Equal(t, at, s.Offset(p), "%v of %q", p, text)
			at += len(string(r))
			column++
			if r == '\n' || r == '\r' && (i+1 == len(runes) || runes[i+1] != '\n') {
				line, column = line+1, 1
			}
		}
		require.Equal(t, verdict.Position{Line: line, Column: column}, s.Position(len(text)))
	})
}
