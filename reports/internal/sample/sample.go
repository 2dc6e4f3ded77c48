// Package sample makes survey reports for the tests of the formats that print
// them. The verdicts are made up: these tests show how a report looks, not whether
// a rule is right.
package sample

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/survey"
)

// All tests of reports that use samples take this flag.
var update = flag.Bool("update", false, "rewrite the expected outputs in testdata/reports")

// Golden compares an output with the stored one, or stores it.
func Golden(t *testing.T, format, name string, got []byte) {
	t.Helper()
	path := filepath.Join(Root(), "testdata", "reports", format, name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), string(got), "%s; if the change is wanted: go test ./reports/... -update", path)
}

// text is an invented record; TITLE, LABEL and REASON are filled in.
const text = `driploop: 1
job: {number: HL-3, title: "TITLE", yard: Saltmarsh Boatworks, completed: 2026-05-09}
vessel: {name: Teasel, hull: frp, length: 7.2 m, system: 12 V, earthing: negative-ground}
practice: [us-federal, workmanship]
spaces:
  locker: {kind: locker, exposure: dry, ambient: 30 degC}
components:
  house: {kind: battery, space: locker, chemistry: agm, capacity: 110 Ah}
  pump-fuse: {kind: fuse, space: locker, rating: 25 A}
  pump: {kind: pump, space: locker, label: "LABEL", nominal: 12 V, current: 15 A, stall: 38 A}
conductors:
  P1: {from: house.pos, to: pump-fuse.line, role: positive, size: 10 AWG, insulation: 105 degC, length: 2.13 m}
  P2: {from: pump-fuse.load, to: pump.pos, role: positive, size: 4 mm2, insulation: 105 degC, length: 6.4 m}
  N1: {from: pump.neg, to: house.neg, role: negative, size: 10 AWG}
waivers:
  - {rule: routing/support-too-far, at: conductors.P2, reason: "REASON", by: foreman, until: 2027-01-01}
`

// Hostile tries to be more than text, in HTML, a template, a terminal, a table and
// a font that has no such characters.
const Hostile = `<script>alert(1)</script><img src=x onerror=alert(2)>\"><svg onload=alert(3)></title>{{.}}</style>'` +
	`=HYPERLINK(1)\u202Eévil µΩ²° 漢字 \U0001F6A4`

// Survey is a report of an invented record, in some units.
func Survey(t *testing.T, units quantity.System) *survey.Survey {
	t.Helper()
	return of(t, units, "Deck-wash pump", "deck wash", "moulded liner, photographed")
}

// HostileSurvey is the same of a record that tries to be more than text.
func HostileSurvey(t *testing.T) *survey.Survey {
	t.Helper()
	return of(t, quantity.Both, Hostile, Hostile, Hostile)
}

func of(t *testing.T, units quantity.System, title, label, reason string) *survey.Survey {
	t.Helper()
	written := []byte(strings.NewReplacer("TITLE", title, "LABEL", label, "REASON", reason).Replace(text))
	rec, faults := record.Decode("yard/pump.yaml", written)
	require.Empty(t, faults)
	verdicts := verdicts(rec)
	return survey.Build(survey.Input{
		Record: rec, Analysis: circuit.Analyse(rec), Source: reports.NewSource(written, rec.Places.Find), Units: units, Version: "v0.0.0-test",
		Judged: &verdict.Record{
			Path: rec.Name, SHA256: rec.SHA256, Job: rec.Job.Number.V, Title: rec.Job.Title.V, Vessel: rec.Vessel.Name.V,
			Practice: []string{"us-federal", "workmanship"}, Verdicts: verdicts, Counts: verdict.Count(verdicts),
		},
		Practice: survey.Practice{
			Digest: "sha256:0123", Rules: []*verdict.Rule{tooFar, support, drop, silent},
			Documents: []*verdict.Source{{ID: "33-cfr-183", Title: "33 CFR part 183 Subpart I", Edition: "2015", Issuer: "U.S. Coast Guard", Force: verdict.Law}},
			Sets:      []survey.Set{{ID: "us-federal", Title: "US federal", About: "Law for some boats."}, {ID: "workmanship", Title: "Workmanship", About: "What lasts."}},
		},
		Notes: []string{"1 of severity danger shown as notice: routing/no-slack"},
	})
}

