package reports_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"driploop/model/verdict"
	"driploop/reports"
)

// excerptOf renders one breach at a place of a text and returns the excerpt: the
// lines between "place" and "finding".
func excerptOf(t assert.TestingT, text string, at verdict.Range, width int) []string {
	rec := verdict.Record{Path: "x", Verdicts: []verdict.Verdict{{Rule: overloaded, Outcome: verdict.Breach, Subject: "s", At: at, Says: "says"}}}
	rec.Counts = verdict.Count(rec.Verdicts)
	var b strings.Builder
	err := reports.Text(&b, run(rec), reports.Options{Width: width, Sources: map[string]*reports.Source{"x": reports.NewSource([]byte(text), nil)}})
	assert.NoError(t, err)
	_, after, _ := strings.Cut(b.String(), "\nplace ")
	_, after, _ = strings.Cut(after, "\n")
	excerpt, _, found := strings.Cut("\n"+after, "\nfinding ")
	assert.True(t, found)
	return strings.Split(excerpt, "\n")[1:]
}

func TestExcerptMarksTheValue(t *testing.T) {
	const pad = "           "
	for name, c := range map[string]struct {
		text string
		at   verdict.Range
		want []string
	}{
		"a value":               {"a:\n  size: 8 AWG # thin", span(2, 9, 14), []string{"size: 8 AWG # thin", "      ‾‾‾‾‾"}},
		"a key":                 {"a: 1", span(1, 1, 2), []string{"a: 1", "‾"}},
		"to the end of a line":  {"a: {b: 1,\n  c: 2}", verdict.Range{Start: verdict.Position{Line: 1, Column: 4}, End: verdict.Position{Line: 2, Column: 8}}, []string{"a: {b: 1,", "   ‾‾‾‾‾‾"}},
		"columns count letters": {"näme: größe", span(1, 7, 12), []string{"näme: größe", "      ‾‾‾‾‾"}},
		"wide letters":          {"名前: 船", span(1, 5, 6), []string{"名前: 船", "      ‾‾"}},
		"tabs and escapes":      {"a:\tb\x1bc d", span(1, 8, 9), []string{`a: b\x1bc d`, "          ‾"}},
		"Windows line ends":     {"a: 1\r\nb: 2\r\n", span(1, 4, 5), []string{"a: 1", "   ‾"}},
		"past the end":          {"a: 1", span(1, 9, 12), []string{"a: 1", "    ‾"}},
		"no such line":          {"a: 1", span(7, 1, 2), nil},
		"no place":              {"a: 1", verdict.Range{}, nil},
		"a line nobody reads":   {strings.Repeat("x", 5000), span(1, 1, 2), nil},
	} {
		t.Run(name, func(t *testing.T) {
			got := excerptOf(t, c.text, c.at, 80)
			if c.want == nil {
				assert.Equal(t, []string{}, got)
				return
			}
			assert.Equal(t, []string{pad + c.want[0], pad + c.want[1]}, got)
		})
	}
}

func TestExcerptOfAnyTextFitsThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringN(200, 400, -1)).Draw(t, "text")
		from := rapid.IntRange(1, 400).Draw(t, "from")
		width := rapid.IntRange(1, 200).Draw(t, "width")
		line := rapid.IntRange(0, 4).Draw(t, "line")
		at := span(line, from, from+rapid.IntRange(-5, 400).Draw(t, "length"))
		for _, l := range excerptOf(t, text, at, width) {
			assert.LessOrEqual(t, reports.Columns(l), min(max(width, 48), 100), l)
		}
	})
}

func TestPatternOfAnEntry(t *testing.T) {
	for path, want := range map[string]string{
		"":                               "",
		"job.completed":                  "job.completed",
		"sign_off":                       "sign_off",
		"conductors.P1":                  "conductors.P1",
		"conductors.P1.size":             "conductors.*.size",
		"conductors.P1.route[0].support": "conductors.*.route[*].support",
		"conductors.P1.ends.from.torque": "conductors.*.ends.*.torque",
		"conductors.from.from":           "conductors.*.from",
		"penetrations.p.hole.edge":       "penetrations.*.hole.edge",
		"tests[3].current":               "tests[*].current",
		"waivers[0]":                     "waivers[*]",
		"vessel.hull":                    "vessel.hull",
	} {
		assert.Equal(t, want, reports.Pattern(path), path)
	}
}
