package pdf

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
	"driploop/reports/internal/outside"
	"driploop/reports/internal/sample"
	"driploop/reports/survey"
)

func TestMain(m *testing.M) {
	code := m.Run()
	sample.CleanUp()
	os.Exit(code)
}

func written(t *testing.T, s *survey.Survey, at time.Time) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, s, at))
	return b.Bytes()
}

func run(t *testing.T, program, packet string, args ...string) string {
	t.Helper()
	out, err := exec.Command(outside.Program(t, program, packet), args...).CombinedOutput()
	require.NoError(t, err, "%s", out)
	return string(out)
}

func textOf(t *testing.T, file string) string {
	return run(t, "pdftotext", "poppler-utils", "-layout", file, "-")
}

func TestTheSameRecordGivesTheSameBytes(t *testing.T) {
	at := time.Date(2026, 6, 18, 15, 4, 5, 0, time.UTC)
	for _, when := range []time.Time{{}, at} {
		assert.Equal(t, written(t, sample.Survey(t, quantity.Both), when), written(t, sample.Survey(t, quantity.Both), when))
	}
}

func TestEveryLinkLeadsSomewhere(t *testing.T) {
	for _, s := range []*survey.Survey{sample.Survey(t, quantity.Both), sample.HostileSurvey(t)} {
		d := build(s, time.Time{})
		require.NotEmpty(t, d.links)
		assert.Empty(t, d.unplaced())
	}
}

func TestDemoReportsAreSoundDocuments(t *testing.T) {
	for rec, parts := range map[string][]string{
		"faulty/thruster-launch.yaml": {"faults found: 18 danger", "Fuse or breaker too far from its source", "faulty/thruster-launch.yaml:", "at most 178 mm (7 in)", "mΩ", "mm²", "°C"},
		"clean/thruster-launch.yaml":  {"No fault found"},
		"sparse/thruster-launch.yaml": {"could not be decided", "conductors.*.length"},
	} {
		t.Run(rec, func(t *testing.T) {
			file := sample.Demo(t, rec, "report.pdf")
			text := textOf(t, file)
			for _, part := range append(parts, "Open questions", "Schedule of circuits", "Coverage", "What no record can show", "Cautions", "Provenance", "Working", "sha256:") {
				assert.Contains(t, text, part)
			}
			assertPages(t, text)
			assert.Contains(t, run(t, "qpdf", "qpdf", "--check", file), "No syntax or stream encoding errors")
			for _, line := range strings.Split(strings.TrimSpace(run(t, "pdffonts", "poppler-utils", file)), "\n")[2:] {
				assert.Regexp(t, `\byes +(yes|no) +yes\b`, line, "font embedded, with its characters told")
			}
			assert.Contains(t, run(t, "pdfinfo", "poppler-utils", file), "Title:           Survey report: HL-220")
			assert.Contains(t, outline(t, file), "Coverage")
		})
	}
}

// assertPages sees that each page says which it is, of how many.
func assertPages(t *testing.T, text string) {
	t.Helper()
	pages := strings.Split(strings.TrimSuffix(text, "\f"), "\f")
	for i, page := range pages {
		assert.Regexp(t, `page `+strconv.Itoa(i+1)+` of `+strconv.Itoa(len(pages))+`\b`, page)
	}
}

// outline lists the titles of the outline.
func outline(t *testing.T, file string) []string {
	t.Helper()
	var tree struct {
		Outlines []struct{ Title string }
	}
	require.NoError(t, json.Unmarshal([]byte(run(t, "qpdf", "qpdf", "--json", "--json-key=outlines", file)), &tree))
	titles := make([]string, 0, len(tree.Outlines))
	for _, o := range tree.Outlines {
		titles = append(titles, o.Title)
	}
	return titles
}

func TestHeadsOfTablesStandOnEveryPage(t *testing.T) {
	text := textOf(t, sample.Demo(t, "faulty/thruster-launch.yaml", "report.pdf"))
	heads := 0
	for _, page := range strings.Split(text, "\f") {
		if regexp.MustCompile(`Rule +Judged +Met +Breached`).MatchString(page) {
			heads++
		}
	}
	assert.Greater(t, heads, 1)
}

func TestAHostileRecordIsShownAsText(t *testing.T) {
	file := sample.Written(t, "hostile.pdf", written(t, sample.HostileSurvey(t), time.Time{}))
	text := strings.Join(strings.Fields(textOf(t, file)), " ")
	for _, part := range []string{"<script>alert(1)</script>", "{{.}}", `\u202e`, "évil µΩ²°", "<U+6F22>", "<U+1F6A4>"} {
		assert.Contains(t, text, part)
	}
	assert.Contains(t, run(t, "qpdf", "qpdf", "--check", file), "No syntax or stream encoding errors")
}

func TestUnitsAreThoseAskedFor(t *testing.T) {
	for units, part := range map[quantity.System]string{quantity.US: "6.99 ft", quantity.Metric: "2.13 m"} {
		text := textOf(t, sample.Written(t, "pump.pdf", written(t, sample.Survey(t, units), time.Time{})))
		assert.Contains(t, text, part)
	}
}
