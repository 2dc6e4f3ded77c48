package yard

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"driploop/model/record"
	"driploop/model/verdict"
)

// Earlier is an earlier state of a repository, with which the state of now is
// compared. Close it.
type Earlier struct {
	Name string // as a reader is told: what was asked for, and the commit

	repo   *repository
	blobs  *blobs
	staged bool
	byNew  map[string]entry // what differs, by its path from the top
	mu     sync.Mutex
	gone   map[string][]gone // records that are there no longer, by the number of their job
}

// gone is a record that is there no longer.
type gone struct {
	path string
	text []byte
}

// Since looks up what changed since a revision: since it and HEAD parted. With
// staged the state of now is what is staged for the next commit, else what lies
// in the folders.
func Since(ctx context.Context, revision string, staged bool, args []string) (*Earlier, error) {
	folder := args[0]
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		folder = filepath.Dir(folder)
	}
	if folder == StandardInput {
		return nil, errors.New("standard input has no revisions; name a folder")
	}
	repo, err := openRepository(ctx, folder)
	if err != nil {
		return nil, err
	}
	base, err := repo.base(revision)
	if err != nil {
		return nil, err
	}
	changed, err := repo.changed(base, staged)
	if err != nil {
		return nil, err
	}
	e := &Earlier{
		Name: revision + " (" + base[:min(10, len(base))] + ")", repo: repo, staged: staged,
		byNew: make(map[string]entry, len(changed)), gone: map[string][]gone{},
	}
	if e.blobs, err = repo.blobs(); err != nil {
		return nil, err
	}
	for _, c := range changed {
		if c.status == 'D' {
			if err := e.lost(c, args); err != nil {
				return nil, errors.Join(err, e.Close())
			}
			continue
		}
		e.byNew[c.new] = c
	}
	return e, nil
}

// lost notes a record that is there no longer.
func (e *Earlier) lost(c entry, args []string) error {
	path := filepath.Join(e.repo.top, filepath.FromSlash(c.old))
	named := slices.ContainsFunc(args, func(arg string) bool {
		below, err := e.repo.below(arg)
		return err == nil && Within(below, c.old)
	})
	if c.was == "" || !named || !isYAML(path) {
		return nil
	}
	text, err := e.blobs.read(c.was)
	if errors.Is(err, record.ErrTooLarge) {
		return nil
	}
	if err != nil {
		return err
	}
	if !IsRecord(text) {
		return nil
	}
	r, _ := record.Decode(c.old, text)
	e.gone[r.Job.Number.V] = append(e.gone[r.Job.Number.V], gone{c.old, text})
	return nil
}

// Close ends what was started.
func (e *Earlier) Close() error {
	if err := e.blobs.close(); e.repo.ctx.Err() == nil {
		return err
	}
	return nil // it was stopped
}

// Changed keeps of files those that changed.
func (e *Earlier) Changed(files []File) ([]File, error) {
	var all []File
	for _, f := range files {
		below, err := e.repo.below(f.Path)
		if err != nil {
			return nil, err
		}
		if _, is := e.byNew[below]; is {
			all = append(all, f)
		}
	}
	return all, nil
}

// SettingsChanged tells whether settings, or the yard's own rules, are not what
// they were.
func (e *Earlier) SettingsChanged(s *Settings) bool {
	var paths []string
	if s.Path != "" {
		paths = append(paths, s.Path)
	}
	for _, f := range s.Rules {
		paths = append(paths, f.Path)
	}
	for _, path := range paths {
		below, err := e.repo.below(path)
		if err != nil {
			continue
		}
		for changed := range e.byNew {
			if Within(below, changed) {
				return true
			}
		}
	}
	return false
}

// Now returns the text of a file in the state of now: as it is staged, or as it
// lies in the folder.
func (e *Earlier) Now(path string, read func(string) ([]byte, error)) ([]byte, error) {
	if !e.staged {
		return read(path)
	}
	below, err := e.repo.below(path)
	if err != nil {
		return nil, err
	}
	return e.blobs.read(e.byNew[below].is)
}

