package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/cmd/driploop/internal/madeup"
)

// program builds the program and returns its path.
func program(t testing.TB) string {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "driploop")
	out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput()
	require.NoError(t, err, "%s", out)
	return bin
}

// checked is what check prints, and its exit code.
func checked(t *testing.T, args ...string) (string, int) {
	t.Helper()
	var out, errs bytes.Buffer
	code := run(append([]string{"check", "--config", "none"}, args...), nil, &out, &errs)
	require.Empty(t, errs.String())
	return out.String(), code
}

// What is recalled is the same to the last byte, and so is the exit code, with
// each way to print and each gate, whatever way filled the cache.
func TestCacheChangesNothing(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	require.NoError(t, madeup.Write(folder, 20))
	for _, way := range [][]string{
		{"--format", "text"},
		{"--format", "json"},
		{"--format", "md"},
		{"--format", "sarif"},
		{"--format", "junit"},
		{"--format", "sarif", "--all"},
		{"--format", "md", "--all"},
		{"--format", "text", "--units", "us"},
		{"--format", "json", "--units", "us", "--gate", "danger"},
		{"--format", "json", "--gate", "none"},
		{"--format", "json", "--gate", "none", "--complete"},
		{"--format", "json", "--gate", "none", "--today", "2031-01-01"},
	} {
		want, code := checked(t, append(way, "--no-cache", folder)...)
		for _, time := range []string{"first", "second"} {
			got, gotCode := checked(t, append(way, "--cache", kept, folder)...)
			require.True(t, want == got, "%v, %s", way, time)
			require.Equal(t, code, gotCode, "%v, %s", way, time)
		}
	}
}

// TestCacheFollowsTheDay recalls a waiver up to its last day, not beyond, and
// what has no waiver on any day.
func TestCacheFollowsTheDay(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	text, err := os.ReadFile("../../testdata/records/corpus/diesel-heater.yaml")
	require.NoError(t, err)
	require.Contains(t, string(text), "until: 2027-06-30")
	require.NoError(t, os.WriteFile(filepath.Join(folder, "heater.yaml"), text, 0o600))
	for _, day := range []string{"2027-06-30", "2027-07-01", "2027-06-30"} {
		want, code := checked(t, "--no-cache", "--today", day, folder)
		assert.Equal(t, day == "2027-06-30", strings.Contains(want, "\nWAIVED"), day)
		for range 2 {
			got, gotCode := checked(t, "--cache", kept, "--today", day, folder)
			assert.Equal(t, want, got, day)
			assert.Equal(t, code, gotCode, day)
		}
	}
	other := filepath.Join(folder, "other.yaml")
	require.NoError(t, os.Rename(filepath.Join(folder, "heater.yaml"), other))
	got, _ := checked(t, "--cache", kept, "--today", "2027-06-30", folder)
	assert.Contains(t, got, other, "a renamed record goes by its new name")
	assert.NotContains(t, got, "heater.yaml")

	written := func(day string) (grown int64) {
		before := sizeOf(t, kept)
		checked(t, "--cache", kept, "--today", day, folder)
		return sizeOf(t, kept) - before
	}
	assert.Positive(t, written("2027-06-29"), "of a day of its own")
	undated := bytes.Replace(text, []byte("waivers:"), []byte("#"), 1)
	undated = bytes.Replace(undated, []byte("  - {rule: sources/bypass-unjustified"), []byte("  # {rule"), 1)
	require.NoError(t, os.WriteFile(other, undated, 0o600))
	checked(t, "--cache", kept, "--today", "2027-06-29", folder)
	assert.Zero(t, written("2030-01-01"), "no waiver, no day")
}

func sizeOf(t *testing.T, folder string) (total int64) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		info, err := e.Info()
		require.NoError(t, err)
		total += info.Size()
	}
	return total
}

// A stray file that was named is refused, and passed over where it is found.
func TestCacheTellsANamedFileFromAFoundOne(t *testing.T) {
	folder, kept := t.TempDir(), t.TempDir()
	stray := filepath.Join(folder, "stray.yaml")
	require.NoError(t, os.WriteFile(stray, []byte("shelf: 3\n"), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "r.yaml"), []byte(smallRecord), 0o600))
	for range 2 {
		got, code := checked(t, "--cache", kept, stray)
		assert.Equal(t, exitUnusable, code)
		assert.Contains(t, got, stray)
		got, code = checked(t, "--cache", kept, "--gate", "none", folder)
		assert.Equal(t, exitClean, code)
		assert.NotContains(t, got, stray)
	}
}

