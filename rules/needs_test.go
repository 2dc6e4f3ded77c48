package rules

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// absenceIsTheFault are rules on paperwork: what they look for is not there.
var absenceIsTheFault = []string{"documents/changed-after-sign-off", "documents/not-tested", "documents/waiver-without-reason"}

// neverLost are rules whose needs no single value of their breach or cure takes
// away: roles, joints and whole tests decide them. Their open case shows them.
var neverLost = []string{
	"conductors/hull-carries-current", "documents/changed-after-sign-off", "documents/not-tested", "grounding/negatives-apart", "protection/unprotected",
}

// standIns gives, for a value that another entry can stand in for, the end of the
// name of the one that is asked for instead.
var standIns = map[string]string{
	"measurements/current-above-nameplate: power":   "current",
	"penetrations/enters-from-above: panel.part":    "enters_top",
	"penetrations/not-watertight: panel.part":       "panel.watertight",
	"penetrations/sealant-out-of-place: panel.part": "panel.below_waterline",
	"routing/near-fuel-line: fuel_line_side":        "fuel_line",
	"terminations/solder-alone: crimp.tool":         "soldered",
}

// TestNeededLeafTakenAwayIsNamed takes each value out of the breach and the cure
// of every rule's example, and writes "unknown" for it. The verdict stays, or is
// undecided and names that value among what is missing; and there is such a value
// for every rule that lists facts. An item of a list is left alone: the list
// without it is another claim.
func TestNeededLeafTakenAwayIsNamed(t *testing.T) {
	engine := readEngine(t)
	for _, r := range engine.rules {
		t.Run(r.meta.ID, func(t *testing.T) {
			example, err := engine.Example(r.meta.ID)
			require.NoError(t, err)
			undecided := 0
			for _, part := range []Part{example.Breach, example.Cure} {
				before, usable := verdictsOf(t, engine, r, part.Text)
				require.True(t, usable)
				for _, c := range withoutEachLeaf(t, part.Text) {
					if strings.HasSuffix(c.path, "]") {
						continue
					}
					after, usable := verdictsOf(t, engine, r, c.text)
					if !usable {
						continue
					}
					for subject, was := range before {
						if was.Outcome == verdict.Breach || was.Outcome == verdict.Met {
							undecided += staysOrNames(t, c, was, after[subject])
						}
					}
				}
			}
			listed := len(r.needs)+len(r.asks)+len(r.decides)+len(r.clauses) > 0
			assert.Equal(t, listed && !slices.Contains(neverLost, r.meta.ID), undecided > 0, "values taken away leave the rule undecided")
		})
	}
}

// staysOrNames checks a verdict after a change, and returns 1 if it has become
// undecided.
func staysOrNames(t *testing.T, c change, was, now *verdict.Verdict) int {
	t.Helper()
	switch id := was.Rule.ID; {
	case now == nil:
		t.Errorf("%s: %s is no subject any more", c.name, was.Subject)
	case now.Outcome == verdict.Undecided:
		if !slices.ContainsFunc(now.Missing, func(g verdict.Gap) bool { return c.isAskedFor(g, id) }) {
			t.Errorf("%s: %s is undecided and names %v", c.name, was.Subject, now.Missing)
		}
		return 1
	case now.Outcome == verdict.Breach && slices.Contains(absenceIsTheFault, id):
	case now.Outcome != was.Outcome:
		t.Errorf("%s: %s was %s and is %s", c.name, was.Subject, was.Outcome, now.Outcome)
	}
	return 0
}

// isAskedFor tells whether a gap names a path, what can stand in for it, or the
// verdict that it leaves undecided.
func (c change) isAskedFor(g verdict.Gap, rule string) bool {
	if g.Field == c.path || rule == "documents/waiver-idle" && strings.Contains(g.Why, "is undecided at") {
		return true
	}
	for of, instead := range standIns {
		end, ofThis := strings.CutPrefix(of, rule+": ")
		if start, ends := strings.CutSuffix(c.path, end); ofThis && ends && g.Field == start+instead {
			return true
		}
	}
	return false
}

// verdictsOf judges a record by the practice sets of a rule, unless it names its
// own, and returns the rule's verdicts by subject; false if it cannot be used.
func verdictsOf(t *testing.T, engine *Engine, r *rule, text string) (map[string]*verdict.Verdict, bool) {
	t.Helper()
	rec, faults := record.Decode("record.yaml", []byte(text))
	if len(faults) > 0 {
		return nil, false
	}
	doc := facts.Build(rec, circuit.Analyse(rec))
	if !strings.Contains(text, "\npractice:") {
		doc.Practice = r.meta.Sets()
	}
	result, err := engine.Judge(rec, doc, testDay)
	require.NoError(t, err)
	all := map[string]*verdict.Verdict{}
	for i := range result.Verdicts {
		if v := &result.Verdicts[i]; v.Rule.ID == r.meta.ID {
			all[v.Subject] = v
		}
	}
	return all, true
}
