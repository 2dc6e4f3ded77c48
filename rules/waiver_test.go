package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

// One waiver holds, one has run out, one waives what is not there, one a rule
// that there is none of.
const waivedJob = `
driploop: 1
job: {number: W-1, title: Anchor winch}
vessel: {system: 12 V}
practice: [us-voluntary, workmanship]
spaces:
  cabin: {kind: accommodation}
components:
  fuse: {kind: fuse}
  winch: {kind: motor}
conductors:
  P1: &wire {from: fuse.load, to: winch.pos, role: positive, length: 4 m, route: [{space: cabin, length: 4 m, in: open, support: 1 m}]}
  P2: *wire
  P3: {<<: *wire, route: [{space: cabin, length: 4 m, in: open, support: 300 mm}]}
waivers:
  - {rule: routing/support-too-far, at: conductors.P1, reason: behind a liner, by: foreman, until: 2026-07-01}
  - {rule: routing/support-too-far, at: conductors.P2, reason: behind a liner, by: foreman, until: 2026-06-30}
  - {rule: routing/support-too-far, at: conductors.P3, reason: behind a liner, by: foreman, until: 2026-07-01}
  - {rule: routing/no-such-rule, at: conductors.P3, reason: behind a liner, by: foreman, until: 2026-07-01}
`

func TestWaiversAreJudgedByWhatTheyWaive(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	r, faults := record.Decode("waived.yaml", []byte(waivedJob))
	require.Empty(t, faults)
	doc := facts.Build(r, circuit.Analyse(r))
	result, err := engine.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	outcomes := map[string]verdict.Outcome{}
	for _, v := range result.Verdicts {
		outcomes[v.Rule.ID+" "+v.Subject] = v.Outcome
	}
	for subject, want := range map[string]verdict.Outcome{
		"routing/support-too-far conductors.P1.route[0]": verdict.Waived,
		"routing/support-too-far conductors.P2.route[0]": verdict.Breach,
		"routing/support-too-far conductors.P3.route[0]": verdict.Met,
		"documents/waiver-expired waivers[0]":            verdict.Met,
		"documents/waiver-expired waivers[1]":            verdict.Breach,
		"documents/waiver-idle waivers[0]":               verdict.Met,
		"documents/waiver-idle waivers[1]":               verdict.Met,
		"documents/waiver-idle waivers[2]":               verdict.Breach,
		"documents/waiver-idle waivers[3]":               verdict.Breach,
		"documents/waiver-without-reason waivers[3]":     verdict.Met,
	} {
		assert.Equal(t, want, outcomes[subject], subject)
	}
	assert.Equal(t, len(result.Verdicts), result.Counts.Total())
	assert.Nil(t, doc.Waivers["0000"].Waives, "the document that was judged is left as it was")
}
