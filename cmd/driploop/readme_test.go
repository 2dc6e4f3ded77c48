package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"driploop/rules"
)

var updateReadme = flag.Bool("update-readme", false, "rewrite the samples in README.md")

// The samples of README.md are what the program prints: TestReadme fails when
// they are stale.
func TestReadme(t *testing.T) {
	const sample = "../../testdata/records/faulty/readme.yaml"
	source, err := os.ReadFile(sample)
	require.NoError(t, err)
	record := regexp.MustCompile(` *# want [^\n]*`).ReplaceAllString(string(source), "")

	t.Chdir("../..")
	t.Setenv("NO_COLOR", "1")
	var out, errs bytes.Buffer
	code := run([]string{"check", strings.TrimPrefix(sample, "../../")}, strings.NewReader(""), &out, &errs)
	require.Equal(t, exitBreach, code, errs.String())
	said, _, found := strings.Cut(out.String(), "\nWHAT COULD NOT BE DECIDED")
	require.True(t, found)

	readme, err := os.ReadFile("README.md")
	require.NoError(t, err)
	want := string(readme)
	want = fill(t, want, "record", "```yaml\n"+record+"```\n")
	want = fill(t, want, "check", "```text\n"+strings.TrimRight(said, "\n")+"\n```\n")
	want = fill(t, want, "topics", topics(t))
	if *updateReadme {
		require.NoError(t, os.WriteFile("README.md", []byte(want), 0o644))
	}
	require.Equal(t, want, string(readme), "README.md is stale: go test ./cmd/driploop -run TestReadme -update-readme")
}

// fill puts the text between a marker and its end.
func fill(t *testing.T, readme, marker, text string) string {
	t.Helper()
	head, rest, found := strings.Cut(readme, "<!-- "+marker+" -->\n")
	require.True(t, found, "README.md has no marker %s", marker)
	_, tail, found := strings.Cut(rest, "<!-- end -->\n")
	require.True(t, found, "README.md: marker %s has no end", marker)
	return head + "<!-- " + marker + " -->\n" + text + "<!-- end -->\n" + tail
}

// topics lists the rules by topic as a table.
func topics(t *testing.T) string {
	t.Helper()
	engine, err := rules.New()
	require.NoError(t, err)
	faults := map[string][]string{}
	for _, r := range engine.Rules() {
		topic, fault, _ := strings.Cut(r.ID, "/")
		faults[topic] = append(faults[topic], fault)
	}
	names := make([]string, 0, len(faults))
	for topic := range faults {
		names = append(names, topic)
	}
	slices.Sort(names)
	var table strings.Builder
	fmt.Fprintf(&table, "| topic | faults (%d rules) |\n|---|---|\n", len(engine.Rules()))
	for _, topic := range names {
		fmt.Fprintf(&table, "| %s | %s |\n", topic, strings.Join(faults[topic], ", "))
	}
	return table.String()
}
