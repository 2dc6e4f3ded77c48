package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/yard"
)

func TestResultsComeInOrderUntilTheContextEnds(t *testing.T) {
	var files []yard.File
	for i := range 500 {
		files = append(files, yard.File{Path: string(rune('a' + i%26))})
	}
	var took []yard.File
	ctx, stop := context.WithCancel(context.Background())
	err := inOrder(ctx, slices.Values(files), func(yard.File) result { return result{judged: true} }, func(f yard.File, _ result) error {
		if took = append(took, f); len(took) == 40 {
			stop()
		}
		return nil
	})
	require.ErrorIs(t, err, context.Canceled)
	assert.Less(t, len(took), len(files))
	assert.Equal(t, files[:len(took)], took)

	full := errors.New("disk full")
	err = inOrder(context.Background(), slices.Values(files), func(yard.File) result { return result{} }, func(yard.File, result) error { return full })
	assert.ErrorIs(t, err, full)
}

// TestAHostileFolderNeitherHangsNorHides judges a folder of pipes, devices,
// circular links and odd names.
func TestAHostileFolderNeitherHangsNorHides(t *testing.T) {
	folder := t.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	require.NoError(t, syscall.Mkfifo(in("pipe.yaml"), 0o600))
	require.NoError(t, os.Symlink("/dev/zero", in("zero.yaml")))
	require.NoError(t, os.Symlink("self.yaml", in("self.yaml")))
	require.NoError(t, os.Mkdir(in("a"), 0o700))
	require.NoError(t, os.Symlink("..", in("a/loop")))
	require.NoError(t, os.WriteFile(in("stray.yaml"), []byte("x: 1\n"), 0o600))
	odd := in("odd\nname\x1b[31m.yaml")
	require.NoError(t, os.WriteFile(odd, []byte(smallRecord), 0o600))
	big, err := os.Create(in("big.yaml"))
	require.NoError(t, err)
	require.NoError(t, big.Truncate(1<<30))
	require.NoError(t, big.Close())

	var out, errs bytes.Buffer
	code := run([]string{"check", "--no-cache", "--format", "json", folder}, nil, &out, &errs)
	assert.Equal(t, exitUnusable, code, errs.String())
	var said struct {
		Records []struct{ Path string }
		Errors  []struct{ Path, Says string }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &said))
	require.Len(t, said.Records, 1)
	assert.Equal(t, odd, said.Records[0].Path)
	require.Len(t, said.Errors, 1)
	assert.Equal(t, in("self.yaml"), said.Errors[0].Path)
	assert.NotContains(t, out.String(), "\x1b")
}