// TestCacheOutlivesKill has two processes share a cache, one of which is killed
// in the middle, many times; then damage is done to what they left. What a run
// prints after that is what it prints without a cache.
func TestCacheOutlivesKill(t *testing.T) {
	folder, kept, bin := t.TempDir(), t.TempDir(), program(t)
	require.NoError(t, madeup.Write(folder, 15))
	args := func(more ...string) []string {
		return append([]string{"check", "--config", "none", "--gate", "none", "--format", "json", folder}, more...)
	}
	begun := time.Now()
	want, _ := exec.Command(bin, args("--no-cache")...).Output()
	whole := time.Since(begun) // a run, on this machine as it is now
	require.NotEmpty(t, want)
	r := rand.New(rand.NewPCG(3, 5)) //nolint:gosec // the same numbers each time are wanted
	killed := 0
	for i := range 6 {
		// Each round a record is another, so that there is something to write.
		path := filepath.Join(folder, "0000", "job-000003.yaml")
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(path, append(text, []byte("# again\n")...), 0o600))
		ctx, stop := context.WithTimeout(context.Background(), time.Minute)
		victim := exec.Command(bin, args("--cache", kept)...)
		victim.Stdout = io.Discard
		require.NoError(t, victim.Start())
		other := exec.CommandContext(ctx, bin, args("--cache", kept)...)
		var out bytes.Buffer
		other.Stdout = &out
		require.NoError(t, other.Start())
		if i > 0 { // the first is killed at once, the others somewhere on their way
			time.Sleep(time.Duration(r.Float64() * float64(whole)))
		}
		_ = victim.Process.Kill() // it may have come to its end
		if err := victim.Wait(); err != nil && strings.Contains(err.Error(), "killed") {
			killed++
		}
		_ = other.Wait() // its code tells of unusable records
		stop()
		anew, _ := exec.Command(bin, args("--no-cache")...).Output()
		require.True(t, bytes.Equal(anew, out.Bytes()), "beside one that was killed, round %d", i)
	}
	assert.Positive(t, killed)
	anew, _ := exec.Command(bin, args("--no-cache")...).Output()
	for round := range 4 {
		entries, err := os.ReadDir(kept)
		require.NoError(t, err)
		for _, e := range entries {
			spoil(t, r, filepath.Join(kept, e.Name()))
		}
		got, _ := exec.Command(bin, args("--cache", kept)...).Output()
		require.True(t, bytes.Equal(anew, got), "after damage, round %d", round)
	}
}

// spoil does some damage to a file.
func spoil(t *testing.T, r *rand.Rand, path string) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	if len(text) == 0 {
		return
	}
	switch at := r.IntN(len(text)); r.IntN(4) {
	case 0:
		text = text[:at]
	case 1:
		text[at] ^= byte(1 + r.IntN(255))
	case 2:
		text = append(text[:at:at], append([]byte("foreign"), text[at:]...)...)
	default:
		for i := at; i < min(at+4096, len(text)); i++ {
			text[i] = 0 // as a power cut leaves it
		}
	}
	require.NoError(t, os.WriteFile(path, text, 0o600))
}

// A cache that cannot be written costs speed and nothing else.
func TestCacheOnAFullDiskCostsSpeedOnly(t *testing.T) {
	folder, kept, bin := t.TempDir(), t.TempDir(), program(t)
	require.NoError(t, madeup.Write(folder, 12))
	args := []string{"check", "--config", "none", "--gate", "none", "--format", "json", folder}
	want, _ := exec.Command(bin, append(args, "--no-cache")...).Output()
	// No file may grow beyond 4 KiB: writing fails as on a full disk.
	limited := exec.Command("sh", append([]string{"-c", `ulimit -f 8; trap '' XFSZ; exec "$0" "$@"`, bin}, append(args, "--cache", kept)...)...)
	var errs bytes.Buffer
	limited.Stderr = &errs
	got, err := limited.Output()
	require.True(t, bytes.Equal(want, got), fmt.Sprint(err, errs.String()))
	assert.Less(t, sizeOf(t, kept), int64(8<<10))
	got, _ = exec.Command(bin, append(args, "--cache", kept)...).Output()
	assert.True(t, bytes.Equal(want, got))
}
