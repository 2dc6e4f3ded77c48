package main

import (
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// client is an editor at the other end of a session.
type client struct {
	t         testing.TB
	conn      *jsonrpc2.Conn
	published chan diagnostics
}

type diagnostics struct {
	URI         string
	Version     int
	Diagnostics []struct {
		Range    struct{ Start, End struct{ Line, Character int } }
		Severity int
		Code     string
		Message  string
		Related  []struct {
			Location struct {
				Range struct{ Start struct{ Line int } }
			}
		} `json:"relatedInformation"`
	}
}

const uri = "file:///yard/job.yaml"

// newClient starts a session and greets it.
func newClient(t testing.TB) *client {
	inRead, inWrite := io.Pipe()
	outRead, outWrite := io.Pipe()
	done := make(chan int, 1)
	go func() { done <- run([]string{"editor"}, inRead, outWrite, io.Discard) }()
	c := &client{t: t, published: make(chan diagnostics, 64)}
	c.conn = jsonrpc2.NewConn(context.Background(), jsonrpc2.NewBufferedStream(pipes{outRead, inWrite}, jsonrpc2.VSCodeObjectCodec{}),
		jsonrpc2.HandlerWithError(func(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
			var d diagnostics
			if r.Method == "textDocument/publishDiagnostics" && json.Unmarshal(*r.Params, &d) == nil {
				c.published <- d
			}
			return nil, nil
		}))
	var greeting struct {
		Capabilities map[string]any
		ServerInfo   struct{ Name string }
	}
	c.call("initialize", map[string]any{}, &greeting)
	assert.Equal(t, "driploop", greeting.ServerInfo.Name)
	for _, can := range []string{"hoverProvider", "completionProvider", "definitionProvider", "referencesProvider", "documentSymbolProvider", "codeActionProvider"} {
		assert.Contains(t, greeting.Capabilities, can)
	}
	t.Cleanup(func() {
		c.call("shutdown", nil, nil)
		_ = c.conn.Notify(context.Background(), "exit", nil)
		_ = inWrite.Close()
		select {
		case code := <-done:
			assert.Equal(t, exitClean, code)
		case <-time.After(10 * time.Second):
			t.Error("the server does not end")
		}
	})
	return c
}

type pipes struct {
	io.Reader
	io.WriteCloser
}

func (p pipes) Close() error { return p.WriteCloser.Close() }

func (c *client) call(method string, params, result any) {
	c.t.Helper()
	require.NoError(c.t, c.conn.Call(context.Background(), method, params, result), method)
}

// show opens or changes the text and returns what is published for it.
func (c *client) show(version int, text string) diagnostics {
	c.t.Helper()
	if version == 1 {
		require.NoError(c.t, c.conn.Notify(context.Background(), "textDocument/didOpen",
			map[string]any{"textDocument": map[string]any{"uri": uri, "version": version, "languageId": "yaml", "text": text}}))
	} else {
		require.NoError(c.t, c.conn.Notify(context.Background(), "textDocument/didChange", map[string]any{
			"textDocument": map[string]any{"uri": uri, "version": version}, "contentChanges": []any{map[string]any{"text": text}},
		}))
	}
	for {
		select {
		case d := <-c.published:
			if d.Version == version {
				return d
			}
		case <-time.After(20 * time.Second):
			require.Fail(c.t, "nothing was published")
		}
	}
}

// at are the parameters of a question about the place of a mark in the text.
func at(text, mark string) map[string]any {
	before, _, _ := strings.Cut(text, mark)
	line := strings.Count(before, "\n")
	return map[string]any{
		"textDocument": map[string]any{"uri": uri},
		"position":     map[string]int{"line": line, "character": len(before) - strings.LastIndexByte(before, '\n') - 1},
	}
}

func demoText(t *testing.T) string {
	text, err := os.ReadFile("../../testdata/records/faulty/readme.yaml")
	require.NoError(t, err)
	return string(text)
}

func TestEditorTellsWhatIsWrong(t *testing.T) {
	c, text := newClient(t), demoText(t)
	d := c.show(1, text)
	codes := map[string]int{}
	for _, one := range d.Diagnostics {
		codes[one.Code]++
		if one.Code == "protection/device-oversized" {
			assert.Equal(t, 1, one.Severity, "a danger")
			assert.Contains(t, one.Message, "Fuse or breaker too large for its conductor: fuse of 100 A protects 10 AWG")
			require.NotEmpty(t, one.Related, "the fuse is the place that it concerns")
			assert.Equal(t, 5, one.Related[0].Location.Range.Start.Line)
		}
	}
	assert.Equal(t, map[string]int{"protection/device-oversized": 2, "protection/device-too-far": 1, "undecided": 1}, codes)

	d = c.show(2, strings.Replace(text, "kind: fuse", "kind: fuze", 1))
	require.Len(t, d.Diagnostics, 1)
	assert.Contains(t, d.Diagnostics[0].Message, `"fuze"`)
	assert.Equal(t, 5, d.Diagnostics[0].Range.Start.Line)
	d = c.show(3, "driploop: 1\njob: {")
	require.NotEmpty(t, d.Diagnostics)
	d = c.show(4, text)
	assert.Len(t, d.Diagnostics, 4, "it was only half typed")
}

func TestEditorHovers(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	hover := func(mark string) string {
		var h struct{ Contents struct{ Value string } }
		c.call("textDocument/hover", at(text, mark), &h)
		return h.Contents.Value
	}
	p1 := hover("P1: {from")
	assert.Contains(t, p1, "| protected at | 100 A |")
	assert.Contains(t, p1, "Fuse or breaker too large for its conductor")
	assert.Contains(t, hover("rating: 100 A"), "**rating**: Rated current.")
	assert.Contains(t, hover("house.pos"), "**components.house**")
	assert.Contains(t, hover("agm}"), "Kind of cells", "the key that the value belongs to")
}

func TestEditorCompletes(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	version := 1
	complete := func(line string) []string {
		typed := text + line
		version++
		c.show(version, typed)
		var items []struct{ Label string }
		c.call("textDocument/completion", map[string]any{
			"textDocument": map[string]any{"uri": uri},
			"position":     map[string]int{"line": strings.Count(typed, "\n"), "character": len(line) - strings.LastIndexByte(line, '\n') - 1},
		}, &items)
		var labels []string
		for _, i := range items {
			labels = append(labels, i.Label)
		}
		return labels
	}
	assert.Contains(t, complete("pen"), "penetrations")
	assert.NotContains(t, complete("pen"), "vessel", "it is there")
	assert.Contains(t, complete("spaces:\n  aft: {kind: "), "engine")
	assert.Contains(t, complete("penetrations:\n  hole: {passes: ["), "P1")
	assert.Contains(t, complete("waivers:\n  - {"), "reason")
}

func TestEditorCompletesWithinALine(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	var items []struct{ Label string }
	c.call("textDocument/completion", at(text, "washdown.pos, role"), &items)
	var labels []string
	for _, i := range items {
		labels = append(labels, i.Label)
	}
	assert.Subset(t, labels, []string{"house.pos", "house.neg", "fuse.line", "fuse.load", "washdown.pos"})
	c.call("textDocument/completion", at(text, "10 AWG, insulation: 105 degC, length: 24 ft"), &items)
	labels = nil
	for _, i := range items {
		labels = append(labels, i.Label)
	}
	assert.Subset(t, labels, []string{"8 AWG", "16 mm2"})
}

func TestEditorFindsDefinitionsAndReferences(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	type location struct {
		Range struct{ Start struct{ Line, Character int } }
	}
	var d location
	c.call("textDocument/definition", at(text, "washdown.pos"), &d)
	assert.Equal(t, 6, d.Range.Start.Line)
	var all []location
	c.call("textDocument/references", at(text, "washdown.pos"), &all)
	assert.Len(t, all, 4, "where it is given, both conductors, the test")
	c.call("textDocument/definition", at(text, "105 degC"), &d)
	var symbols []struct {
		Name     string
		Children []struct{ Name, Detail string }
	}
	c.call("textDocument/documentSymbol", map[string]any{"textDocument": map[string]any{"uri": uri}}, &symbols)
	var names []string
	for _, s := range symbols {
		names = append(names, s.Name)
		if s.Name == "components" {
			require.Len(t, s.Children, 3)
			assert.Equal(t, "battery", s.Children[0].Detail)
		}
	}
	assert.Equal(t, []string{"driploop", "job", "vessel", "components", "conductors", "tests"}, names)
}

func TestEditorOffersRemedies(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	var actions []struct {
		Title string
		Edit  struct {
			Changes map[string][]struct{ NewText string }
		}
	}
	line := at(text, "P2: {from")["position"]
	c.call("textDocument/codeAction", map[string]any{
		"textDocument": map[string]any{"uri": uri}, "range": map[string]any{"start": line, "end": line}, "context": map[string]any{},
	}, &actions)
	require.NotEmpty(t, actions)
	assert.Equal(t, "Set components.fuse.rating: 80 A", actions[0].Title)
	cured := actions[0].Edit.Changes[uri][0].NewText
	assert.Equal(t, strings.Replace(text, "100 A", "80 A", 1), cured)
	for _, one := range c.show(2, cured).Diagnostics {
		assert.NotEqual(t, "protection/device-oversized", one.Code)
	}
}

func TestEditorSurvivesNonsense(t *testing.T) {
	c, text := newClient(t), demoText(t)
	c.show(1, text)
	far := map[string]any{"textDocument": map[string]any{"uri": uri}, "position": map[string]int{"line": 9999, "character": 9999}}
	var any1 any
	for _, method := range []string{"hover", "completion", "definition", "references"} {
		c.call("textDocument/"+method, far, &any1)
	}
	require.Error(t, c.conn.Call(context.Background(), "textDocument/hover", map[string]any{"textDocument": map[string]any{"uri": "file:///other"}}, nil))
	require.Error(t, c.conn.Call(context.Background(), "no/such", nil, nil))
	require.Error(t, c.conn.Call(context.Background(), "textDocument/hover", []int{1}, nil))
}

// TestEditorJudgesAsTheYardDoes: the settings and rules beside a record hold while
// it is typed, too.
func TestEditorJudgesAsTheYardDoes(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "driploop.yaml"), []byte("practice: [us-federal]\nseverity:\n  protection/unprotected: {to: caution, reason: a bench set-up}\n"), 0o600))
	c := newClient(t)
	text := "driploop: 1\njob: {number: J-1}\nvessel: {system: 12 V}\npractice: [workmanship]\ncomponents:\n  house: {kind: battery}\n  lights: {kind: lamp}\n" +
		"conductors:\n  P1: {from: house.pos, to: lights.pos, role: positive, length: 25 m}\n"
	require.NoError(t, c.conn.Notify(context.Background(), "textDocument/didOpen",
		map[string]any{"textDocument": map[string]any{"uri": "file://" + filepath.ToSlash(folder) + "/job.yaml", "version": 1, "languageId": "yaml", "text": text}}))
	select {
	case d := <-c.published:
		var seen []int
		for _, one := range d.Diagnostics {
			if one.Code == "protection/unprotected" {
				seen = append(seen, one.Severity)
			}
		}
		assert.Equal(t, []int{2}, seen, "a caution, by the settings, is a warning of the editor")
	case <-time.After(20 * time.Second):
		require.Fail(t, "nothing was published")
	}
}
