package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/yard"
	"driploop/rules"
)

const smallRecord = "driploop: 1\njob: {number: X}\nvessel: {system: 12 V}\n"

// brokenSession is one whose rules panic.
func brokenSession(errs *bytes.Buffer) *session {
	return &session{errs: errs, engine: func() (*rules.Engine, error) { panic("no\a rules") }}
}

func TestAFaultOfTheProgramIsNamedWithItsPlaceAndNoStack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.yaml")
	require.NoError(t, os.WriteFile(path, []byte(smallRecord), 0o600))
	var errs bytes.Buffer
	c := &checking{session: brokenSession(&errs), flags: &checkFlags{}, settings: &yard.Settings{}, today: time.Now()}
	got := c.judge(yard.File{Path: path, Named: true})
	require.NotNil(t, got.broken)
	assert.False(t, got.judged)
	require.Len(t, got.faults, 1, "the file is accounted for")
	assert.Equal(t, path, got.faults[0].Path)
	assert.Contains(t, got.faults[0].Says, "a fault of the program at cmd/driploop/fault_test.go:")

	got.broken.report(&errs)
	assert.Contains(t, errs.String(), `driploop: a fault of the program at cmd/driploop/fault_test.go:`)
	assert.Contains(t, errs.String(), `: no\a rules`, "control characters are escaped")
	assert.Contains(t, errs.String(), "Please report this")
	assert.NotContains(t, errs.String(), "goroutine")

	t.Setenv("DRIPLOOP_DEBUG", "1")
	got.broken.report(&errs)
	assert.Contains(t, errs.String(), "goroutine")
}

func TestAFaultOfTheProgramEndsWithItsOwnCode(t *testing.T) {
	var errs bytes.Buffer
	assert.Equal(t, exitFault, guard(&errs, func() int { panic("anything") }))
	assert.Contains(t, errs.String(), "a fault of the program at cmd/driploop/fault_test.go:")
	assert.Equal(t, exitBreach, guard(&errs, func() int { return exitBreach }))
}

func TestRulesThatDoNotCompileAreAFaultOfTheProgram(t *testing.T) {
	var out, errs bytes.Buffer
	s := &session{out: &output{w: &out}, errs: &errs, engine: func() (*rules.Engine, error) {
		return nil, &programFault{errors.New("a.rego:1: one\nb.rego:2: two")}
	}}
	for _, args := range [][]string{{"cite"}, {"check", "fault_test.go"}} {
		errs.Reset()
		assert.Equal(t, exitFault, s.run(args))
		assert.Equal(t, "driploop: a fault of the program: a.rego:1: one\n  b.rego:2: two\n"+pleaseReport+"\n", errs.String())
		assert.Empty(t, out.String())
	}
}

func TestThePlaceOfAFaultIsOurCodeNotTheLibrarys(t *testing.T) {
	defer func() {
		assert.Contains(t, caught(recover()).at, "cmd/driploop/fault_test.go:")
	}()
	_ = strings.Repeat("x", -1) // panics in the library
}
