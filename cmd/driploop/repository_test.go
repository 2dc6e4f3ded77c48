package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/cmd/driploop/internal/madeup"
)

var (
	records    = flag.Int("records", 200, "records of the repository that is generated")
	repository = flag.String("repository", "", "folder to write a repository into with TestWriteRepository, and to keep")
)

// TestWriteRepository writes a repository to try things on:
//
//	go test ./cmd/driploop -run TestWriteRepository -repository /tmp/yard -records 10000
func TestWriteRepository(t *testing.T) {
	if *repository == "" {
		t.Skip("no -repository")
	}
	require.NoError(t, madeup.Write(*repository, *records))
}

// BenchmarkRepository judges a generated repository: parsing its YAML alone on
// all processors, without the cache, with an empty one, with a full one, and with
// one record changed. It gives the median of five for each, and the most memory
// that any of the five took.
//
//	go test ./cmd/driploop -run '^$' -bench Repository -benchtime 1x -records 10000
func BenchmarkRepository(b *testing.B) {
	folder, kept, bin := b.TempDir(), filepath.Join(b.TempDir(), "kept"), program(b)
	require.NoError(b, madeup.Write(folder, *records))
	peak := map[string]int64{}
	check := func(name, format string, args ...string) func() {
		return func() {
			cmd := exec.Command(bin, append([]string{"check", "--gate", "none", "--format", format, "--config", "none", folder}, args...)...)
			cmd.Stdout = io.Discard
			peak[name] = max(peak[name], watched(b, cmd)) // some records are unusable
			require.Contains(b, []int{exitClean, exitUnusable}, cmd.ProcessState.ExitCode())
		}
	}
	changed := filepath.Join(folder, "0000", "job-000000.yaml")
	count := 0
	for b.Loop() {
		for _, c := range []struct {
			name   string
			before func()
			run    func()
		}{
			{"parse", func() {}, func() { parseAll(b, folder) }},
			{"uncached", func() {}, check("uncached", "json", "--no-cache")},
			{"cold-text", func() { require.NoError(b, os.RemoveAll(kept)) }, check("cold-text", "text", "--cache", kept)},
			{"warm-text", func() {}, check("warm-text", "text", "--cache", kept)},
			{"cold", func() { require.NoError(b, os.RemoveAll(kept)) }, check("cold", "json", "--cache", kept)},
			{"warm", func() {}, check("warm", "json", "--cache", kept)},
			{"one-changed", func() {
				count++
				text, err := os.ReadFile(changed)
				require.NoError(b, err)
				require.NoError(b, os.WriteFile(changed, fmt.Appendf(text, "# %d\n", count), 0o600))
			}, check("one-changed", "json", "--cache", kept)},
		} {
			var took []time.Duration
			for range 5 {
				c.before()
				begun := time.Now()
				c.run()
				took = append(took, time.Since(begun))
			}
			slices.Sort(took)
			b.ReportMetric(took[2].Seconds()*1000, c.name+"-ms")
			if peak[c.name] > 0 {
				b.ReportMetric(float64(peak[c.name])/1024, c.name+"-MiB") // ru_maxrss is in KiB
			}
		}
	}
}

// parseAll parses every file with the YAML library alone, on all processors.
func parseAll(b *testing.B, folder string) {
	b.Helper()
	paths, err := filepath.Glob(filepath.Join(folder, "*", "*.yaml"))
	require.NoError(b, err)
	next := make(chan string)
	done := make(chan error, 2)
	for range 2 {
		go func() {
			var failed error
			for path := range next {
				text, err := os.ReadFile(path)
				var node yaml.Node
				if err != nil {
					failed = err
				}
				_ = yaml.Unmarshal(text, &node) // some are torn off
			}
			done <- failed
		}()
	}
	for _, path := range paths {
		next <- path
	}
	close(next)
	require.NoError(b, <-done)
	require.NoError(b, <-done)
}
