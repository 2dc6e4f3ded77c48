// Package yard is a repository of records: how they are found, the settings that
// the yard judges them by, what changed between revisions, which breaches were
// there before, and what was judged already.
package yard

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// StandardInput is the argument, and the path in reports, of standard input.
const StandardInput = "-"

// File is one file to judge, not yet read.
type File struct {
	Path  string
	Named bool // by the user, not found in a folder
}

// Found is what some arguments mean.
type Found struct {
	Files   []File // in order of their paths, each once
	Folders []string
	Faults  []verdict.Fault // what cannot be opened
	Left    int             // YAML files that the settings leave out
}

// Find finds the files that arguments mean: files, folders, or - for standard
// input. In folders the settings may leave some out.
func Find(args []string, s *Settings) Found {
	var found Found
	seen := map[string]bool{}
	add := func(f File) {
		if len(args) > 1 { // below one folder a path comes once
			key := filepath.Clean(f.Path)
			if seen[key] {
				return
			}
			seen[key] = true
		}
		found.Files = append(found.Files, f)
	}
	for _, arg := range args {
		if arg == StandardInput {
			add(File{Path: arg, Named: true})
			continue
		}
		info, err := os.Stat(arg)
		switch {
		case err != nil:
			found.Faults = append(found.Faults, verdict.Fault{Path: arg, Says: Reason(err)})
		case info.IsDir():
			found.Folders = append(found.Folders, arg)
			found.walk(arg, s, add)
		default:
			add(File{Path: arg, Named: true})
		}
	}
	slices.SortStableFunc(found.Files, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	return found
}

// Hold notes which folders hold a record.
func (f *Found) Hold(holding map[string]bool, record string) {
	for _, folder := range f.Folders {
		if !holding[folder] && Within(folder, record) {
			holding[folder] = true
		}
	}
}

// Empty returns a fault for each folder that holds no record: nothing judged is
// not the same as nothing wrong.
func (f *Found) Empty(holding map[string]bool) (faults []verdict.Fault) {
	for _, folder := range f.Folders {
		if holding[folder] || slices.ContainsFunc(f.Faults, func(f verdict.Fault) bool { return Within(folder, f.Path) }) {
			continue
		}
		says := `holds no record: no .yaml or .yml file below it has the key "driploop" at its top level`
		if f.Left > 0 {
			says += fmt.Sprintf(" (of YAML files, %d are left out by the settings)", f.Left)
		}
		faults = append(faults, verdict.Fault{Path: folder, Says: says})
	}
	return faults
}

// Within tells whether a path lies in a folder, or is it.
func Within(folder, path string) bool {
	relative, err := filepath.Rel(folder, path)
	return err == nil && relative != ".." && !strings.HasPrefix(relative, ".."+string(filepath.Separator))
}

// walk finds the YAML files below a folder. It does not follow links to
// folders, and leaves out what git keeps for itself.
func (f *Found) walk(folder string, s *Settings, add func(File)) {
	fault := func(path string, err error) {
		f.Faults = append(f.Faults, verdict.Fault{Path: path, Says: Reason(err)})
	}
	// With the separator a link to a folder is followed where it is named.
	err := filepath.WalkDir(folder+string(filepath.Separator), func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			fault(path, err)
		case entry.IsDir():
			if entry.Name() == ".git" || s.isRules(path) {
				return fs.SkipDir
			}
		case !isYAML(path) || !isRegular(path, entry) || s.is(path):
		case s.leaves(path):
			f.Left++
		default:
			add(File{Path: path})
		}
		return nil
	})
	if err != nil {
		fault(folder, err)
	}
}

func isYAML(path string) bool {
	ext := strings.ToLower(filepath.Ext(path))
	return ext == ".yaml" || ext == ".yml"
}

// isRegular tells whether a path is a file, or a link to one; devices and pipes
// in a folder are left alone. A link to nothing counts: reading it says so.
func isRegular(path string, entry fs.DirEntry) bool {
	if entry.Type()&fs.ModeSymlink == 0 {
		return entry.Type().IsRegular()
	}
	info, err := os.Stat(path)
	return err != nil || info.Mode().IsRegular()
}

// Reason is what an error of the file system says, without the path.
func Reason(err error) string {
	var wrapped *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "this may not be read: permission denied"
	case errors.As(err, &wrapped):
		return fmt.Sprintf("cannot be read: %v", wrapped.Err)
	}
	return strings.TrimPrefix(err.Error(), "read record: ")
}
