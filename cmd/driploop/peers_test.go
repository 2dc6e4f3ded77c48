package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"driploop/cmd/driploop/internal/madeup"
)

// shim has conftest, which asks for denials of one package, ask for the breaches of
// all rules; more has it ask for the other sets as well, without which a verdict is
// not known to be met.
const (
	shim = `package main

deny contains message if {
	some topic, rule
	some breach in data.driploop.rules[topic][rule].breach
	message := sprintf("%s/%s: %v", [topic, rule, breach])
}
`
	more = `package main

warn contains message if {
	some topic, rule
	some set in ["applies", "asks", "excludes"]
	size := count(data.driploop.rules[topic][rule][set])
	message := sprintf("%s/%s: %s of %d", [topic, rule, set, size])
}
`
)

// BenchmarkPeers judges the same records by general-purpose programs with the same
// rules, as "driploop bundle" writes them, and by ours. They are given the facts,
// as files of JSON; ours reads the YAML, solves the circuit, judges and renders.
// Conftest is asked for the breaches alone, and for all sets that make a verdict.
// The medians of five are given in ms for each record; opa eval, a process each
// record, runs on the first tenth.
//
//	go test ./cmd/driploop -run '^$' -bench Peers -benchtime 1x -records 50
//
// They are built once by go build -modfile=.tools/opa.mod -o .bin/opa github.com/open-policy-agent/opa
// and go build -modfile=.tools/conftest.mod -o .bin/conftest github.com/open-policy-agent/conftest
func BenchmarkPeers(b *testing.B) {
	bin, folder := program(b), b.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	for _, name := range []string{"yaml", "facts", "policy"} {
		require.NoError(b, os.Mkdir(in(name), 0o700))
	}
	var facts []string
	for f := range madeup.Repository(*records) {
		if f.Kind != madeup.Record {
			continue
		}
		name := filepath.Base(f.Path)
		require.NoError(b, os.WriteFile(in("yaml/"+name), f.Text, 0o600))
		out, err := exec.Command(bin, "facts", in("yaml/"+name)).Output()
		require.NoError(b, err)
		facts = append(facts, in("facts/"+name+".json"))
		require.NoError(b, os.WriteFile(facts[len(facts)-1], out, 0o600))
	}
	require.NoError(b, exec.Command(bin, "bundle", "-o", in("rules.tar.gz")).Run())
	require.NoError(b, exec.Command("tar", "-xzf", in("rules.tar.gz"), "-C", in("policy")).Run())
	require.NoError(b, os.WriteFile(in("policy/shim.rego"), []byte(shim), 0o600))
	require.NoError(b, os.CopyFS(in("policy-all"), os.DirFS(in("policy"))))
	require.NoError(b, os.WriteFile(in("policy-all/more.rego"), []byte(more), 0o600))
	tenth := facts[:max(len(facts)/10, 1)]
	opa, conftest := built(b, "opa"), built(b, "conftest")
	execute := func(name string, args ...string) { quiet(b, name, args...) }
	ways := []struct {
		name string
		of   int
		run  func()
	}{
		{"ours", len(facts), func() {
			execute(bin, "check", "--no-cache", "--config", "none", "--gate", "none", "--format", "json", in("yaml"))
		}},
		{"opa-exec", len(facts), func() {
			execute(opa, append([]string{"exec", "--bundle", in("rules.tar.gz"), "--decision", "driploop/rules"}, facts...)...)
		}},
		{"opa-eval", len(tenth), func() {
			for _, path := range tenth {
				execute(opa, "eval", "--bundle", in("rules.tar.gz"), "--input", path, "data.driploop.rules")
			}
		}},
		{"conftest", len(facts), func() {
			execute(conftest, append([]string{"test", "--no-fail", "--output", "json", "--policy", in("policy")}, facts...)...)
		}},
		{"conftest-all", len(facts), func() {
			execute(conftest, append([]string{"test", "--no-fail", "--output", "json", "--policy", in("policy-all")}, facts...)...)
		}},
	}
	for b.Loop() {
		for _, way := range ways {
			if name := way.name; strings.HasPrefix(name, "opa") && opa == "" || strings.HasPrefix(name, "conftest") && conftest == "" {
				continue
			}
			var took []time.Duration
			for range 5 {
				begun := time.Now()
				way.run()
				took = append(took, time.Since(begun))
			}
			slices.Sort(took)
			b.ReportMetric(took[2].Seconds()*1000/float64(way.of), way.name+"-ms/record")
		}
	}
}

// built is a program of .bin.
func built(b *testing.B, name string) string {
	b.Helper()
	path, err := filepath.Abs(filepath.Join("..", "..", ".bin", name))
	require.NoError(b, err)
	if _, err := os.Stat(path); err != nil {
		b.Logf("%s is not built, and left out; the comment of this benchmark says how", name)
		return ""
	}
	return path
}

// quiet runs a program and throws away what it prints.
func quiet(b *testing.B, name string, args ...string) {
	b.Helper()
	cmd := exec.Command(name, args...)
	cmd.Stdout = io.Discard
	require.NoError(b, cmd.Run(), "%s %s", name, args[0])
}
