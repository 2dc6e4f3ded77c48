package main

import (
	"io"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"driploop/cmd/driploop/internal/editor"
	"driploop/model/circuit"
	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
	"driploop/reports"
)

const editorLong = `Speak the Language Server Protocol on standard input and output, for editors: what
is wrong as you type, with the places that it concerns; the computed figures of
the conductor or device under the cursor, and the pages of the rules it breaks;
completion of keys, words, ids, terminals, sizes and colours; definitions and
references of ids; an outline; and what would clear a breach, proven by judging
again.

Tell your editor to start "driploop editor" for YAML files that are records.

`

func newEditor(s *session) *cobra.Command {
	return &cobra.Command{
		Use:     "editor",
		Short:   "Speak the Language Server Protocol to an editor",
		Long:    editorLong + exitHelp,
		Example: `  driploop editor`,
		Args:    cobra.NoArgs,
		RunE:    func(*cobra.Command, []string) error { return s.editor(s.in, s.out) },
	}
}

func (s *session) editor(in io.Reader, out io.Writer) error {
	go func() { _, _ = s.engine() }() // beside the editor's greeting
	by := &judgings{session: s, all: map[string]*judging{}}
	return editor.Serve(in, out, editor.Program{
		Version: version(),
		Judge: func(path string, text []byte, r *record.Record, a *circuit.Analysis) (*verdict.Record, error) {
			j, err := by.of(path)
			if err != nil {
				return nil, err
			}
			judged, err := j.verdicts(path, solved{text: text, record: r, analysis: a})
			return &judged, err
		},
		Page: s.pageInMarkdown,
		Cures: func(path string, text []byte, breach *verdict.Verdict) ([]remedy.Cure, error) {
			j, err := by.of(path)
			if err != nil {
				return nil, err
			}
			return remedy.Of(path, text, func(text []byte) (*remedy.Judged, error) { return j.text(path, text) }, breach)
		},
	})
}

// pageInMarkdown is the page of a rule.
func (s *session) pageInMarkdown(rule string) (string, error) {
	e, err := s.engine()
	if err != nil {
		return "", err
	}
	r, err := e.Rule(rule)
	if err != nil {
		return "", err
	}
	page, err := citer{Engine: e, session: s}.page(r, false)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = reports.RuleMarkdown(&b, page, reports.Options{})
	return b.String(), err
}

// judgings are how the records of an editor are judged, by folder: settings and
// rules of a yard are read when the first record of a folder is opened.
type judgings struct {
	session *session
	mu      sync.Mutex
	all     map[string]*judging
}

func (b *judgings) of(path string) (*judging, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	folder := filepath.Dir(path)
	if j := b.all[folder]; j != nil {
		j.today = time.Now()
		return j, nil
	}
	j, err := b.session.judgingAt(path)
	if err == nil {
		b.all[folder] = j
	}
	return j, err
}
