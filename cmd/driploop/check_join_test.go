package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// command runs one and returns what it prints.
func command(args ...string) (out, errs string, code int) {
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(""), &o, &e)
	return o.String(), e.String(), code
}

// partsOf judges a folder in parts and returns their files.
func partsOf(t *testing.T, folder string, n int) (files []string) {
	t.Helper()
	into := t.TempDir()
	for p := 1; p <= n; p++ {
		file := filepath.Join(into, fmt.Sprintf("%d.json", p))
		_, errs, _ := command("check", "--no-cache", "--config", "none", "--format", "json", "--part", fmt.Sprintf("%d/%d", p, n), "-o", file, folder)
		require.Empty(t, errs)
		files = append(files, file)
	}
	return files
}

func TestJoinedPartsAreTheWholeRun(t *testing.T) {
	folder := yardOf(t, 12)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "broken.yaml"), []byte("driploop: 1\njobb: 3\n"), 0o600))
	whole, _, code := command("check", "--no-cache", "--config", "none", "--format", "json", folder)
	files := partsOf(t, folder, 4)
	files[0], files[3] = files[3], files[0]
	joined, errs, got := command(append([]string{"check", "--join"}, files...)...)
	assert.Empty(t, errs)
	assert.Equal(t, exitUnusable, code)
	assert.Equal(t, code, got)
	assert.Equal(t, whole, joined, "byte by byte")
}

func TestJoinedPartsAreHeldToTheGate(t *testing.T) {
	files := partsOf(t, yardOf(t, 3), 2)
	for _, c := range []struct {
		flags string
		want  int
	}{{"--gate danger", exitBreach}, {"--gate none", exitClean}, {"--gate none --complete", exitBreach}} {
		_, errs, code := command(append(append([]string{"check", "--join"}, strings.Fields(c.flags)...), files...)...)
		assert.Equal(t, c.want, code, c.flags+errs)
	}
}

func TestPartsThatMakeNoWholeAreRefused(t *testing.T) {
	folder := yardOf(t, 4)
	files, others := partsOf(t, folder, 3), partsOf(t, folder, 2)
	text, err := os.ReadFile(files[0])
	require.NoError(t, err)
	altered := func(name, text string) string {
		path := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		return path
	}
	foreign := altered("foreign.json", strings.Replace(string(text), "sha256:", "sha256:0", 1))
	cut := altered("cut.json", string(text[:len(text)-20]))
	stopped := altered("stopped.json", strings.Replace(string(text), `"part 1/3: `, `"stopped before the end: `, 1))
	whole, _, _ := command("check", "--no-cache", "--config", "none", "--format", "json", folder)
	for name, c := range map[string]struct {
		files []string
		says  string
	}{
		"one missing":      {files[:2], "part 3/3 is missing"},
		"one twice":        {[]string{files[0], files[1], files[2], files[1]}, "both part 2/3"},
		"of another split": {[]string{files[0], others[1]}, "not parts of one run"},
		"other rules":      {[]string{files[1], foreign, files[2]}, "different rules or programs"},
		"cut off":          {[]string{cut, files[1], files[2]}, "is cut off before its end"},
		"stopped":          {[]string{stopped, files[1], files[2]}, "was stopped before the end"},
		"a whole run":      {[]string{altered("whole.json", whole)}, "is no part of a run"},
		"not JSON":         {[]string{altered("x.json", "driploop: 1")}, "cannot be read"},
		"empty":            {[]string{altered("e.json", "")}, "is cut off"},
		"not there":        {[]string{"none.json"}, "there is no such file"},
		"a pipe":           {[]string{"-"}, "--join reads files"},
	} {
		t.Run(name, func(t *testing.T) {
			into := filepath.Join(t.TempDir(), "joined.json")
			_, errs, code := command(append([]string{"check", "--join", "-o", into}, c.files...)...)
			assert.Equal(t, exitUnusable, code)
			assert.Contains(t, errs, c.says)
			assert.NoFileExists(t, into)
		})
	}
}
