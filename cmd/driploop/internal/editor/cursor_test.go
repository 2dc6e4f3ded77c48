package editor

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestCursor reads the context at the mark | in each text.
func TestCursor(t *testing.T) {
	for text, want := range map[string]struct {
		path string
		key  bool
		word string
	}{
		"|":                                            {"", true, ""},
		"dri|":                                         {"", true, "dri"},
		"vessel:\n  hu|":                               {"vessel", true, "hu"},
		"vessel:\n  hull: f|":                          {"vessel.hull", false, "f"},
		"vessel: {name: x, hu|":                        {"vessel", true, "hu"},
		"vessel: {name: x, hull: |":                    {"vessel.hull", false, ""},
		"components:\n  house:\n    kind: ba|":         {"components.house.kind", false, "ba"},
		"components:\n  house: {kind: fuse, |":         {"components.house", true, ""},
		"components:\n  a: {kind: fuse}\n  b|":         {"components", true, "b"},
		"conductors:\n  P1: {from: house.|":            {"conductors.P1.from", false, "house."},
		"conductors:\n  P1: &c {from: house.|":         {"conductors.P1.from", false, "house."},
		"conductors:\n  P1: {to: x, ends: {from: {te|": {"conductors.P1.ends.from", true, "te"},
		"conductors:\n  P1: {ends: {from: {a: b}, t|":  {"conductors.P1.ends", true, "t"},
		"conductors:\n  P1:\n    route:\n      - {space: a}\n      - {space: b, in: o|": {"conductors.P1.route[1].in", false, "o"},
		"conductors:\n  P1:\n    route:\n      - space: a\n        in: o|":              {"conductors.P1.route[0].in", false, "o"},
		"conductors:\n  P1:\n    route:\n      - space: a\n      - space: b\n        |": {"conductors.P1.route[1]", true, ""},
		"practice: [us-federal, w|":                                {"practice", false, "w"},
		"# note\n\ncomponents:\n\n  # x\n  house:\n    # y\n    |": {"components.house", true, ""},
		"tests:\n  - {kind: pol|":                                  {"tests[0].kind", false, "pol"},
	} {
		before, _, _ := strings.Cut(text, "|")
		lines := linesOf(before)
		last := len(lines) - 1
		c := cursorAt(lines, position{Line: last, Character: len(lines[last])})
		assert.Equal(t, want.path, c.String(), text)
		assert.Equal(t, want.key, c.key, text)
		assert.Equal(t, want.word, c.word, text)
	}
}
