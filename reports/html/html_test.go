package html_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports/html"
	"driploop/reports/internal/outside"
	"driploop/reports/internal/sample"
	"driploop/reports/survey"
)

func write(t *testing.T, s *survey.Survey) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, html.Write(&b, s))
	return b.Bytes()
}

func index(t *testing.T) []byte {
	t.Helper()
	rec := &verdict.Record{Path: "yard/<b>.yaml", Vessel: "Teasel", Counts: verdict.Counts{verdict.Breach: 1, verdict.Waived: 1, verdict.Undecided: 2}}
	inOrder := html.Entry{Link: "clear.html", Path: "yard/clear.yaml", Name: "HL-1", Mark: "clear"}
	var b bytes.Buffer
	require.NoError(t, html.WriteIndex(&b, html.Index{
		Entries: []html.Entry{inOrder, html.EntryOf("pump.html", rec, sample.Survey(t, quantity.Both))},
		Faults:  []verdict.Fault{{Path: "yard/broken.yaml", At: verdict.Position{Line: 3, Column: 5}, Says: `unknown key "<i>"`}},
		Rules:   "sha256:0123", Version: "v0.0.0-test", At: time.Date(2026, 6, 18, 15, 4, 5, 0, time.UTC),
	}))
	return b.Bytes()
}

// layout is a page without what is told elsewhere: style sheet and script are
// files of their own, the drawing and the working are those of other packages.
func layout(page []byte) []byte {
	for _, part := range [][2]string{
		{"<style>", "</style>"}, {"<script>", "</script>"}, {"<svg xmlns", "</svg>"}, {`<section id="working"`, "</section>"},
	} {
		from := bytes.Index(page, []byte(part[0]))
		if from < 0 {
			continue
		}
		to := from + bytes.Index(page[from:], []byte(part[1])) + len(part[1])
		page = slices.Concat(page[:from], page[to:])
	}
	return page
}

func TestMain(m *testing.M) {
	code := m.Run()
	sample.CleanUp()
	os.Exit(code)
}

func TestGolden(t *testing.T) {
	for name, units := range map[string]quantity.System{"pump.html": quantity.Both, "pump-us.html": quantity.US, "pump-metric.html": quantity.Metric} {
		sample.Golden(t, "html", name, layout(write(t, sample.Survey(t, units))))
	}
	sample.Golden(t, "html", "index.html", layout(index(t)))
}

func TestTheSameRecordGivesTheSameBytes(t *testing.T) {
	assert.Equal(t, write(t, sample.Survey(t, quantity.Both)), write(t, sample.Survey(t, quantity.Both)))
}

func TestTheIndexListsTheWorstFirst(t *testing.T) {
	page := string(index(t))
	assert.Less(t, strings.Index(page, "pump.html"), strings.Index(page, "clear.html"))
	assert.Contains(t, page, "yard/&lt;b&gt;.yaml")
	assert.NotContains(t, page, "<i>")
}

// seen is what a browser tells of a page; see .tools/npm/page.mjs.
type seen struct {
	Invalid    []string
	Unscripted string
	Views      []struct {
		Width, Wide, Scripts, Links, Marks, Drawn int
		Scheme, Reached                           string
		Axe, Errors, Asked, Dangling, Twice       []string
	}
}

func browse(t *testing.T, file string) seen {
	t.Helper()
	browser, node := outside.Program(t, "chromium", "chromium"), outside.Program(t, "node", "nodejs")
	for _, module := range []string{"playwright-core", "axe-core", "html-validate"} {
		outside.Module(t, module)
	}
	cmd := exec.Command(node, filepath.Join(outside.Modules(), "..", "page.mjs"), file, browser)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	require.NoError(t, err, errs.String())
	var s seen
	require.NoError(t, json.Unmarshal(out, &s))
	require.Len(t, s.Views, 4)
	assert.Empty(t, s.Invalid, "html-validate")
	for _, v := range s.Views {
		assert.Empty(t, v.Axe, "axe-core at %d px, %s", v.Width, v.Scheme)
		assert.Empty(t, v.Errors, "errors of the page")
		assert.Empty(t, v.Asked, "asked of the network")
		assert.Empty(t, v.Dangling, "links that lead nowhere")
		assert.Empty(t, v.Twice, "ids that stand twice")
		assert.LessOrEqual(t, v.Wide, v.Width, "the page scrolls sideways")
	}
	return s
}

func TestDemoReportsInABrowser(t *testing.T) {
	for rec, says := range map[string]string{
		"faulty/thruster-launch.yaml": "faults found: ",
		"sparse/thruster-launch.yaml": "could not be decided",
	} {
		t.Run(rec, func(t *testing.T) {
			s := browse(t, sample.Demo(t, rec, "report.html"))
			assert.Contains(t, s.Unscripted, says, "the report is whole without its script")
			assert.Equal(t, 1, s.Views[0].Scripts)
			if strings.HasPrefix(rec, "faulty") {
				assert.Positive(t, s.Views[0].Marks, "marks of the diagram lead to findings")
				assert.Positive(t, s.Views[0].Drawn, "findings lead to the diagram")
				assert.Equal(t, "open", s.Views[0].Reached, "a link into the working opens it")
			}
		})
	}
}

func TestAHostileRecordIsShownAsText(t *testing.T) {
	s := browse(t, sample.Written(t, "hostile.html", write(t, sample.HostileSurvey(t))))
	assert.Equal(t, 1, s.Views[0].Scripts, "only the script of the page")
	for _, part := range []string{"<script>alert(1)</script>", `<img src=x onerror=alert(2)>`, "<svg onload=alert(3)>", "{{.}}", "</style>", `\u202e`, "évil µΩ²°", "漢字"} {
		assert.Contains(t, s.Unscripted, part)
	}
}

func TestTheIndexInABrowser(t *testing.T) {
	s := browse(t, sample.Written(t, "index.html", index(t)))
	assert.Zero(t, s.Views[0].Scripts)
}
