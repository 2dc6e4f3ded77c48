package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestProgressTellsFilesDoneRateAndTimeLeft(t *testing.T) {
	var screen bytes.Buffer
	p := newProgress(&screen, 10, 0)
	for range 4 {
		time.Sleep(progressEvery)
		p.add()
	}
	last := screen.String()[strings.LastIndex(screen.String(), "judging"):]
	assert.Regexp(t, `^judging +40% \[=+>\.+\] \(4/10, \d+ files/s\) \[.*:.*\]`, last)
	p.end()
	assert.Regexp(t, `\r +\r$`, screen.String(), "nothing is left on the screen")
}

func TestProgressOfShortWorkIsNotShown(t *testing.T) {
	var screen bytes.Buffer
	p := newProgress(&screen, 2, time.Hour)
	p.add()
	p.add()
	p.end()
	assert.Empty(t, screen.String())
	var none *progress
	none.add()
	none.end()
}

// On a terminal a long check shows its progress; beside verdicts that run over
// the same screen, or in a pipe, it does not.
func TestProgressIsForATerminalOnly(t *testing.T) {
	record, err := os.ReadFile("../../testdata/records/faulty/thruster-launch.yaml")
	require.NoError(t, err)
	folder := t.TempDir()
	for i := range 5 {
		require.NoError(t, os.WriteFile(filepath.Join(folder, strconv.Itoa(i)+".yaml"), record, 0o644))
	}
	check := func(out, errs io.Writer) int {
		s := &session{out: &output{w: out}, errs: errs, terminal: terminalOf(out), engine: compiled()} // shows it at once
		return s.run([]string{"check", "--format", "json", folder})
	}
	terminal, screen, err := pty.Open()
	require.NoError(t, err)
	shown := make(chan string)
	go func() {
		text, _ := io.ReadAll(terminal) // it ends with an error when the other side closes
		shown <- string(text)
	}()
	out, err := os.Create(filepath.Join(t.TempDir(), "out.json"))
	require.NoError(t, err)
	assert.Equal(t, exitBreach, check(out, screen))
	require.NoError(t, screen.Close())
	assert.Contains(t, <-shown, "/5, ")
	require.NoError(t, terminal.Close())
	require.NoError(t, out.Close())

	var errs bytes.Buffer
	assert.Equal(t, exitBreach, check(io.Discard, &errs))
	assert.Empty(t, errs.String())
}
