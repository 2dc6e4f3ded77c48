package reports_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/internal/outside"
)

// sarifRuns are runs with everything that a log can hold.
func sarifRuns() map[string]*verdict.Run {
	related := launch()
	for i := range related.Verdicts {
		v := &related.Verdicts[i]
		if v.Outcome == verdict.Breach {
			v.Related = []verdict.Related{{Role: "source", Subject: "vessel", At: places()["vessel"]}, {Role: "other end", Subject: "conductors.N1", At: places()["conductors.N1"]}}
		}
		if v.Waiver != nil {
			v.Waiver.Path, v.Waiver.At = "waivers[0]", span(14, 3, 9)
		}
	}
	return map[string]*verdict.Run{"launch": run(related), "clean": run(clean()), "several": withFaults(run(launch(), clean())), "hostile": hostileRun()}
}

func TestSARIFFollowsTheSchemaOfTheStandard(t *testing.T) {
	path := filepath.Join(outside.Module(t, "@microsoft/sarif-multitool-linux"), "sarif-2.1.0.json")
	schema, err := jsonschema.NewCompiler().Compile(path)
	require.NoError(t, err)
	for name, r := range sarifRuns() {
		for _, all := range []bool{false, true} {
			log, err := jsonschema.UnmarshalJSON(strings.NewReader(string(render(t, "sarif", r, reports.Options{All: all, Sources: sources()}))))
			require.NoError(t, err)
			assert.NoError(t, schema.Validate(log), name)
		}
	}
	broken, err := jsonschema.UnmarshalJSON(strings.NewReader(`{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "x"}}, "results": [{"kind": "breach", "message": {"text": "x"}}]}]}`))
	require.NoError(t, err)
	require.Error(t, schema.Validate(broken), "the schema refuses what the standard does not know")
}

// The validator that implements the standard's advice. It ends with code 0
// whatever it finds: what it prints tells.
func TestSARIFPassesTheValidator(t *testing.T) {
	validator := filepath.Join(outside.Module(t, "@microsoft/sarif-multitool-linux"), "Sarif.Multitool")
	for name, r := range sarifRuns() {
		folder := t.TempDir()
		file := filepath.Join(folder, "run.sarif")
		require.NoError(t, os.WriteFile(file, render(t, "sarif", r, reports.Options{All: true, Sources: sources()}), 0o644))
		out, err := exec.Command(validator, "validate", file, "--rule-kind", "Sarif;Gh", "--level", "Error;Warning;Note",
			"-o", filepath.Join(folder, "said.sarif"), "--log", "ForceOverwrite").CombinedOutput()
		require.NoError(t, err, string(out))
		require.Contains(t, string(out), "note SARIF2006", "the validator has read the log: it cannot reach the schema")
		for _, line := range regexp.MustCompile(`(?m)^.*: (error|warning) .*$`).FindAllString(string(out), -1) {
			if !strings.Contains(line, "does not provide 'informationUri'") { // there is no such page to name
				t.Errorf("%s: %s", name, line)
			}
		}
	}
}

// results reads the results of a log by rule and subject.
func results(t *testing.T, log []byte) map[string]map[string]any {
	t.Helper()
	var tree struct {
		Runs []struct{ Results []map[string]any }
	}
	require.NoError(t, json.Unmarshal(log, &tree))
	all := map[string]map[string]any{}
	for _, r := range tree.Runs[0].Results {
		place := r["locations"].([]any)[0].(map[string]any)["logicalLocations"].([]any)[0].(map[string]any)
		all[fmt.Sprint(r["ruleId"], " ", place["fullyQualifiedName"])] = r
	}
	return all
}

func TestSARIFTellsOutcomesByKind(t *testing.T) {
	all := results(t, render(t, "sarif", run(launch()), reports.Options{All: true}))
	require.Len(t, all, len(launch().Verdicts))
	for subject, want := range map[string][2]string{
		"protection/device-too-far conductors.P1":              {"fail", "error"},
		"documents/conductor-unlabelled conductors.P2":         {"fail", "note"},
		"conductors/overloaded conductors.N1":                  {"open", "none"},
		"conductors/drop-excessive components.pump":            {"pass", "none"},
		"protection/device-too-far conductors.N1":              {"notApplicable", "none"},
		"penetrations/edge-unprotected penetrations.deck-plug": {"fail", "error"},
		"conductors/overloaded conductors.P1":                  {"fail", "error"},
	} {
		assert.Equal(t, want, [2]string{all[subject]["kind"].(string), all[subject]["level"].(string)}, subject)
	}
	status := func(subject string) any {
		return all[subject]["suppressions"].([]any)[0].(map[string]any)["status"]
	}
	assert.Equal(t, "accepted", status("penetrations/edge-unprotected penetrations.deck-plug"))
	assert.Equal(t, "underReview", status("conductors/overloaded conductors.P1"), "a waiver hides no danger")
	assert.Nil(t, all["protection/device-too-far conductors.P1"]["suppressions"])
}

