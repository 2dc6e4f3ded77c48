package rules_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

const yardHead = `# METADATA
# title: Line long
# description: Something could happen.
# schemas:
#   - input: schema.facts
# custom:
#   id: stowage/line-long
#   severity: caution
#   subject: conductors
#   applies: every conductor
#   needs: [length_mm]
#   says: "{length} long"
#   remedy: "Shorten it."
#   sources:
#     - {set: yard, source: common-practice, clause: "", asks: "short lines", trust: practice}
#   since: 0.1.0
package driploop.yard.stowage.line_long
`

const yardBreach = `
breach contains {"subject": id, "figures": {"length_mm": c.length_mm}, "limit": {}} if {
	some id, c in input.conductors
	c.length_mm > 20000
}
`

func yardFolder(text string) *rules.Folder {
	return &rules.Folder{Path: "house-rules", Files: fstest.MapFS{"stowage/line_long.rego": {Data: []byte(text)}}}
}

func yardRecord(t *testing.T) (*record.Record, *facts.Document) {
	t.Helper()
	r, faults := record.Decode("job.yaml", []byte(`driploop: 1
job: {number: J-1}
vessel: {system: 12 V}
components:
  house: {kind: battery}
  lights: {kind: lamp}
conductors:
  P1: {from: house.pos, to: lights.pos, role: positive, length: 25 m}
  N1: {from: lights.neg, to: house.neg, role: negative, length: 2 m}
`))
	require.Empty(t, faults)
	doc := facts.Build(r, circuit.Analyse(r))
	doc.Practice = append(doc.Practice, rules.YardSet)
	return r, doc
}

func TestAYardsRuleJudgesBesideOurs(t *testing.T) {
	ours, err := rules.New()
	require.NoError(t, err)
	with, err := rules.NewWith(yardFolder(yardHead + yardBreach))
	require.NoError(t, err)
	assert.NotEqual(t, ours.Digest(), with.Digest())
	r, doc := yardRecord(t)
	before, err := ours.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	after, err := with.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	kept := []verdict.Verdict{}
	found := map[verdict.Outcome]int{}
	for _, v := range after.Verdicts {
		if v.Rule.ID == "stowage/line-long" {
			found[v.Outcome]++
			continue
		}
		kept = append(kept, v)
	}
	assert.Equal(t, map[verdict.Outcome]int{verdict.Breach: 1, verdict.Met: 1}, found)
	require.Len(t, kept, len(before.Verdicts), "no verdict of ours is lost")
	for i := range kept {
		assert.Equal(t, before.Verdicts[i].Rule.ID, kept[i].Rule.ID)
		assert.Equal(t, before.Verdicts[i].Outcome, kept[i].Outcome)
	}
}

