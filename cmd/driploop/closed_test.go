package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asAnyone has a program run as a user whom permissions keep out; they do not keep
// out the superuser.
func asAnyone(cmd *exec.Cmd) *exec.Cmd {
	const nobody = 65534
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	return cmd
}

// TestWhatMayNotBeReadIsAnError: a record and a folder that nobody may read are
// told of, and never pass for clean; the others are judged.
func TestWhatMayNotBeReadIsAnError(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.Chmod(filepath.Dir(folder), 0o755)) //nolint:gosec // anyone has to get there
	bin, err := os.ReadFile(program(t))
	require.NoError(t, err)
	at := func(name string) string { return filepath.Join(folder, name) }
	require.NoError(t, os.WriteFile(at("driploop"), bin, 0o755)) //nolint:gosec // so does the program
	require.NoError(t, os.Mkdir(at("jobs"), 0o755))              //nolint:gosec // and the records
	require.NoError(t, os.WriteFile(at("jobs/open.yaml"), []byte(smallRecord), 0o644))
	require.NoError(t, os.WriteFile(at("jobs/closed.yaml"), []byte(smallRecord), 0o000))
	require.NoError(t, os.Mkdir(at("jobs/locked"), 0o000))
	t.Cleanup(func() { _ = os.Chmod(at("jobs/locked"), 0o700) })

	check := func(args ...string) (int, []string, []string) {
		cmd := asAnyone(exec.Command(at("driploop"), append([]string{"check", "--no-cache", "--config", "none", "--gate", "none", "--format", "json"}, args...)...))
		cmd.Dir = folder
		var out, errs bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &errs
		_ = cmd.Run() // its code is looked at
		var said struct {
			Records []struct{ Path string }
			Errors  []struct{ Path, Says string }
		}
		require.NoError(t, json.Unmarshal(out.Bytes(), &said), errs.String())
		var judged, refused []string
		for _, r := range said.Records {
			judged = append(judged, r.Path)
		}
		for _, e := range said.Errors {
			assert.Contains(t, e.Says, "permission denied")
			refused = append(refused, e.Path)
		}
		return cmd.ProcessState.ExitCode(), judged, refused
	}

	code, judged, refused := check("jobs")
	assert.Equal(t, exitUnusable, code)
	assert.Equal(t, []string{"jobs/open.yaml"}, judged)
	assert.ElementsMatch(t, []string{"jobs/closed.yaml", "jobs/locked"}, refused)

	code, judged, refused = check("jobs/closed.yaml")
	assert.Equal(t, exitUnusable, code)
	assert.Empty(t, judged)
	assert.Equal(t, []string{"jobs/closed.yaml"}, refused)
}
