package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/verdict"
)

func TestExitCodeByGate(t *testing.T) {
	of := func(outcome verdict.Outcome, severity verdict.Severity) []verdict.Verdict {
		return []verdict.Verdict{{Rule: &verdict.Rule{}, Outcome: outcome, Severity: severity}}
	}
	for name, c := range map[string]struct {
		verdicts []verdict.Verdict
		gate     string
		complete bool
		want     int
	}{
		"nothing":                       {nil, "notice", true, exitClean},
		"breach at the gate":            {of(verdict.Breach, verdict.Warning), "warning", false, exitBreach},
		"breach above the gate":         {of(verdict.Breach, verdict.Danger), "warning", false, exitBreach},
		"breach below the gate":         {of(verdict.Breach, verdict.Caution), "warning", false, exitClean},
		"notice at the lowest gate":     {of(verdict.Breach, verdict.Notice), "notice", false, exitBreach},
		"danger without a gate":         {of(verdict.Breach, verdict.Danger), "none", false, exitClean},
		"waived danger":                 {of(verdict.Waived, verdict.Danger), "notice", false, exitClean},
		"undecided danger":              {of(verdict.Undecided, verdict.Danger), "notice", false, exitClean},
		"undecided, wanted complete":    {of(verdict.Undecided, verdict.Notice), "danger", true, exitBreach},
		"undecided, complete, no gate":  {of(verdict.Undecided, verdict.Notice), "none", true, exitBreach},
		"met, wanted complete":          {of(verdict.Met, verdict.Danger), "notice", true, exitClean},
		"not applicable, want complete": {of(verdict.NotApplicable, verdict.Danger), "notice", true, exitClean},
	} {
		t.Run(name, func(t *testing.T) {
			f := &checkFlags{gate: choice{value: c.gate}, complete: c.complete}
			fails := false
			for i := range c.verdicts {
				fails = fails || f.fails(&c.verdicts[i])
			}
			assert.Equal(t, c.want == exitBreach, fails)
		})
	}
}

func TestNearestWord(t *testing.T) {
	words := []string{"danger", "warning", "caution", "notice"}
	for typed, want := range map[string]string{
		"dangr": "danger", "Warning": "warning", "cuation": "caution", "notic": "notice", "grave": "", "": "", "x": "",
	} {
		assert.Equal(t, want, nearest(typed, words), typed)
	}
}