// TestHostileRulesAreRefused reads rules that reach for what they may not, speak
// for others, or could pass in silence.
func TestHostileRulesAreRefused(t *testing.T) {
	body := func(line string) string {
		return yardHead + strings.Replace(yardBreach, "\tc.length_mm", line+"\tc.length_mm", 1)
	}
	for name, c := range map[string]struct{ text, want string }{
		"network":       {body("\thttp.send({\"method\": \"get\", \"url\": \"http://a.invalid\"}).status_code == 200\n"), "line_long.rego:21:2: undefined function http.send; a rule compares facts and may call only"},
		"clock":         {body("\ttime.now_ns() > 0\n"), "undefined function time.now_ns"},
		"environment":   {body("\topa.runtime().env.HOME != \"\"\n"), "undefined function opa.runtime"},
		"randomness":    {body("\trand.intn(\"a\", 5) == 1\n"), "undefined function rand.intn"},
		"a long text":   {body("\tconcat(\"\", [\"a\", \"b\"]) == \"ab\"\n"), "undefined function concat"},
		"a format":      {body("\tsprintf(\"%1000000000d\", [1]) != \"\"\n"), "undefined function sprintf"},
		"regex":         {body("\tregex.match(\"(a*)*b\", id)\n"), "undefined function regex.match"},
		"data of ours":  {body("\tcount(data.driploop.rules) > 0\n"), "line_long.rego:21:"},
		"silent pass":   {strings.Replace(yardHead, "[length_mm]", "[]", 1) + yardBreach, "house-rules/stowage/line_long.rego:21:2: breach reads length_mm, which may be missing; list it in needs, asks or decides"},
		"negation":      {body("\tnot c.length_mm < 5\n"), `no "not"`},
		"no such fact":  {strings.ReplaceAll(yardHead+yardBreach, "length_mm", "lengthh_mm"), "did you mean length_mm?"},
		"our package":   {strings.Replace(yardHead, "driploop.yard.stowage.line_long", "driploop.rules.protection.device_too_far", 1) + yardBreach, "line_long.rego:17:1: package driploop.rules.protection.device_too_far is not that of id \"stowage/line-long\"; write package driploop.yard.stowage.line_long"},
		"another's set": {strings.Replace(yardHead, "set: yard", "set: us-federal", 1) + yardBreach, "a yard's rule stands in the practice set yard"},
		"as law":        {strings.Replace(yardHead, "source: common-practice", "source: 33-cfr-183", 1) + yardBreach, "a yard's rule is no law"},
		"imports":       {strings.Replace(yardHead, "line_long\n", "line_long\n\nimport data.driploop.rules\n", 1) + yardBreach, "imports"},
		"no rego":       {yardHead + "breach contains", "line_long.rego:18:"},
		"binary":        {"\x00\x01\x02", "METADATA"},
		"deep":          {body("\tcount(" + strings.Repeat("[", 60000) + strings.Repeat("]", 60000) + ") == 1\n"), "line_long.rego"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := rules.NewWith(yardFolder(c.text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}

func TestARuleCannotTakeThePlaceOfOurs(t *testing.T) {
	text := strings.NewReplacer("stowage/line-long", "protection/device-too-far", "stowage.line_long", "protection.device_too_far").Replace(yardHead + yardBreach)
	folder := &rules.Folder{Path: "house-rules", Files: fstest.MapFS{"protection/device_too_far.rego": {Data: []byte(text)}}}
	_, err := rules.NewWith(folder)
	assert.ErrorContains(t, err, `house-rules/protection/device_too_far.rego:7:5: id "protection/device-too-far" is that of protection/device_too_far.rego too`)
	folder.Files.(fstest.MapFS)["sources.yaml"] = &fstest.MapFile{Data: []byte("sources: [{id: 33-cfr-183, title: x, edition: x, issuer: x, force: handbook, scope: x}]")}
	_, err = rules.NewWith(folder)
	assert.ErrorContains(t, err, `source "33-cfr-183" is there already`)
	folder.Files.(fstest.MapFS)["binding.rego"] = &fstest.MapFile{Data: []byte("package driploop.binding\n")}
	_, err = rules.NewWith(folder)
	assert.ErrorContains(t, err, "stands in no topic's folder")
}

// TestRunawayRulesAreStopped judges a record by rules that take all the time or
// memory there is. What is ours is judged all the same.
func TestRunawayRulesAreStopped(t *testing.T) {
	if testing.Short() {
		t.Skip("waits for bounds")
	}
	var loop strings.Builder
	loop.WriteString("\nnumbers := {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19}\n\nall_pairs := count({x |")
	for i := range 9 {
		fmt.Fprintf(&loop, "\n\tsome n%d in numbers", i)
	}
	loop.WriteString("\n\tx := [n0, n1, n2, n3, n4, n5, n6, n7, n8]\n})\n")
	text := yardHead + loop.String() + strings.Replace(yardBreach, "\tc.length_mm > 20000\n", "\tc.length_mm > 20000\n\tall_pairs > 5\n", 1)
	engine, err := rules.NewWith(yardFolder(text))
	if err != nil {
		assert.NotContains(t, err.Error(), "fault of the program")
		t.Logf("refused when read: %v", err)
		return
	}
	r, doc := yardRecord(t)
	begun := time.Now()
	judged, err := engine.Judge(r, doc, exampleDay)
	t.Logf("stopped after %v: %v", time.Since(begun).Round(time.Millisecond), err)
	var failed *rules.YardError
	require.ErrorAs(t, err, &failed)
	assert.Contains(t, failed.Failures[0], "the rule stowage/line-long could not be evaluated: stopped: it took ")
	ours := 0
	for _, v := range judged.Verdicts {
		if v.Rule.ID == "stowage/line-long" {
			assert.NotEqual(t, verdict.Breach, v.Outcome)
		} else {
			ours++
		}
	}
	assert.NotZero(t, ours)
}
