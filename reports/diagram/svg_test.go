package diagram_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports/diagram"
	"driploop/reports/internal/outside"
)

func svg(t testing.TB, r *record.Record, verdicts []verdict.Verdict, o diagram.Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, diagram.Lay(r, verdicts, o).SVG(&b))
	return b.String()
}

func TestGoldens(t *testing.T) {
	all := demos(t)
	for name, c := range map[string]struct {
		record string
		marked bool
		o      diagram.Options
	}{
		"windlass":       {"clean/windlass", false, diagram.Options{Caution: "Isolate."}},
		"lamps-returns":  {"clean/lamps-sterndrive-24v", false, diagram.Options{Returns: true, Embedded: true, Units: "us"}},
		"readme-marked":  {"faulty/readme", true, diagram.Options{Caution: "Isolate."}},
		"readme-inlined": {"faulty/readme", true, diagram.Options{Embedded: true}},
	} {
		t.Run(name, func(t *testing.T) {
			r := all[c.record]
			require.NotNil(t, r)
			var verdicts []verdict.Verdict
			if c.marked {
				verdicts = found(r)
			}
			got := svg(t, r, verdicts, c.o)
			path := filepath.Join("..", "..", "testdata", "reports", "diagram", name+".svg")
			if *update {
				require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
				require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
			}
			want, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.Equal(t, string(want), got, "%s; if the change is wanted: go test ./reports/diagram -update", path)
		})
	}
}

func TestTheSameRecordGivesTheSameBytes(t *testing.T) {
	y := newYard(seeded(3))
	y.system(5, 6)
	y.tangle(30)
	text := y.record()
	draw := func(returns bool) string {
		r := decoded(t, "record", text)
		return svg(t, r, found(r), diagram.Options{Returns: returns})
	}
	for _, returns := range []bool{false, true} {
		first := draw(returns)
		for range 3 {
			require.Equal(t, first, draw(returns))
		}
	}
}

