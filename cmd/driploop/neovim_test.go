package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNeovim opens a record in a real editor, without a screen.
func TestNeovim(t *testing.T) {
	editor, err := exec.LookPath("nvim")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("nvim is missing; install it with: apt-get install neovim")
		}
		t.Skip("nvim is missing; install it with: apt-get install neovim")
	}
	dir := t.TempDir()
	program := filepath.Join(dir, "driploop")
	self, err := os.Executable() // by this name the test is the program; see TestMain
	require.NoError(t, err)
	require.NoError(t, os.Symlink(self, program))
	file := filepath.Join(dir, "job.yaml")
	require.NoError(t, os.WriteFile(file, []byte(demoText(t)), 0o600))
	script, err := filepath.Abs("testdata/neovim.lua")
	require.NoError(t, err)

	cmd := exec.Command(editor, "--headless", "-u", "NONE", "-i", "NONE", "-n", "-S", script)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "DRIPLOOP="+program, "RECORD="+file, "XDG_STATE_HOME="+dir, "XDG_CACHE_HOME="+dir)
	timer := time.AfterFunc(90*time.Second, func() { _ = cmd.Process.Kill() })
	defer timer.Stop()
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	for _, says := range []string{
		"diagnostic 8 protection/device-oversized",
		"diagnostic 8 protection/device-too-far",
		"hover **conductors.P1**",
		"definition 5",
		"symbols 6",
		`fault "fuze" is no value of "kind"; did you mean "fuse"?`,
		"action Set components.fuse.rating: 80 A",
		"line   fuse:     {kind: fuse, rating: 80 A, voltage: 32 V}",
	} {
		assert.Contains(t, string(out), says)
	}
}
