package reports_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in testdata/reports")

// golden compares an output with the stored one, or stores it.
func golden(t *testing.T, format, name string, got []byte) {
	t.Helper()
	path := filepath.Join("..", "testdata", "reports", format, name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), string(got), "%s; if the change is wanted: go test ./reports -update", path)
}

func render(t *testing.T, format string, r *verdict.Run, o reports.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, reports.Write(&b, format, r, o))
	return b.Bytes()
}

func withFaults(r *verdict.Run) *verdict.Run {
	r.Faults = []verdict.Fault{
		{Path: "yard/broken.yaml", At: verdict.Position{Line: 3, Column: 5}, Says: `unknown key "lentgh"; the nearest known one is "length"`},
		{Path: "yard/gone.yaml", Says: "no such file"},
	}
	return r
}

func TestGolden(t *testing.T) {
	cases := map[string]struct {
		run     *verdict.Run
		options reports.Options
	}{
		"launch":        {run(launch()), reports.Options{}},
		"launch-all":    {run(launch()), reports.Options{All: true}},
		"launch-us":     {run(launch()), reports.Options{Units: quantity.US}},
		"launch-metric": {run(launch()), reports.Options{Units: quantity.Metric}},
		"launch-narrow": {run(launch()), reports.Options{Width: 50}},
		"launch-wide":   {run(launch()), reports.Options{Width: 300}},
		"launch-colour": {run(launch()), reports.Options{Colour: true}},
		"clean":         {run(clean()), reports.Options{}},
		"several":       {withFaults(run(launch(), clean())), reports.Options{}},
		"faults-only":   {withFaults(run()), reports.Options{}},
		"hostile":       {hostileRun(), reports.Options{All: true}},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			c.options.Sources = sources()
			golden(t, "text", name+".txt", render(t, "text", c.run, c.options))
			golden(t, "json", name+".json", render(t, "json", c.run, c.options))
			if c.options.Colour || c.options.Width > 0 {
				return // for a terminal alone
			}
			golden(t, "sarif", name+".sarif", render(t, "sarif", c.run, c.options))
			golden(t, "junit", name+".xml", render(t, "junit", c.run, c.options))
			golden(t, "md", name+".md", render(t, "md", c.run, c.options))
		})
	}
}

func TestNothingFromARecordReachesTheTerminalRaw(t *testing.T) {
	source := reports.NewSource([]byte("dr\x1b[31mip\u202eloop: \x07 1"), nil)
	for _, format := range reports.FormatNames() {
		got := render(t, format, hostileRun(), reports.Options{All: true, Sources: map[string]*reports.Source{hostile().Path: source}})
		for _, r := range string(got) {
			if r != '\n' && !unicode.IsGraphic(r) {
				t.Errorf("%s: %U is emitted", format, r)
			}
		}
	}
}

func TestTextKeepsWithinItsWidth(t *testing.T) {
	for _, width := range []int{48, 60, 80, 100} {
		for _, line := range strings.Split(string(render(t, "text", run(launch()), reports.Options{All: true, Width: width, Sources: sources()})), "\n") {
			assert.LessOrEqual(t, len([]rune(line)), width, line)
		}
	}
}

func TestColourOnlyAddsToTheText(t *testing.T) {
	options := reports.Options{All: true, Sources: sources()}
	without := render(t, "text", run(launch()), options)
	options.Colour = true
	with := render(t, "text", run(launch()), options)
	assert.Contains(t, string(with), "\x1b[")
	assert.Equal(t, string(without), string(stripColour(with)))
}

// stripColour removes the sequences ESC [ ... m.
func stripColour(text []byte) []byte {
	var out []byte
	for i := 0; i < len(text); i++ {
		if text[i] != 0x1b {
			out = append(out, text[i])
			continue
		}
		for text[i] != 'm' {
			i++
		}
	}
	return out
}

func TestDangerIsShownThoughWaived(t *testing.T) {
	got := string(render(t, "text", run(launch()), reports.Options{Units: quantity.Metric, Sources: sources()}))
	_, waived, found := strings.Cut(got, "WAIVED")
	require.True(t, found)
	for _, part := range []string{"DANGER", "conductors/overloaded", "310 A", "283 A", "Insulation ages fast", "Fit a larger conductor", "foreman until 2026-12-31", "short runs only"} {
		assert.Contains(t, waived, part)
	}
}

func TestWithoutABreachTheTextSaysHowFarThatGoes(t *testing.T) {
	only := func(outcomes ...verdict.Outcome) *verdict.Run {
		rec := launch()
		var kept []verdict.Verdict
		for _, v := range rec.Verdicts {
			if slices.Contains(outcomes, v.Outcome) {
				kept = append(kept, v)
			}
		}
		rec.Verdicts, rec.Counts = kept, verdict.Count(kept)
		return run(rec)
	}
	for want, r := range map[string]*verdict.Run{
		"Nothing was judged: no rule of":                               only(verdict.NotApplicable),
		"No breach found, but nothing could be shown to be in order":   only(verdict.Undecided, verdict.NotApplicable),
		"No breach found, as far as it could be decided by the rules":  only(verdict.Undecided, verdict.Met, verdict.Waived),
		"No breach found but those that are waived by the rules":       only(verdict.Waived, verdict.Met),
		"No breach found, and nothing left undecided by the rules of ": only(verdict.Met, verdict.NotApplicable),
	} {
		got := strings.Join(strings.Fields(string(render(t, "text", r, reports.Options{}))), " ")
		assert.Contains(t, got, want)
	}
}

func TestJSONReadsBackWithTheSameVerdicts(t *testing.T) {
	for _, all := range []bool{false, true} {
		var tree struct {
			Format  string
			Records []struct {
				Counts   map[string]int
				Verdicts []struct{ Rule, Outcome, Subject, Says string }
			}
		}
		rec := launch()
		require.NoError(t, json.Unmarshal(render(t, "json", run(rec), reports.Options{All: all}), &tree))
		assert.Equal(t, "driploop.verdicts/1", tree.Format)
		listed := map[string]int{}
		for _, v := range tree.Records[0].Verdicts {
			listed[v.Outcome]++
		}
		for outcome, n := range rec.Counts {
			assert.Equal(t, n, tree.Records[0].Counts[string(outcome)], outcome)
			if !all && (outcome == verdict.Met || outcome == verdict.NotApplicable) {
				n = 0
			}
			assert.Equal(t, n, listed[string(outcome)], outcome)
		}
	}
}

func TestJSONEscapesKeepTheValue(t *testing.T) {
	rec := clean()
	rec.Job = "a\u202eb\u009bc\U000e0041d\u2028e"
	got := render(t, "json", run(rec), reports.Options{})
	var tree struct{ Records []struct{ Job string } }
	require.NoError(t, json.Unmarshal(got, &tree))
	assert.Equal(t, rec.Job, tree.Records[0].Job)
	assert.Contains(t, string(got), `a\u202eb\u009bc\udb40\udc41d\u2028e`)
}

func TestUnknownFormatIsNamedWithTheKnownOnes(t *testing.T) {
	err := reports.Write(&bytes.Buffer{}, "jsn", run(), reports.Options{})
	assert.EqualError(t, err, `"jsn" is no format; use text, json, sarif, junit or md`)
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestAFullDiskIsReported(t *testing.T) {
	for _, format := range reports.FormatNames() {
		assert.ErrorContains(t, reports.Write(fullDisk{}, format, run(launch()), reports.Options{}), "no space left", format)
	}
}
