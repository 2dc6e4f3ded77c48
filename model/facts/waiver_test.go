package facts_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/figure"
)

const waived = `
driploop: 1
job: {number: T-1, title: Waivers}
vessel: {system: 12 V}
components:
  fan: {kind: blower}
waivers:
  - {rule: routing/no-slack, at: components.fan, reason: unknown, until: 2026-07-01}
  - {rule: routing/no-slack, at: components.fan, reason: behind a liner, by: foreman, until: unknown}
`

func TestWaiverTellsWhatItLacks(t *testing.T) {
	d := build(t, waived)
	assert.Equal(t, []string{"reason", "author"}, d.Waivers["0000"].Lacks)
	assert.Equal(t, []string{"date"}, d.Waivers["0001"].Lacks)
	assert.True(t, d.Waivers["0000"].Dated)
	assert.False(t, d.Waivers["0001"].Dated)
}

func TestDayAndJudgementMakeACopy(t *testing.T) {
	d := build(t, waived)
	day := d.On(time.Date(2026, 7, 1, 12, 0, 0, 0, time.UTC))
	assert.Equal(t, "2026-07-01", *day.Job.Today)
	assert.False(t, day.Job.Open.Has("today"))
	assert.Nil(t, d.Job.Today)
	assert.True(t, d.Job.Open.Has("today"))

	judged := d.Judged(map[string]figure.Truth{"0000": figure.True()})
	require.NotNil(t, judged.Waivers["0000"].Waives)
	assert.True(t, *judged.Waivers["0000"].Waives)
	assert.False(t, judged.Waivers["0000"].Open.Has("waives"))
	assert.Nil(t, judged.Waivers["0001"].Waives)
	assert.NotEmpty(t, judged.Waivers["0001"].Open.Of("waives"))
	assert.Nil(t, d.Waivers["0000"].Waives)
}

func TestDigestIsTakenWhereOneWasSigned(t *testing.T) {
	assert.False(t, build(t, waived).Job.DigestGiven)
	job := build(t, waived+"sign_off: {digest: \"sha256:0\"}\n").Job
	assert.True(t, job.DigestGiven)
	assert.Equal(t, "sha256:0", *job.SignedDigest)
	assert.Regexp(t, "^sha256:[0-9a-f]{64}$", *job.Digest)
}
