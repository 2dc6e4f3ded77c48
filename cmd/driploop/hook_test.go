package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// readmeBlock returns the code that the README shows under a mark.
func readmeBlock(t *testing.T, mark string) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(text), "<!-- "+mark+" -->\n```sh\n")
	require.True(t, found, "the README shows no %s", mark)
	code, _, found := strings.Cut(rest, "```\n")
	require.True(t, found)
	return code
}

// TestExamplesForGitStopABreach runs the README's hook and its job of CI in a
// real repository.
func TestExamplesForGitStopABreach(t *testing.T) {
	git, err := exec.LookPath("git")
	if err != nil {
		t.Skip("git is missing")
	}
	root, bin := t.TempDir(), t.TempDir()
	build := exec.Command("go", "build", "-o", filepath.Join(bin, "driploop"), ".")
	out, err := build.CombinedOutput()
	require.NoError(t, err, "%s", out)
	run := func(name string, args ...string) (string, error) {
		cmd := exec.Command(name, args...)
		cmd.Dir = root
		cmd.Env = append(os.Environ(), "PATH="+bin+":"+os.Getenv("PATH"), "HOME="+root, "GIT_CONFIG_NOSYSTEM=1",
			"GIT_AUTHOR_NAME=bench", "GIT_AUTHOR_EMAIL=b@yard.invalid", "GIT_COMMITTER_NAME=bench", "GIT_COMMITTER_EMAIL=b@yard.invalid")
		out, err := cmd.CombinedOutput()
		return string(out), err
	}
	must := func(args ...string) {
		t.Helper()
		out, err := run(git, args...)
		require.NoError(t, err, "%v: %s", args, out)
	}
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(root, name), []byte(text), 0o600))
	}
	bad, err := run("driploop", "cite", "--example", "protection/device-voltage-low")
	require.NoError(t, err)
	good := strings.Replace(bad, "voltage: 32 V", "voltage: 80 V", 1)
	require.NotEqual(t, bad, good)

	must("init", "-q", "-b", "main")
	require.NoError(t, os.WriteFile(filepath.Join(root, ".git/hooks/pre-commit"), []byte(readmeBlock(t, "hook")), 0o755)) //nolint:gosec // a hook is a program
	must("commit", "-q", "--allow-empty", "-m", "begin")
	write("job.yaml", bad)
	must("add", ".")
	said, err := run(git, "commit", "-q", "-m", "a breach")
	require.Error(t, err, "the hook lets a breach pass")
	require.Contains(t, said, "protection/device-voltage-low")
	write("job.yaml", good)
	must("add", ".")
	must("commit", "-q", "-m", "cured")

	must("update-ref", "refs/remotes/origin/main", "HEAD")
	said, err = run("sh", "-c", readmeBlock(t, "ci"))
	require.NoError(t, err, said)
	write("job.yaml", bad)
	must("commit", "-q", "--no-verify", "-a", "-m", "around the hook")
	said, err = run("sh", "-c", readmeBlock(t, "ci"))
	require.Error(t, err, "the job lets a breach pass")
	require.Contains(t, said, "new since origin/main")
}
