package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/record"
)

var (
	records    = flag.Int("records", 200, "records of the repository that is generated")
	repository = flag.String("repository", "", "folder to write a repository into with TestWriteRepository, and to keep")
)

// jobText makes the record of one job up: some branches behind a main fuse and a
// bar, of seeded sizes, some of them faulty or half measured.
func jobText(r *rand.Rand, number int) []byte {
	// Three conductors a branch; log-normal around 13 branches.
	branches := min(max(int(13*math.Exp(0.6*r.NormFloat64())), 1), 200)
	var b, wires strings.Builder
	fmt.Fprintf(&b, "driploop: 1\njob: {number: G-%06d, title: Made-up job of %d circuits, kind: rewire}\n", number, branches)
	fmt.Fprintf(&b, "vessel: {name: Boat %d, system: 12 V, length: %.1f m, hull: frp, propulsion: %s, earthing: negative-ground}\n",
		number, 6+9*r.Float64(), pick(r, "diesel-inboard", "petrol-inboard", "petrol-outboard"))
	b.WriteString("spaces:\n  locker: {kind: locker, exposure: dry, ambient: 30 degC}\n  engine: {kind: engine, exposure: damp, ambient: 50 degC}\n")
	b.WriteString("  foredeck: {kind: open-deck, exposure: washed, ambient: 30 degC}\ncomponents:\n")
	b.WriteString("  house: {kind: battery, space: locker, chemistry: agm, nominal: 12 V, capacity: 220 Ah, cranking: 1150 A}\n")
	b.WriteString("  main: {kind: fuse, space: locker, rating: 250 A, voltage: 32 V, interrupt: 6 kA}\n")
	b.WriteString("  bar: {kind: busbar, space: locker, rating: 300 A, stud: M8}\n  ground: {kind: busbar, space: locker, rating: 300 A, stud: M8}\n")
	wires.WriteString("  M1: {from: house.pos, to: main.line, role: positive, size: 2/0 AWG, insulation: 105 degC, length: 150 mm}\n")
	wires.WriteString("  M2: {from: main.load, to: bar.a, role: positive, size: 2/0 AWG, insulation: 105 degC, length: 1 m}\n")
	wires.WriteString("  M3: {from: ground.a, to: house.neg, role: negative, size: 2/0 AWG, insulation: 105 degC, length: 1 m}\n")
	for i := range branches {
		amps, size := pick(r, "5 A", "10 A", "15 A"), pick(r, "10 AWG", "12 AWG", "14 AWG")
		rating := pick(r, "15 A", "20 A", "20 A", "25 A", "60 A")
		length := fmt.Sprintf("%.1f m", 2+10*r.Float64())
		if r.IntN(12) == 0 {
			length = "unknown"
		}
		space := pick(r, "locker", "engine", "foredeck")
		fmt.Fprintf(&b, "  fuse-%d: {kind: fuse, space: locker, rating: %s, voltage: 32 V, interrupt: 2 kA}\n", i, rating)
		fmt.Fprintf(&b, "  load-%d: {kind: %s, space: %s, nominal: 12 V, current: %s}\n", i, pick(r, "lamp", "pump", "heater", "electronics"), space, amps)
		fmt.Fprintf(&wires, "  P%d: {from: bar.a, to: fuse-%d.line, role: positive, size: %s, insulation: 105 degC, length: %d mm}\n", i, i, size, 100+r.IntN(300))
		fmt.Fprintf(&wires, "  Q%d:\n    from: fuse-%d.load\n    to: load-%d.pos\n    role: positive\n    size: %s\n    colour: red\n    insulation: 105 degC\n    length: %s\n", i, i, i, size, length)
		if length != "unknown" {
			fmt.Fprintf(&wires, "    route:\n      - {space: %s, length: %s, in: open, support: %d mm}\n", space, length, 300+r.IntN(400))
		}
		fmt.Fprintf(&wires, "    ends:\n      from: {terminal: ring, hole: 5 mm, stud: M5, crimp: {tool: ratchet}}\n      to: {terminal: ring, hole: 5 mm, stud: M5, crimp: {tool: %s}}\n", pick(r, "ratchet", "ratchet", "hammer"))
		fmt.Fprintf(&wires, "  N%d: {from: load-%d.neg, to: ground.a, role: negative, size: %s, insulation: 105 degC, length: %s}\n", i, i, size, length)
	}
	return []byte(b.String() + "conductors:\n" + wires.String())
}

func pick(r *rand.Rand, words ...string) string { return words[r.IntN(len(words))] }

// writeRepository writes n records into a folder, in folders of a hundred. The
// same n and seed give the same bytes.
func writeRepository(t testing.TB, folder string, n int) {
	t.Helper()
	r := rand.New(rand.NewPCG(7, 11)) //nolint:gosec // the same numbers each time are wanted
	for i := range n {
		path := filepath.Join(folder, fmt.Sprintf("%04d", i/100), fmt.Sprintf("job-%06d.yaml", i))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, jobText(r, i), 0o600))
	}
}

// TestWriteRepository writes a repository to try things on:
//
//	go test ./cmd/driploop -run TestWriteRepository -repository /tmp/yard -records 10000
func TestWriteRepository(t *testing.T) {
	if *repository == "" {
		t.Skip("no -repository")
	}
	writeRepository(t, *repository, *records)
}

func TestMadeUpRecordsAreRecords(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11)) //nolint:gosec // as above
	wires := []int{}
	for i := range 60 {
		got, faults := record.Decode("made-up", jobText(r, i))
		require.Empty(t, faults)
		wires = append(wires, len(got.Conductors))
	}
	slices.Sort(wires)
	require.InDelta(t, 60, wires[30], 25, "median number of conductors")
	first := rand.New(rand.NewPCG(1, 2))  //nolint:gosec // as above
	second := rand.New(rand.NewPCG(1, 2)) //nolint:gosec // as above
	require.True(t, bytes.Equal(jobText(first, 1), jobText(second, 1)))
}

// BenchmarkRepository judges a generated repository: parsing its YAML alone on
// all processors, without the cache, with an empty one, with a full one, and with
// one record changed. It gives the median of five for each.
//
//	go test ./cmd/driploop -run '^$' -bench Repository -benchtime 1x -records 10000
func BenchmarkRepository(b *testing.B) {
	folder, kept, bin := b.TempDir(), filepath.Join(b.TempDir(), "kept"), filepath.Join(b.TempDir(), "driploop")
	out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput()
	require.NoError(b, err, "%s", out)
	writeRepository(b, folder, *records)
	check := func(args ...string) func() {
		return func() {
			cmd := exec.Command(bin, append([]string{"check", "--gate", "none", "--format", "json", "--config", "none", folder}, args...)...)
			cmd.Stdout = io.Discard
			require.NoError(b, cmd.Run())
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
			{"uncached", func() {}, check("--no-cache")},
			{"cold", func() { require.NoError(b, os.RemoveAll(kept)) }, check("--cache", kept)},
			{"warm", func() {}, check("--cache", kept)},
			{"one-changed", func() {
				count++
				text, err := os.ReadFile(changed)
				require.NoError(b, err)
				require.NoError(b, os.WriteFile(changed, fmt.Appendf(text, "# %d\n", count), 0o600))
			}, check("--cache", kept)},
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
				if err == nil {
					err = yaml.Unmarshal(text, &node)
				}
				if err != nil {
					failed = err
				}
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
