package reports_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"

	"driploop/model/verdict"
	"driploop/reports"
)

// markdownPage is what a reader of Markdown, as hosts of code speak it, makes of
// a summary.
type markdownPage struct {
	headings []string
	cells    []int // by row of every table
	links    []string
	code     []string
	words    string // all text that is no code
	html     []string
}

func readMarkdown(t *testing.T, source []byte) (page markdownPage) {
	t.Helper()
	root := goldmark.New(goldmark.WithExtensions(extension.GFM)).Parser().Parse(text.NewReader(source))
	require.NoError(t, ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Heading:
			page.headings = append(page.headings, string(n.Lines().Value(source)))
		case *east.TableRow, *east.TableHeader:
			page.cells = append(page.cells, n.ChildCount())
		case *ast.Link, *ast.AutoLink, *ast.Image:
			page.links = append(page.links, fmt.Sprintf("%s %s", n.Kind(), n.Parent().Lines().Value(source)))
		case *ast.HTMLBlock:
			page.html = append(page.html, strings.Fields(string(n.Lines().Value(source)))...)
		case *ast.RawHTML:
			page.html = append(page.html, string(n.Segments.Value(source)))
		case *ast.CodeSpan:
			var code strings.Builder
			for c := n.FirstChild(); c != nil; c = c.NextSibling() {
				code.Write(c.(*ast.Text).Segment.Value(source))
			}
			page.code = append(page.code, code.String())
			return ast.WalkSkipChildren, nil
		case *ast.Text:
			page.words += string(n.Segment.Value(source)) + "\n"
		case *ast.String:
			page.words += string(n.Value) + "\n"
		}
		return ast.WalkContinue, nil
	}))
	return page
}

func TestMarkdownReadsAsItIsMeant(t *testing.T) {
	page := readMarkdown(t, render(t, "md", withFaults(run(launch(), clean())), reports.Options{All: true, Sources: sources()}))
	assert.Equal(t, []string{
		"1 danger, 2 notice in 2 installation records, 3 undecided, 2 files unusable",
		"`yard/launch.yaml`", "`yard/clean.yaml`", "What could not be used: 2 files",
	}, page.headings)
	assert.Equal(t, []int{9, 9, 9}, page.cells)
	assert.Empty(t, page.links)
	assert.Contains(t, page.code, `unknown key "lentgh"; the nearest known one is "length"`)
	assert.Contains(t, page.words, "WAIVED DANGER: Conductor carries more than it may")
	open, closed := strings.Count(strings.Join(page.html, " "), "<details>"), strings.Count(strings.Join(page.html, " "), "</details>")
	assert.Equal(t, open, closed)
	assert.Positive(t, open)
}

// ours are the pieces of HTML that a summary has for itself.
var ours = regexp.MustCompile(`^(<details><summary>.*|.*</summary>|</details>|<sub>|</sub>|<code>|</code>|[\w,:;]+)$`)

// spelt are characters spelt out in HTML, within code.
var spelt = regexp.MustCompile(`&#\d+;`)

func TestMarkdownOfAHostileRecordIsText(t *testing.T) {
	for _, evil := range []string{
		"<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "</details></summary>", "<!-- ", "]]>", "&lt;b&gt;",
		"[here](https://bad.example)", "![x](https://bad.example/x.png)", "<https://bad.example>", "https://bad.example", "www.bad.example",
		"@everyone", "ask foreman@bad.example", "#12", "yard/yard#12", "!34", "~bug", "GH-1 and $5 and %3",
		"a|b", `a\|b`, "|---|", "``` x", "`", "`` ` ``", " ` ", "*x* _y_ ~~z~~", "# x", "- [ ] x", "1. x", "    x", "\t x", "+ x", "> x", "===", "---",
		"line\n\n# next", "\r\n- x", "$`x`$", "\\", "\\`", ":smile:", "{from}", "\x02x\x03", strings.Repeat("long", 500),
	} {
		rec := hostileWith(evil)
		r := run(rec)
		r.Faults = []verdict.Fault{{Path: rec.Path, Says: evil}}
		page := readMarkdown(t, render(t, "md", r, reports.Options{All: true}))
		assert.Empty(t, page.links, evil)
		assert.Len(t, page.headings, 3, evil)
		assert.Equal(t, []int{9, 9}, page.cells, evil)
		for _, piece := range page.html {
			assert.Regexp(t, ours, piece, evil)
		}
		assert.NotRegexp(t, `(?i)@|://|www\.|[#!~$%^]\w`, spelt.ReplaceAllString(page.words, ""), evil)
		if !strings.ContainsAny(evil, "|\n\r\t\x02\x03") { // else it is spelt out
			assert.Contains(t, page.code, evil)
		}
	}
}

func TestMarkdownFitsAComment(t *testing.T) {
	rec := launch()
	for len(rec.Verdicts) < 3000 {
		for _, v := range launch().Verdicts {
			v.Subject = fmt.Sprintf("%s-%d", v.Subject, len(rec.Verdicts))
			rec.Verdicts = append(rec.Verdicts, v)
		}
	}
	rec.Counts = verdict.Count(rec.Verdicts)
	many := make([]verdict.Record, 2000)
	for i := range many {
		many[i] = launch()
	}
	for name, r := range map[string]*verdict.Run{"a long record": run(rec), "many records": run(many...)} {
		short := render(t, "md", r, reports.Options{})
		assert.LessOrEqual(t, len(short), 60_000, name)
		assert.Contains(t, string(short), "This summary is shortened to fit a comment", name)
		assert.Contains(t, string(short), "more ", name)
	}
	assert.NotContains(t, string(render(t, "md", run(launch()), reports.Options{})), "shortened")
	assert.Greater(t, len(render(t, "md", run(rec), reports.Options{All: true})), 60_000, "all is all")
}

func TestMarkdownPrintsNoTimeUnlessTold(t *testing.T) {
	at := time.Date(2026, 6, 18, 15, 4, 5, 0, time.UTC)
	assert.Contains(t, string(render(t, "md", run(clean()), reports.Options{At: at})), ", 2026-06-18T15:04:05Z</sub>")
	assert.NotContains(t, string(render(t, "md", run(clean()), reports.Options{})), "2026-")
}