var (
	tooFar = &verdict.Rule{
		ID: "protection/device-too-far", Title: "Fuse too far from its source", Severity: verdict.Danger, Why: "What lies between has no protection.",
		Sources: []verdict.Citation{{Set: "us-federal", Source: "33-cfr-183", Clause: "183.460(a)", Asks: "a fuse within 72 in", Trust: verdict.Read}},
	}
	support = &verdict.Rule{
		ID: "routing/support-too-far", Title: "Conductor supported too seldom", Severity: verdict.Caution, Why: "It chafes.",
		Sources: []verdict.Citation{{Set: "workmanship", Source: "practice", Asks: "supports close together", Trust: verdict.NoSource}},
	}
	drop = &verdict.Rule{
		ID: "conductors/drop-excessive", Title: "Too much voltage lost on the way", Severity: verdict.Warning, Why: "The pump starves.",
		Sources: []verdict.Citation{{Set: "workmanship", Source: "practice", Asks: "10 % at most", Trust: verdict.NoSource}},
	}
	silent = &verdict.Rule{
		ID: "sources/battery-unvented", Title: "Battery without a vent", Severity: verdict.Danger,
		Sources: []verdict.Citation{{Set: "workmanship", Source: "practice", Trust: verdict.NoSource}},
	}
)

func verdicts(rec *record.Record) []verdict.Verdict {
	at := rec.Places.At
	binds := true
	length := func(mm float64) verdict.Figure {
		return verdict.Figure{Name: "length", Quantity: quantity.New(mm, "mm")}
	}
	all := []verdict.Verdict{
		{
			Rule: tooFar, Outcome: verdict.Breach, Severity: verdict.Danger, Subject: "conductors.P1", ID: "P1", At: at("conductors.P1"),
			Says: "fuse stands {length} along the conductors, at most {limit.length} allowed", Figures: []verdict.Figure{length(2130)}, Limit: []verdict.Figure{length(1828.8)},
			Remedy:  "Move the fuse to within {limit.length} of the battery; isolate the source before work.",
			Sources: []verdict.Cited{{Citation: tooFar.Sources[0], Title: "33 CFR part 183 Subpart I", Edition: "2015", Force: verdict.Law, Binds: &binds}},
			Related: []verdict.Related{{Role: "first device", Subject: "components.pump-fuse", At: at("components.pump-fuse")}},
		},
		{
			Rule: support, Outcome: verdict.Waived, Severity: verdict.Caution, Subject: "conductors.P2", ID: "P2", At: at("conductors.P2"),
			Says: "supports are too far apart", Remedy: "Add supports.", Sources: []verdict.Cited{{Citation: support.Sources[0], Title: "Common practice", Force: verdict.Practice}},
			Waiver: &verdict.Waiver{By: rec.Waivers[0].By.V, Reason: rec.Waivers[0].Reason.V, Until: "2027-01-01"},
		},
		{
			Rule: drop, Outcome: verdict.Undecided, Severity: verdict.Warning, Subject: "components.pump", ID: "pump", At: at("components.pump"),
			Missing: []verdict.Gap{{Field: "conductors.N1.length"}, {Field: "components.pump.drop_class"}, {Why: "the table ends at 50 V"}},
		},
		{Rule: tooFar, Outcome: verdict.NotApplicable, Severity: verdict.Danger, Subject: "conductors.N1", ID: "N1", At: at("conductors.N1")},
		{Rule: support, Outcome: verdict.Met, Severity: verdict.Caution, Subject: "conductors.P1", ID: "P1", At: at("conductors.P1")},
	}
	verdict.Sort(all)
	return all
}

// Root is the folder of the project.
func Root() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..", "..")
}

// Demo has the program itself report on a demo record, such as
// "faulty/thruster-launch.yaml", into a file of a name in a new folder.
func Demo(t *testing.T, rec, name string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), name)
	cmd := exec.Command(program(t), "report", filepath.Join("testdata", "records", rec), "-o", out, "--today", "2026-07-01")
	cmd.Dir = Root()
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	return out
}

// program builds driploop where the tests of a package find it again.
func program(t *testing.T) string {
	t.Helper()
	path := built()
	if _, err := os.Stat(path); err == nil {
		return path
	}
	cmd := exec.Command("go", "build", "-o", path, "./cmd/driploop")
	cmd.Dir = Root()
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	return path
}

// CleanUp removes what tests built; call it when they are done.
func CleanUp() { _ = os.Remove(built()) }

func built() string {
	return filepath.Join(os.TempDir(), fmt.Sprintf("driploop-sample-%d", os.Getpid()))
}

// Written puts a report into a file of a name in a new folder.
func Written(t *testing.T, name string, text []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, text, 0o600))
	return path
}
