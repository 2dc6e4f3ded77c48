package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func writes(text string, err error) func(io.Writer) error {
	return func(w io.Writer) error {
		_, writing := io.WriteString(w, text)
		return errors.Join(writing, err)
	}
}

func TestAFileIsWrittenWholeOrNotAtAll(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "out.txt")
	held := func() string {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		require.Len(t, entries, 1, "nothing is left beside it")
		return string(text)
	}
	s := &session{}
	require.NoError(t, s.to(destination(path), writes("first", nil)))
	assert.Equal(t, "first", held())
	require.NoError(t, os.Chmod(path, 0o600))
	require.NoError(t, s.to(destination(path), writes("second", nil)))
	assert.Equal(t, "second", held())
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
	assert.EqualError(t, s.to(destination(path), writes("half of the th", errors.New("no space left"))), "cannot write "+path+": no space left")
	assert.Equal(t, "second", held())
}

func TestAFileIsWrittenWhereItsLinkPoints(t *testing.T) {
	folder := t.TempDir()
	file, link := filepath.Join(folder, "file"), filepath.Join(folder, "link")
	require.NoError(t, os.WriteFile(file, nil, 0o644))
	require.NoError(t, os.Symlink("file", link))
	require.NoError(t, (&session{}).to(destination(link), writes("text", nil)))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, "text", string(text))
	target, err := os.Readlink(link)
	require.NoError(t, err)
	assert.Equal(t, "file", target)
}

func TestWhatCannotBeWrittenIsTold(t *testing.T) {
	folder := t.TempDir()
	s := &session{}
	assert.EqualError(t, s.to(destination(folder), writes("", nil)), "cannot write "+folder+": it is a folder; name a file")
	none := filepath.Join(folder, "none", "out")
	assert.EqualError(t, s.to(destination(none), writes("", nil)), "cannot write "+none+": no such file or directory")
	require.NoError(t, s.to(destination(os.DevNull), writes("text", nil)))
	if _, err := os.Stat("/dev/full"); err == nil {
		assert.EqualError(t, s.to("/dev/full", writes("text", nil)), "cannot write /dev/full: no space left on device")
	}
}
