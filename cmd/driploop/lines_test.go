package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
)

// answer is a line that check --lines writes.
type answer struct {
	Line     int
	Path     string
	SHA256   string
	Job      string
	Counts   map[string]int
	Verdicts []json.RawMessage
	Rules    []any // what each rule said, with --all
	Tool     struct{ Rules string }
	Errors   []struct {
		Path         string
		Line, Column int
		Says         string
	}
}

func answersTo(t *testing.T, in string, flags ...string) (all []answer, code int) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(append([]string{"check", "--lines", "--config", "none"}, flags...), strings.NewReader(in), &out, &errs)
	require.Empty(t, errs.String())
	for _, text := range strings.SplitAfter(out.String(), "\n") {
		if text == "" {
			continue
		}
		var a answer
		require.NoError(t, json.Unmarshal([]byte(text), &a), text)
		all = append(all, a)
	}
	return all, code
}

// wrap puts the text of a record on a line.
func wrap(t *testing.T, path, text string) string {
	t.Helper()
	line, err := json.Marshal(map[string]string{"path": path, "text": text})
	require.NoError(t, err)
	return string(line) + "\n"
}

func TestLinesSayWhatACheckOfTheFilesSays(t *testing.T) {
	t.Run("what stands against a record", func(t *testing.T) { linesAreAsOfFiles(t) })
	t.Run("everything", func(t *testing.T) { linesAreAsOfFiles(t, "--all") })
}

func linesAreAsOfFiles(t *testing.T, flags ...string) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(demos, "*", "*.yaml"))
	require.NoError(t, err)
	require.Greater(t, len(paths), 5)
	var in strings.Builder
	for _, path := range paths {
		in.WriteString(wrap(t, path, demo(t, strings.TrimPrefix(path, demos+"/"))))
	}
	lines, code := answersTo(t, in.String(), flags...)
	require.Len(t, lines, len(paths))

	var out, errs bytes.Buffer
	want := run(slices.Concat([]string{"check", "--config", "none", "--no-cache", "--format", "json"}, flags, paths), nil, &out, &errs)
	assert.Equal(t, want, code)
	var whole struct {
		Tool    struct{ Rules string }
		Records []answer
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &whole))
	require.Len(t, whole.Records, len(paths), "no demo record is broken")
	for i, w := range whole.Records {
		got := lines[i]
		assert.Equal(t, i+1, got.Line)
		assert.Equal(t, whole.Tool.Rules, got.Tool.Rules)
		assert.Equal(t, w.Path, got.Path)
		assert.Equal(t, w.SHA256, got.SHA256)
		assert.Equal(t, w.Counts, got.Counts)
		assert.Equal(t, w.Rules, got.Rules)
		require.Len(t, got.Verdicts, len(w.Verdicts), w.Path)
		for n := range w.Verdicts {
			assert.JSONEq(t, string(w.Verdicts[n]), string(got.Verdicts[n]))
		}
	}
}

func TestABadLineDoesNotStopTheStream(t *testing.T) {
	good := wrap(t, "good.yaml", demo(t, "faulty/readme.yaml"))
	bad := []struct{ line, says string }{
		{`{"path": `, "is no JSON: unexpected end of JSON input"},
		{``, "is empty"},
		{`[1]`, "is JSON, and no object"},
		{`{"a": 1}`, "holds no record"},
		{`{"path": 3, "text": ""}`, `has no text under "path"`},
		{`{"path": null, "text": ""}`, `has no text under "path"`},
		{`{"text": "a", "txet": "b"}`, `has an entry "txet"`},
		{`{"text": "a", "driploop": 1}`, `has an entry "driploop"`},
		{`{"text": "a", "text": "b"}`, `has the entry "text" twice`},
		{"{\"text\": \"\xff\"}", "not UTF-8"},
		{`{"text": "driploop: 1\njobb: {}"}`, `"jobb"`},
		{`{"driploop": 1, "jobb": {}}`, `"jobb"`},
		{`{"driploop": 1} {}`, "is no JSON"},
		{`{"text": "` + strings.Repeat("#", record.MaxBytes+1) + `"}`, "is too large for a record: it has more than 4 MiB"},
		{`{"text": "` + strings.Repeat("#", maxLine) + `"}`, "is too long: a line has at most 8 MiB"},
	}
	var in strings.Builder
	for _, b := range bad {
		in.WriteString(b.line + "\n" + good)
	}
	lines, code := answersTo(t, strings.TrimSuffix(in.String(), "\n")) // the last line needs no end
	assert.Equal(t, exitUnusable, code)
	require.Len(t, lines, 2*len(bad))
	for i, b := range bad {
		about := b.line[:min(40, len(b.line))]
		require.NotEmpty(t, lines[2*i].Errors, about)
		assert.Equal(t, 2*i+1, lines[2*i].Line)
		var says []string
		for _, e := range lines[2*i].Errors {
			says = append(says, e.Says)
		}
		assert.Contains(t, strings.Join(says, "\n"), b.says, about)
		assert.Nil(t, lines[2*i].Counts, about)
		assert.Equal(t, 2*i+2, lines[2*i+1].Line)
		assert.Equal(t, 3, lines[2*i+1].Counts["breach"], about)
		assert.Empty(t, lines[2*i+1].Errors)
	}
}