// Was returns what a record was: under its path, under the path that it was
// renamed from, or under any path if its job has the same number. The text is
// nil if there was none.
func (e *Earlier) Was(path, job string) (from string, text []byte, err error) {
	below, err := e.repo.below(path)
	if err != nil {
		return "", nil, err
	}
	if c := e.byNew[below]; c.was != "" && c.status != 'C' {
		text, err = e.blobs.read(c.was)
		return c.old, text, err
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	if list := e.gone[job]; job != "" && len(list) == 1 {
		delete(e.gone, job)
		return list[0].path, list[0].text, nil
	}
	return "", nil, nil
}

// Same tells whether a path is the one that, from the top of the repository, is
// named so.
func (e *Earlier) Same(path, from string) bool {
	below, err := e.repo.below(path)
	return err == nil && below == from
}

// Notes says which records are there no longer.
func (e *Earlier) Notes() []string {
	var paths []string
	for _, list := range e.gone {
		for _, g := range list {
			paths = append(paths, g.path)
		}
	}
	if len(paths) == 0 {
		return nil
	}
	slices.Sort(paths)
	return []string{fmt.Sprintf("gone since %s, not cured: %s", e.Name, strings.Join(paths, ", "))}
}

// Staged lists the YAML files that are staged, below some paths and as seen from
// the current folder.
func (e *Earlier) Staged(args []string, s *Settings) ([]File, error) {
	here, err := filepath.Abs(".")
	if err != nil {
		return nil, fmt.Errorf("the current folder: %w", err)
	}
	if here, err = filepath.EvalSymlinks(here); err != nil {
		return nil, fmt.Errorf("the current folder: %w", err)
	}
	var all []File
	for below, c := range e.byNew {
		path, err := filepath.Rel(here, filepath.Join(e.repo.top, filepath.FromSlash(below)))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", below, err)
		}
		in := slices.ContainsFunc(args, func(arg string) bool {
			from, err := e.repo.below(arg)
			return err == nil && Within(from, below)
		})
		if in && c.is != "" && isYAML(path) && !s.is(path) && !s.leaves(path) && !s.inRules(path) {
			all = append(all, File{Path: path})
		}
	}
	slices.SortFunc(all, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	return all, nil
}

// Compare keeps of the verdicts of a record those that are new, worse or newly
// undecided since an earlier state of it, nil if there was none, and lists what
// is cured.
func Compare(now, was *verdict.Record, since string) {
	type key struct{ rule, id string }
	before := map[key]*verdict.Verdict{}
	if was != nil {
		for i := range was.Verdicts {
			v := &was.Verdicts[i]
			k := key{v.Rule.ID, v.ID}
			if o := before[k]; o == nil || weight(v) > weight(o) {
				before[k] = v
			}
		}
	}
	now.Since = since
	kept := []verdict.Verdict{}
	for i := range now.Verdicts {
		v := &now.Verdicts[i]
		k := key{v.Rule.ID, v.ID}
		if v.Change = changeOf(v, before[k]); v.Change != "" {
			kept = append(kept, *v)
		}
		if weight(v) > 0 {
			delete(before, k)
		}
	}
	now.Verdicts = kept
	if was == nil {
		return
	}
	for i := range was.Verdicts {
		v := &was.Verdicts[i]
		if before[key{v.Rule.ID, v.ID}] == v && weight(v) > 0 {
			now.Cured = append(now.Cured, verdict.Cured{
				Rule: v.Rule, Outcome: v.Outcome, Severity: v.Severity, Subject: v.Subject, Fingerprint: v.Fingerprint(was.Job),
			})
		}
	}
}

// weight orders what stands against a record.
func weight(v *verdict.Verdict) int {
	switch v.Outcome {
	case verdict.Breach:
		return 3
	case verdict.Undecided:
		return 2
	case verdict.Waived:
		return 1
	}
	return 0
}

// changeOf tells how a verdict differs from what it was; nil if it was not.
func changeOf(v, was *verdict.Verdict) verdict.Change {
	held := was != nil && was.Outcome == v.Outcome
	switch v.Outcome {
	case verdict.Breach:
		switch {
		case !held:
			return verdict.New
		case v.Severity > was.Severity || v.Severity == was.Severity && v.Beyond() > was.Beyond()*(1+1e-9):
			return verdict.Worse
		}
	case verdict.Undecided:
		if !held {
			return verdict.NewlyUndecided
		}
	case verdict.Waived:
		if !held {
			return verdict.New
		}
	}
	return ""
}
