package yard

import (
	"path/filepath"
	"slices"

	"github.com/gobwas/glob"

	"driploop/model/verdict"
)

// SettingsName is the name of a yard's settings, at the root of its repository.
const SettingsName = "driploop.yaml"

// Settings is how a yard has its records judged. A nil *Settings is that of a
// yard that has none.
type Settings struct {
	Path string // of the file; empty if there is none
	Root string // folder that the file stands in

	Practice  List // the sets of a record that names none, and beside those of one that does
	Gate      Word
	Complete  Flag
	Units     Word
	Severity  []Change
	Include   []Pattern
	Exclude   []Pattern
	Rules     []Folder
	Documents []Requirement
	Baseline  Word

	rule *verdict.Rule // that the documents make
}

// Word, Flag and List are a setting with its place; the zero place is that of
// one that is not given.
type (
	// Word is a setting of one word.
	Word struct {
		V  string
		At verdict.Position
	}
	// Flag is a setting that is true or false.
	Flag struct {
		V  bool
		At verdict.Position
	}
	// List is a setting of several words.
	List struct {
		V  []string
		At verdict.Position
	}
)

// Change gives the breaches of a rule another severity.
type Change struct {
	Rule   string
	To     verdict.Severity
	Reason string
	At     verdict.Position
}

// Pattern is a pattern of paths below the root.
type Pattern struct {
	Text string
	At   verdict.Position
	glob []*glob.Pattern
}

// Folder is a folder below the root.
type Folder struct {
	Path string // as it is opened
	Text string // as it is written
	At   verdict.Position
}

// Requirement is what the yard wants of the jobs of a kind.
type Requirement struct {
	Kind    string    // of job; "any" for all
	Entries []string  // of the record, that have to be given
	Files   []Pattern // beside the record, of each of which one has to be there
	At      verdict.Position
}

// AnyKind stands for all kinds of job.
const AnyKind = "any"

// is tells whether a path is that of the settings.
func (s *Settings) is(path string) bool {
	return s != nil && s.Path != "" && filepath.Clean(path) == filepath.Clean(s.Path)
}

// isRules tells whether a folder is one of the yard's rules, whose examples are
// no records of jobs.
func (s *Settings) isRules(path string) bool {
	if s == nil {
		return false
	}
	for _, f := range s.Rules {
		if relative, ok := s.relative(path); ok && relative == filepath.ToSlash(filepath.Clean(f.Text)) {
			return true
		}
	}
	return false
}

// inRules tells whether a file lies in a folder of the yard's rules.
func (s *Settings) inRules(path string) bool {
	return slices.ContainsFunc(s.Rules, func(f Folder) bool { return Within(f.Path, path) })
}

// relative is a path as seen from the root, with slashes.
func (s *Settings) relative(path string) (string, bool) {
	whole, err := filepath.Abs(path)
	if err != nil {
		return "", false
	}
	root, err := filepath.Abs(s.Root)
	if err != nil {
		return "", false
	}
	relative, err := filepath.Rel(root, whole)
	return filepath.ToSlash(relative), err == nil
}

// leaves tells whether a file found in a folder is left out.
func (s *Settings) leaves(path string) bool {
	if s == nil || len(s.Include)+len(s.Exclude) == 0 {
		return false
	}
	relative, ok := s.relative(path)
	if !ok {
		return false
	}
	return len(s.Include) > 0 && !matches(s.Include, relative) || matches(s.Exclude, relative)
}

func matches(patterns []Pattern, path string) bool {
	for _, p := range patterns {
		if slices.ContainsFunc(p.glob, func(g *glob.Pattern) bool { return g.Match(path) }) {
			return true
		}
	}
	return false
}
