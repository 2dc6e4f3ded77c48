package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// yardOf makes a folder of so many small records.
func yardOf(t *testing.T, n int) string {
	t.Helper()
	folder := t.TempDir()
	text := demo(t, "faulty/readme.yaml")
	for i := range n {
		path := filepath.Join(folder, fmt.Sprintf("y%d/job-%d.yaml", i%3, i))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	}
	return folder
}

// partOf judges a part of a folder and returns the paths of its records, from
// the folder, with the code.
func partOf(t *testing.T, folder, part string) (names []string, code int) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run([]string{"check", "--no-cache", "--config", "none", "--format", "json", "--part", part, folder}, nil, &out, &errs)
	var got struct {
		Part    string
		Records []struct{ Path string }
		Errors  []struct{ Says string }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &got), errs.String())
	assert.Equal(t, part, got.Part)
	require.Empty(t, got.Errors)
	for _, r := range got.Records {
		name, err := filepath.Rel(folder, r.Path)
		require.NoError(t, err)
		names = append(names, name)
	}
	return names, code
}

func TestPartsMakeTheWholeAndStay(t *testing.T) {
	const files, parts = 30, 4
	folder := yardOf(t, files)
	in := map[string]int{}
	sizes := make([]int, parts+1)
	for p := 1; p <= parts; p++ {
		names, code := partOf(t, folder, fmt.Sprintf("%d/%d", p, parts))
		assert.Equal(t, exitBreach, code)
		for _, name := range names {
			require.Zero(t, in[name], "%s is in two parts", name)
			in[name] = p
			sizes[p]++
		}
	}
	assert.Len(t, in, files, "all parts are the whole")
	assert.Greater(t, slices.Min(sizes[1:]), 0)

	// In another place, with other files beside them, each stays where it was.
	moved := yardOf(t, files+10)
	for p := 1; p <= parts; p++ {
		names, _ := partOf(t, moved, fmt.Sprintf("%d/%d", p, parts))
		for _, name := range names {
			if was, is := in[name]; is {
				assert.Equal(t, was, p, name)
			}
		}
	}
}

func TestPartsAreEven(t *testing.T) {
	const parts, each = 8, 1000
	sizes := make([]int, parts)
	for i := range parts * each {
		for p := range parts {
			if (&part{p + 1, parts}).takes(fmt.Sprintf("yard/job-%d.yaml", i)) {
				sizes[p]++
			}
		}
	}
	total := 0
	for _, n := range sizes {
		assert.InDelta(t, each, n, 150, "five standard deviations of a fair split")
		total += n
	}
	assert.Equal(t, parts*each, total)
}

func TestAPartThatHoldsNothingIsNoFault(t *testing.T) {
	folder := yardOf(t, 1)
	codes := map[int]int{}
	for p := 1; p <= 3; p++ {
		_, code := partOf(t, folder, fmt.Sprintf("%d/3", p))
		codes[code]++
	}
	assert.Equal(t, map[int]int{exitClean: 2, exitBreach: 1}, codes)

	var errs bytes.Buffer
	code := run([]string{"check", "--config", "none", "--part", "1/3", t.TempDir()}, nil, io.Discard, &errs)
	assert.Equal(t, exitUnusable, code, "an empty folder is one")
}

func TestWordsThatAreNoPart(t *testing.T) {
	for _, word := range []string{"", "1", "0/4", "5/4", "-1/4", "a/b", "1/4/4", "1/100001"} {
		var errs bytes.Buffer
		code := run([]string{"check", "--part", word, t.TempDir()}, nil, io.Discard, &errs)
		assert.Equal(t, exitUnusable, code, word)
		assert.Contains(t, errs.String(), "such as 2/8", word)
	}
}