func TestSARIFPrintsNoTimeUnlessTold(t *testing.T) {
	assert.NotContains(t, string(render(t, "sarif", run(launch()), reports.Options{})), "endTimeUtc")
	at := time.Date(2026, 6, 18, 15, 4, 5, 0, time.FixedZone("", 2*60*60))
	assert.Contains(t, string(render(t, "sarif", run(launch()), reports.Options{At: at})), `"endTimeUtc": "2026-06-18T13:04:05Z"`)
}

func TestSARIFTextOfARecordIsNeitherLinkNorPlace(t *testing.T) {
	rec := clean()
	rec.Verdicts[0] = verdict.Verdict{
		Rule: drop, Outcome: verdict.Breach, Subject: "components.pump", At: span(8, 5, 7), Says: "fed from {from}",
		Figures: []verdict.Figure{{Name: "from", Text: "[here](https://bad.example) {0}"}},
	}
	for _, r := range results(t, render(t, "sarif", run(rec), reports.Options{})) {
		assert.Equal(t, "Fed from [here] (https://bad.example) {{0}}.", r["message"].(map[string]any)["text"])
	}
}

func TestSARIFPathsAreReferences(t *testing.T) {
	for path, want := range map[string]string{
		"yard/a b.yaml": `"uri": "yard/a%20b.yaml",` + "\n" + `            "uriBaseId": "ROOT"`,
		"c:d#e?.yaml":   `"uri": "c%3Ad%23e%3F.yaml"`,
		"/jobs/x.yaml":  `"uri": "file:///jobs/x.yaml"`,
	} {
		rec := clean()
		rec.Path = path
		assert.Contains(t, string(render(t, "sarif", run(rec), reports.Options{})), want)
	}
}

func TestSARIFWritesResultsAsTheyCome(t *testing.T) {
	const records = 200
	var log bytes.Buffer
	s, err := reports.Open(&log, "sarif", *run(), reports.Options{})
	require.NoError(t, err)
	longest, before := 0, 0
	for i := range records {
		rec := launch()
		rec.Path = fmt.Sprintf("yard/%d.yaml", i)
		c, err := s.Render(&rec, nil)
		require.NoError(t, err)
		require.NoError(t, s.Add(c))
		longest, before = max(longest, log.Len()-before), log.Len()
	}
	assert.Less(t, longest, 128<<10, "what is held is a buffer, not the run")
	written := log.Len()
	require.NoError(t, s.Close(&verdict.Run{}))
	assert.Greater(t, written, 9*(log.Len()-written), "nearly all was written before the end")
	assert.NoError(t, json.Unmarshal(log.Bytes(), new(any)))
}

func TestSARIFSaysInShortWhatIsInOrder(t *testing.T) {
	all := results(t, render(t, "sarif", run(launch()), reports.Options{All: true, Sources: sources()}))
	met := all["conductors/drop-excessive components.pump"]
	for _, left := range []string{"partialFingerprints", "taxa", "properties", "relatedLocations"} {
		assert.NotContains(t, met, left)
	}
	assert.Equal(t, "Met.", met["message"].(map[string]any)["text"])
	place := met["locations"].([]any)[0].(map[string]any)["physicalLocation"].(map[string]any)
	assert.Contains(t, place["region"], "startLine")
	assert.NotContains(t, place, "contextRegion")
}

// A result has the clauses of its rule, and lists them itself where they differ.
func TestSARIFResultNamesOtherClausesThanItsRule(t *testing.T) {
	cited := func(clauses ...string) []verdict.Cited {
		var all []verdict.Cited
		for _, c := range clauses {
			all = append(all, citation("us-voluntary", "abyc-e-11", "A standard", "", c, "", verdict.Standard, verdict.Secondary, nil))
		}
		return all
	}
	first, same, other := clean(), clean(), clean()
	for i, rec := range []*verdict.Record{&first, &same, &other} {
		rec.Path = fmt.Sprintf("%d.yaml", i)
		rec.Verdicts = []verdict.Verdict{{
			Rule: drop, Outcome: verdict.Breach, Subject: fmt.Sprintf("components.pump-%d", i), Says: "too much",
			Sources: [][]verdict.Cited{cited("1", "2"), cited("1", "2"), cited("2", "3")}[i],
		}}
	}
	log := render(t, "sarif", run(first, same, other), reports.Options{})
	all := results(t, log)
	assert.NotContains(t, all["conductors/drop-excessive components.pump-0"], "taxa")
	assert.NotContains(t, all["conductors/drop-excessive components.pump-1"], "taxa")
	var ids []any
	for _, taxon := range all["conductors/drop-excessive components.pump-2"]["taxa"].([]any) {
		ids = append(ids, taxon.(map[string]any)["id"])
	}
	assert.Equal(t, []any{"2", "3"}, ids)
	var tree struct {
		Runs []struct {
			Tool struct {
				Driver struct {
					Rules []struct {
						Relationships []struct{ Target struct{ ID string } }
					}
				}
			}
		}
	}
	require.NoError(t, json.Unmarshal(log, &tree))
	var relevant []string
	for _, r := range tree.Runs[0].Tool.Driver.Rules[0].Relationships {
		relevant = append(relevant, r.Target.ID)
	}
	assert.Equal(t, []string{"1", "2"}, relevant)
}
