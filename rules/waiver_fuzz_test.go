package rules_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

// FuzzWaiver: whatever stands in a waiver, it turns breaches of its own rule at
// its own place into waived ones, and only if it is signed, has a reason and has
// not run out; every other verdict is what it is without the waiver.
func FuzzWaiver(f *testing.F) {
	bare, _, _ := strings.Cut(waivedJob, "waivers:")
	for _, at := range []string{"conductors.P1", "conductors.P1.route[0]", "conductors.P", "conductors", "P1", "", "vessel", "job", "waivers[0]", "conductors.P1.", "conductors.P3"} {
		f.Add("routing/support-too-far", at, "behind a liner", "foreman", "2026-07-01")
	}
	for _, until := range []string{"2026-06-30", "9999-12-31", "0000-00-00", "never", "", "2026-02-30", "2026-07-01T10:00:00Z", "26-07-01"} {
		f.Add("routing/support-too-far", "conductors.P1", "behind a liner", "foreman", until)
	}
	f.Add("documents/waiver-idle", "waivers[0]", "x", "y", "2027-01-01")
	f.Add("documents/waiver-expired", "waivers[0]", "x", "y", "2020-01-01")
	f.Add("routing/support-too-far", "conductors.P1", " \u00a0\t", "foreman", "2026-07-01")
	f.Add("routing/support-too-far", "conductors.P1", "unknown", "unknown", "unknown")
	f.Add("ROUTING/support-too-far\u200b", "conductors.P1", "\x00", "\u202e", "2026-07-01")
	engine, err := rules.New()
	require.NoError(f, err)
	judge := func(t testing.TB, text string) (map[string]verdict.Verdict, *record.Record) {
		r, faults := record.Decode("waived.yaml", []byte(text))
		if len(faults) > 0 {
			return nil, nil
		}
		result, err := engine.Judge(r, facts.Build(r, circuit.Analyse(r)), exampleDay)
		require.NoError(t, err)
		all := map[string]verdict.Verdict{}
		for _, v := range result.Verdicts {
			all[v.Rule.ID+" "+v.Subject] = v
		}
		return all, r
	}
	without, _ := judge(f, bare)
	require.NotEmpty(f, without)
	f.Fuzz(func(t *testing.T, rule, at, reason, by, until string) {
		with, r := judge(t, bare+fmt.Sprintf("waivers:\n  - {rule: %s, at: %s, reason: %s, by: %s, until: %s}\n", quoted(rule), quoted(at), quoted(reason), quoted(by), quoted(until)))
		if with == nil {
			t.Skip() // not a record
		}
		holds := signed(r.Waivers[0])
		for key, v := range with {
			was, there := without[key]
			switch {
			case !there:
				if !strings.HasPrefix(key, "documents/waiver-") {
					t.Fatalf("%s is judged only where there is a waiver", key)
				}
			case was.Outcome == verdict.Breach && holds && v.Rule.ID == rule && (v.Subject == at || strings.HasPrefix(v.Subject, at+".") || strings.HasPrefix(v.Subject, at+"[")):
				if v.Outcome != verdict.Waived || v.Waiver == nil || v.Severity != was.Severity {
					t.Fatalf("%s is %s under a waiver that holds", key, v.Outcome)
				}
			case v.Outcome != was.Outcome || v.Waiver != nil:
				t.Fatalf("%s was %s and becomes %s by a waiver of %q at %q", key, was.Outcome, v.Outcome, rule, at)
			}
		}
		for key := range without {
			if _, there := with[key]; !there {
				t.Fatalf("%s is judged no longer", key)
			}
		}
	})
}

// signed tells whether a waiver has all that it takes to hold on the day of the examples.
func signed(w *record.Waiver) bool {
	reason, a := w.Reason.Get()
	by, b := w.By.Get()
	until, c := w.Until.Get()
	return a && b && c && strings.TrimSpace(reason) != "" && strings.TrimSpace(by) != "" && !until.Before(exampleDay.Truncate(24*time.Hour))
}

// quoted writes a text as a scalar of YAML: JSON is a part of it.
func quoted(text string) string {
	written, err := json.Marshal(text)
	if err != nil {
		return `""`
	}
	return string(written)
}