// elements reads a drawing, and fails if it is not well-formed.
func elements(t *testing.T, drawing string) []xml.StartElement {
	t.Helper()
	var all []xml.StartElement
	for d := xml.NewDecoder(strings.NewReader(drawing)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			all = append(all, e.Copy())
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestLinksLeadSomewhereWithinTheDrawing(t *testing.T) {
	for name, r := range demos(t) {
		t.Run(name, func(t *testing.T) {
			ids, hrefs := map[string]int{}, []string{}
			for _, e := range elements(t, svg(t, r, found(r), diagram.Options{})) {
				if id := attribute(e, "id"); id != "" {
					ids[id]++
				}
				if href := attribute(e, "href"); href != "" {
					hrefs = append(hrefs, href)
				}
			}
			require.NotEmpty(t, hrefs)
			for _, href := range hrefs {
				assert.True(t, strings.HasPrefix(href, "#"), href)
				assert.Positive(t, ids[href[1:]], href)
			}
		})
	}
}

// An embedded drawing links to the findings of its page, which links back.
func TestAnEmbeddedDrawingLinksToThePage(t *testing.T) {
	r := demos(t)["faulty/readme"]
	verdicts := found(r)
	d := diagram.Lay(r, verdicts, diagram.Options{Embedded: true, Finding: func(v *verdict.Verdict) string { return "#there-" + v.Rule.Title }})
	var b bytes.Buffer
	require.NoError(t, d.SVG(&b))
	assert.Contains(t, b.String(), `<a href="#there-Thing amiss">`)
	assert.NotContains(t, b.String(), `id="finding-`)
	assert.NotContains(t, b.String(), "<?xml")
	for subject, want := range map[string]string{
		"conductors.P1":           "draw-conductors.P1",
		"conductors.P1.ends.from": "draw-conductors.P1",
		"components.fuse":         "draw-components.fuse",
		"components.none":         "",
		"conductors":              "",
		"vessel":                  "",
		"tests[0]":                "",
	} {
		assert.Equal(t, want, d.Anchor(subject), subject)
		if want != "" {
			assert.Equal(t, 1, strings.Count(b.String(), `id="`+want+`"`), want)
		}
	}
}

func TestADrawingIsAccessible(t *testing.T) {
	r := demos(t)["faulty/readme"]
	bare, marked := svg(t, r, nil, diagram.Options{}), svg(t, r, found(r), diagram.Options{})
	assert.Contains(t, bare, `role="img"`, "a picture")
	assert.Contains(t, marked, `role="graphics-document"`, "links within a picture could not be reached")
	assert.Contains(t, bare, `aria-labelledby="draw-title draw-desc"`)
	assert.Regexp(t, `<title id="draw-title">One-line diagram of HL-2240, Deck-wash pump</title>`, bare)
	assert.Regexp(t, `<desc id="draw-desc">3 components and 3 conductors\.`, bare)
	assert.Contains(t, bare, "<title>P2: fuse.load to washdown.pos, positive, 10 AWG, 7.32 m</title>")
	assert.Contains(t, bare, "<title>house: battery, agm</title>")
	assert.Contains(t, bare, "prefers-color-scheme:dark")
	assert.Contains(t, bare, "@page{size:A4 landscape")
}

// hostile is a record whose texts try to be something else.
const hostile = `driploop: 1
job: {number: '"><script>alert(1)</script>', title: "]]> &lt; \u202Egnp.exe --> <!--"}
vessel: {name: "<svg onload=x>", system: 12 V}
components:
  house: {kind: battery, label: "</text><image href='http://example.invalid/x.png'/>"}
  lamp: {kind: lamp, label: "'\"&<> javascript:alert(1)"}
conductors:
  P: {from: house.pos, to: lamp.pos, role: positive}
`

func TestHostileTextsAreShownAsText(t *testing.T) {
	r := decoded(t, "hostile", hostile)
	rule := &verdict.Rule{ID: "a/b", Title: `<script>alert("rule")</script>`}
	drawing := svg(t, r, []verdict.Verdict{{Rule: rule, Outcome: verdict.Breach, Subject: "components.lamp", Says: "</title><script>x</script>\x1b[31m\x07\xff"}}, diagram.Options{})
	allowed := map[string]bool{
		"svg": true, "title": true, "desc": true, "style": true, "g": true, "a": true, "path": true, "polyline": true,
		"polygon": true, "rect": true, "circle": true, "text": true,
	}
	for _, e := range elements(t, drawing) {
		assert.True(t, allowed[e.Name.Local], e.Name.Local)
		for _, a := range e.Attr {
			assert.NotRegexp(t, `(?i)^on|^style$|xlink`, a.Name.Local)
			if a.Name.Local == "href" {
				assert.Regexp(t, `^#`, a.Value)
			}
		}
	}
	assert.NotRegexp(t, "[\x00-\x08\x0b-\x1f\u202e]", drawing)
	assert.NotRegexp(t, `(?i)url\(|@import|<script`, drawing)
	assert.Equal(t, []string{"http://www.w3.org/2000/svg"}, regexp.MustCompile(`http[^"' )]*`).FindAllString(drawing, 1))
}

func TestXMLLintReadsEveryDrawing(t *testing.T) {
	lint := outside.Program(t, "xmllint", "libxml2-utils")
	all := demos(t)
	all["hostile"] = decoded(t, "hostile", hostile)
	for name, r := range all {
		t.Run(name, func(t *testing.T) {
			for _, returns := range []bool{false, true} {
				cmd := exec.Command(lint, "--noout", "--nonet", "-")
				cmd.Stdin = strings.NewReader(svg(t, r, found(r), diagram.Options{Returns: returns}))
				out, err := cmd.CombinedOutput()
				assert.NoError(t, err, string(out))
			}
		})
	}
}