func TestARecordMayBeTheLineItself(t *testing.T) {
	const line = `{"driploop":1,"job":{"number":"A\/1 \ud83d\ude00\u00e9\ud800","title":"T \"q\" \\u0041 \udc00\u0022"},"vessel":{"name":"M","system":"12 V"},` +
		`"components":{"b":{"kind":"battery"}},"conductors":{}}`
	lines, _ := answersTo(t, line)
	require.Len(t, lines, 1)
	require.Empty(t, lines[0].Errors)
	assert.Equal(t, "A/1 😀é\ufffd", lines[0].Job)
	assert.Equal(t, "line 1", lines[0].Path)
	assert.NotZero(t, lines[0].Counts["undecided"])
}

func TestExitCodesOfLines(t *testing.T) {
	clean, faulty := wrap(t, "c", demo(t, "clean/windlass.yaml")), wrap(t, "f", demo(t, "faulty/readme.yaml"))
	for name, c := range map[string]struct {
		in    string
		flags []string
		want  int
	}{
		"nothing":         {"", nil, exitClean},
		"clean":           {clean, []string{"--complete", "--gate", "notice"}, exitClean},
		"a breach":        {clean + faulty + clean, nil, exitBreach},
		"below the gate":  {faulty, []string{"--gate", "none"}, exitClean},
		"bad, then clean": {"x\n" + clean, nil, exitUnusable},
	} {
		t.Run(name, func(t *testing.T) {
			_, code := answersTo(t, c.in, c.flags...)
			assert.Equal(t, c.want, code)
		})
	}
}

// TestLinesAreAnsweredAtOnce asks a line after the answer to the one before, as
// an engine does that keeps the program running beside it.
func TestLinesAreAnsweredAtOnce(t *testing.T) {
	in, ask := io.Pipe()
	answers, out := io.Pipe()
	done := make(chan int, 1)
	go func() { done <- run([]string{"check", "--lines", "--config", "none"}, in, out, io.Discard) }()
	from := bufio.NewReader(answers)
	for n := 1; n <= 3; n++ {
		_, err := io.WriteString(ask, wrap(t, "r", demo(t, "faulty/readme.yaml")))
		require.NoError(t, err)
		text, err := from.ReadBytes('\n')
		require.NoError(t, err)
		var a answer
		require.NoError(t, json.Unmarshal(text, &a))
		assert.Equal(t, n, a.Line)
	}
	require.NoError(t, ask.Close())
	assert.Equal(t, exitBreach, <-done)
}

// TestLinesAreNotReadFarAhead feeds lines without end to a program whose output
// nobody takes.
func TestLinesAreNotReadFarAhead(t *testing.T) {
	one := wrap(t, strings.Repeat("p", 60<<10), "driploop: 1") // about what is read at once
	endless := &counted{text: one}
	answers, out := io.Pipe()
	done := make(chan int, 1)
	go func() { done <- run([]string{"check", "--lines", "--config", "none"}, endless, out, io.Discard) }()
	from := bufio.NewReader(answers)
	const taken = 20
	for range taken {
		_, err := from.ReadBytes('\n')
		require.NoError(t, err)
	}
	require.NoError(t, answers.Close())
	assert.Equal(t, exitUnusable, <-done, "a closed pipe is an error")
	assert.Less(t, endless.given.Load(), int64(taken+200), "lines were read though nobody took their answers")
}

// counted gives the same line again and again.
type counted struct {
	text  string
	rest  string
	given atomic.Int64
}

func (c *counted) Read(into []byte) (int, error) {
	if c.rest == "" {
		c.rest = c.text
		c.given.Add(1)
	}
	n := copy(into, c.rest)
	c.rest = c.rest[n:]
	return n, nil
}

func TestAStreamThatBreaksOffIsNoEnd(t *testing.T) {
	in := io.MultiReader(strings.NewReader(wrap(t, "c", demo(t, "clean/windlass.yaml"))+`{"path":`), iotest.ErrReader(io.ErrClosedPipe))
	var out, errs bytes.Buffer
	assert.Equal(t, exitUnusable, run([]string{"check", "--lines", "--config", "none"}, in, &out, &errs))
	assert.Equal(t, 1, strings.Count(out.String(), "\n"), "the whole line is answered, the broken one is not")
	assert.Contains(t, errs.String(), "standard input cannot be read beyond line 2")
}

func TestLinesTakeNoPathsAndNoFormat(t *testing.T) {
	for args, says := range map[string]string{
		"job.yaml":      "--lines reads standard input",
		"--format text": "--format does not go with --lines",
		"--since main":  "--since does not go with --lines",
	} {
		var errs bytes.Buffer
		code := run(append([]string{"check", "--lines"}, strings.Fields(args)...), strings.NewReader(""), io.Discard, &errs)
		assert.Equal(t, exitUnusable, code, args)
		assert.Contains(t, errs.String(), says)
	}
}
