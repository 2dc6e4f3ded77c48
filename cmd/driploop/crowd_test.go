package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestAmongManyTinyFilesTheRecordsAreFound looks at thirty thousand tiny files,
// some of them with names that a terminal would act on, and one that cannot be
// read; and takes little memory for them.
func TestAmongManyTinyFilesTheRecordsAreFound(t *testing.T) {
	folder, bin := t.TempDir(), program(t)
	const folders, each = 30, 1000
	odd := map[string]bool{}
	for i := range folders {
		in := filepath.Join(folder, fmt.Sprintf("%02d\n\x1b[2J", i))
		require.NoError(t, os.Mkdir(in, 0o700))
		for j := range each {
			require.NoError(t, os.WriteFile(filepath.Join(in, fmt.Sprintf("f%03d.yaml", j)), []byte("a: 1\n"), 0o600))
		}
		record := filepath.Join(in, "r\r\u202e.yaml")
		require.NoError(t, os.WriteFile(record, []byte(smallRecord), 0o600))
		odd[record] = true
	}
	// Permissions do not keep the superuser out; a link that leads to itself does.
	closed := filepath.Join(folder, "closed.yaml")
	require.NoError(t, os.Symlink("closed.yaml", closed))

	cmd := exec.Command(bin, "check", "--no-cache", "--config", "none", "--gate", "none", "--format", "json", folder)
	var out bytes.Buffer
	cmd.Stdout = &out
	peak := watched(t, cmd)
	assert.Equal(t, exitUnusable, cmd.ProcessState.ExitCode())
	var said struct {
		Records []struct{ Path string }
		Errors  []struct{ Path, Says string }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &said))
	assert.NotContains(t, out.String(), "\x1b")
	for _, r := range said.Records {
		assert.True(t, odd[r.Path], r.Path)
	}
	assert.Len(t, said.Records, folders)
	require.Len(t, said.Errors, 1)
	assert.Equal(t, closed, said.Errors[0].Path)
	assert.Less(t, peak, int64(150<<10), "KiB")
}
