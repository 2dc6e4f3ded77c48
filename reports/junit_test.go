package reports_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/internal/outside"
)

// kept writes a report to a file.
func kept(t *testing.T, report []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "junit.xml")
	require.NoError(t, os.WriteFile(path, report, 0o644))
	return path
}

func TestJUnitFollowsItsSchema(t *testing.T) {
	xmllint := outside.Program(t, "xmllint", "libxml2-utils")
	schema := filepath.Join("..", "testdata", "reports", "junit", "report.xsd")
	at := time.Date(2026, 6, 18, 15, 4, 5, 0, time.UTC)
	for name, r := range map[string]*verdict.Run{"launch": run(launch()), "several": withFaults(run(launch(), clean())), "hostile": hostileRun()} {
		report := render(t, "junit", r, reports.Options{All: true, At: at})
		out, err := exec.Command(xmllint, "--noout", "--schema", schema, kept(t, report)).CombinedOutput()
		assert.NoError(t, err, "%s: %s", name, out)
	}
	wrong := strings.Replace(string(render(t, "junit", run(launch()), reports.Options{})), "<failure ", "<flop ", 1)
	assert.Error(t, exec.Command(xmllint, "--noout", "--schema", schema, kept(t, []byte(wrong))).Run())
}

// junitparser ends with 0 only if every case of the report has passed or is
// skipped.
func TestJUnitFailsForAnotherReaderAsItDoesForUs(t *testing.T) {
	junitparser := outside.Program(t, "junitparser", "junitparser")
	none := func(*verdict.Verdict) bool { return false }
	for name, c := range map[string]struct {
		run    *verdict.Run
		fails  func(*verdict.Verdict) bool
		passes bool
	}{
		"breaches":       {run(launch()), nil, false},
		"below the gate": {run(launch()), none, true},
		"clean":          {run(clean()), nil, true},
		"unusable files": {withFaults(run(clean())), nil, false},
	} {
		path := kept(t, render(t, "junit", c.run, reports.Options{Fails: c.fails}))
		err := exec.Command(junitparser, "verify", path).Run()
		assert.Equal(t, c.passes, err == nil, name)
	}
}

// junitTree is what junit2json, another reader, makes of a report.
type junitTree struct {
	Tests, Failures, Errors, Skipped int
	Testsuite                        []struct {
		Name     string
		Testcase []struct {
			Name, Classname string
			Failure, Error  []struct{ Message, Inner string }
			Skipped         []struct{ Message string }
			SystemOut       []string `json:"system-out"`
		}
	}
}

func readJUnit(t *testing.T, report []byte) (tree junitTree) {
	t.Helper()
	outside.Module(t, "junit2json")
	program := outside.Program(t, "node", "nodejs")
	cmd := exec.Command(program, "--input-type=module", "-e",
		`import {parse} from "junit2json"; import {readFileSync} from "fs"; console.log(JSON.stringify(await parse(readFileSync(process.argv[1]))))`,
		kept(t, report))
	cmd.Dir = filepath.Dir(outside.Modules())
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	require.NoError(t, json.Unmarshal(out, &tree), string(out))
	return tree
}

func TestJUnitHasACaseForEachRuleAndSubject(t *testing.T) {
	fails := func(v *verdict.Verdict) bool { return v.Outcome == verdict.Breach && v.Severity >= verdict.Warning }
	tree := readJUnit(t, render(t, "junit", withFaults(run(launch())), reports.Options{All: true, Fails: fails}))
	assert.Equal(t, []int{13, 1, 2, 6}, []int{tree.Tests, tree.Failures, tree.Errors, tree.Skipped})
	require.Len(t, tree.Testsuite, 3)
	assert.Equal(t, "yard/launch.yaml", tree.Testsuite[0].Name)
	said := map[string]string{}
	for _, c := range tree.Testsuite[0].Testcase {
		text := "passed"
		switch {
		case len(c.Failure) > 0:
			text = "failed: " + c.Failure[0].Message
		case len(c.Skipped) > 0:
			text = "skipped: " + c.Skipped[0].Message
		case len(c.SystemOut) > 0:
			text, _, _ = strings.Cut(c.SystemOut[0], "\n")
		}
		said[c.Classname+" "+c.Name] = text
	}
	require.Len(t, said, len(launch().Verdicts))
	for name, want := range map[string]string{
		"protection.device-too-far conductors.P1":              "failed: 2.4 m of conductor from house.pos without a device",
		"documents.conductor-unlabelled conductors.P2":         "Below the gate: Marked at no end",
		"conductors.overloaded conductors.P2":                  "skipped: Cannot be decided: conductors.P2.size; conductors.P2.insulation",
		"conductors.overloaded conductors.P1":                  "skipped: waived by foreman until 2026-12-31: short runs only. DANGER: Carries 310 A",
		"conductors.drop-excessive components.pump":            "passed",
		"protection.device-too-far conductors.N1":              "skipped: does not apply: Judged are only runs from a source",
		"penetrations.edge-unprotected penetrations.deck-plug": "skipped: waived by foreman until 2027-06-01: moulded liner, photographed. WARNING: The edge of the hole is raw",
	} {
		assert.Equal(t, want, said[name], name)
	}
}

func TestJUnitTwoVerdictsOfOneRuleAtOnePlaceAreTwoCases(t *testing.T) {
	rec := clean()
	rec.Verdicts = append(rec.Verdicts, rec.Verdicts[0])
	rec.Verdicts[1].ID = "P1 from shore.pos"
	report := string(render(t, "junit", run(rec), reports.Options{}))
	assert.Contains(t, report, `name="components.pump" `)
	assert.Contains(t, report, `name="components.pump (P1 from shore.pos)" `)
}
