package rules_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

// exampleDay is the day on which examples are judged.
var exampleDay = time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC)

// mark is a comment at the end of a line that says what rules find there, such
// as "# want protection/device-too-far, conductors/overloaded".
var mark = regexp.MustCompile(`# (want|open) ([a-z0-9-]+/[a-z0-9-]+(?:, [a-z0-9-]+/[a-z0-9-]+)*)`)

// marked returns the lines that carry a mark of the kind for the rule, as often
// as they carry it.
func marked(text, kind, rule string) []int {
	lines := []int{}
	for i, line := range strings.Split(text, "\n") {
		for _, m := range mark.FindAllStringSubmatch(line, -1) {
			for _, named := range strings.Split(m[2], ", ") {
				if m[1] == kind && named == rule {
					lines = append(lines, i+1)
				}
			}
		}
	}
	return lines
}

// judged returns the verdicts of one rule on a record in YAML.
func judged(t *testing.T, engine *rules.Engine, rule *verdict.Rule, text string) []verdict.Verdict {
	t.Helper()
	r, faults := record.Decode(rule.ID, []byte(text))
	require.Empty(t, faults, "the record is faulty:\n%s", faults.Error())
	doc := facts.Build(r, circuit.Analyse(r))
	result, err := engine.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	var mine []verdict.Verdict
	for _, v := range result.Verdicts {
		if v.Rule.ID == rule.ID {
			mine = append(mine, v)
		}
	}
	return mine
}

// lines returns the lines at which the verdicts of an outcome point, in order.
func lines(verdicts []verdict.Verdict, outcome verdict.Outcome) []int {
	at := []int{}
	for _, v := range verdicts {
		if v.Outcome == outcome {
			at = append(at, v.At.Start.Line)
		}
	}
	slices.Sort(at)
	return at
}

// TestExamplesShowTheirRule judges the three records of each example: the
// breach is found exactly at its marks, the cure is met, and the open one is
// undecided exactly at its marks, each time naming what is missing.
func TestExamplesShowTheirRule(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	for _, rule := range engine.Rules() {
		t.Run(rule.ID, func(t *testing.T) {
			example, err := engine.Example(rule.ID)
			require.NoError(t, err)

			breach := judged(t, engine, rule, example.Breach.Text)
			require.NotEmpty(t, marked(example.Breach.Text, "want", rule.ID), "the breach carries no mark")
			assert.Equal(t, marked(example.Breach.Text, "want", rule.ID), lines(breach, verdict.Breach), "lines of the breach")
			assert.Empty(t, lines(breach, verdict.Undecided), "the breach leaves something undecided: %v", gaps(breach))
			speak(t, breach)

			cure := judged(t, engine, rule, example.Cure.Text)
			assert.NotEmpty(t, lines(cure, verdict.Met), "the cure meets nothing")
			assert.Empty(t, lines(cure, verdict.Breach), "the cure is a breach")
			assert.Empty(t, lines(cure, verdict.Undecided), "the cure is undecided: %v", gaps(cure))

			if len(rule.Needs)+len(rule.Asks)+len(rule.Decides) == 0 {
				assert.Empty(t, example.Open.Text, "the rule needs no fact that may be missing, so nothing can be open")
				return
			}
			open := judged(t, engine, rule, example.Open.Text)
			require.NotEmpty(t, marked(example.Open.Text, "open", rule.ID), "the open record carries no mark")
			assert.Equal(t, marked(example.Open.Text, "open", rule.ID), lines(open, verdict.Undecided), "lines of the open record")
			assert.Empty(t, lines(open, verdict.Breach), "the open record is a breach")
			for _, v := range open {
				if v.Outcome == verdict.Undecided {
					assert.NotEmpty(t, v.Missing, "undecided without saying what is missing")
				}
			}
		})
	}
}

// gaps lists what undecided verdicts miss, for a test's message.
func gaps(verdicts []verdict.Verdict) []string {
	var all []string
	for _, v := range verdicts {
		for _, g := range v.Missing {
			all = append(all, v.Subject+": "+g.String())
		}
	}
	return all
}

// speak checks that the words of each breach are whole.
func speak(t *testing.T, verdicts []verdict.Verdict) {
	t.Helper()
	show := func(f verdict.Figure) string { return f.Print(quantity.Metric) }
	for _, v := range verdicts {
		if v.Outcome != verdict.Breach {
			continue
		}
		for _, template := range []string{v.Says, v.Remedy} {
			assert.NotContains(t, v.Text(template, show), "{", "a place that no figure fills")
		}
		assert.NotEmpty(t, v.Sources)
	}
}
