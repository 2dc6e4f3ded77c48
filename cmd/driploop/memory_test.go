package main

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// watched runs a program to its end and returns the most memory that it took, in
// KiB. What the system accounts to a process counts what the one that started it
// had taken by then, which here are all tests before; so it is asked while it runs.
func watched(t testing.TB, cmd *exec.Cmd) int64 {
	t.Helper()
	require.NoError(t, cmd.Start())
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		_ = cmd.Wait() // its code is looked at
	}()
	var most int64
	for {
		most = max(most, peakOf(cmd.Process.Pid))
		select {
		case <-ended:
			require.Positive(t, most, "no memory was seen")
			return most
		case <-time.After(5 * time.Millisecond):
		}
	}
}

// peakOf returns the most memory that a process has taken so far, in KiB; 0 where
// there is none.
func peakOf(pid int) int64 {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	_, after, _ := strings.Cut(string(status), "VmHWM:")
	var kib int64
	_, _ = fmt.Sscanf(after, "%d kB", &kib) // a process that has ended has none
	return kib
}

func TestWatchedMemoryIsOfTheProgramAlone(t *testing.T) {
	own := make([]byte, 96<<20)
	for i := range own {
		own[i] = byte(i)
	}
	require.Greater(t, peakOf(os.Getpid()), int64(96<<10))
	require.Less(t, watched(t, exec.Command("sleep", "0.1")), int64(32<<10))
	require.NotZero(t, own[1])
}
