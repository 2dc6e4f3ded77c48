package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"driploop/model/record"
	"driploop/model/verdict"
)

// standardInput is the argument, and the path in reports, of standard input.
const standardInput = "-"

// file is one record to judge, not yet read.
type file struct {
	path  string
	named bool // on the command line, not found in a folder
}

// gathered is what the arguments of a command line mean.
type gathered struct {
	files   []file // in order of their paths, each once
	folders []string
	faults  []verdict.Fault // what cannot be opened
}

// gather finds the files that the arguments mean.
func gather(args []string) gathered {
	var g gathered
	seen := map[string]bool{}
	add := func(f file) {
		if key := filepath.Clean(f.path); !seen[key] {
			seen[key] = true
			g.files = append(g.files, f)
		}
	}
	for _, arg := range args {
		if arg == standardInput {
			add(file{path: arg, named: true})
			continue
		}
		info, err := os.Stat(arg)
		switch {
		case err != nil:
			g.faults = append(g.faults, verdict.Fault{Path: arg, Says: reason(err)})
		case info.IsDir():
			g.folders = append(g.folders, arg)
			g.faults = append(g.faults, walk(arg, add)...)
		default:
			add(file{path: arg, named: true})
		}
	}
	slices.SortStableFunc(g.files, func(a, b file) int { return strings.Compare(a.path, b.path) })
	return g
}

// empty returns a fault for each folder in which no record was found: nothing
// judged is not the same as nothing wrong.
func (g gathered) empty(results []result) (faults []verdict.Fault) {
	for _, folder := range g.folders {
		found := slices.ContainsFunc(g.faults, func(f verdict.Fault) bool { return within(folder, f.Path) })
		for i, r := range results {
			found = found || !r.stray && within(folder, g.files[i].path)
		}
		if !found {
			faults = append(faults, verdict.Fault{
				Path: folder, Says: `holds no record: no .yaml or .yml file below it has the key "driploop" at its top level`,
			})
		}
	}
	return faults
}

// within tells whether a path lies in a folder, or is it.
func within(folder, path string) bool {
	relative, err := filepath.Rel(folder, path)
	return err == nil && relative != ".." && !strings.HasPrefix(relative, ".."+string(filepath.Separator))
}

// walk finds the YAML files below a folder. It does not follow links to
// folders, and leaves out what git keeps for itself.
func walk(folder string, add func(file)) (faults []verdict.Fault) {
	// With the separator a link to a folder is followed where it is named.
	err := filepath.WalkDir(folder+string(filepath.Separator), func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			faults = append(faults, verdict.Fault{Path: path, Says: reason(err)})
			return nil
		}
		if entry.IsDir() {
			if entry.Name() == ".git" {
				return fs.SkipDir
			}
			return nil
		}
		if isYAML(path) && isRegular(path, entry) {
			add(file{path: path})
		}
		return nil
	})
	if err != nil {
		faults = append(faults, verdict.Fault{Path: folder, Says: reason(err)})
	}
	return faults
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

// reason is what an error of the file system says, without the path.
func reason(err error) string {
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

// recordLine begins a record: the key "driploop" at the start of a line.
var recordLine = regexp.MustCompile(`(?m)^(?:\x{feff})?["']?driploop["']?[ \t]*:`)

// isRecord tells whether the text of a YAML file found in a folder is a record:
// one whose top level has the key "driploop". A text that cannot be parsed is
// one if a line of it begins with that key.
func isRecord(text []byte) bool {
	word := []byte("driploop")
	switch {
	case recordLine.Match(text):
		return true
	case bytes.Contains(text, word):
		return hasTopLevelKey(text)
	}
	// As UTF-16, which is refused with a clear error later.
	return bytes.IndexByte(text, 0) >= 0 && bytes.Contains(bytes.ReplaceAll(text, []byte{0}, nil), word)
}

func hasTopLevelKey(text []byte) bool {
	var document yaml.Node
	if yaml.Unmarshal(text, &document) != nil || len(document.Content) == 0 {
		return false
	}
	top := document.Content[0]
	if top.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i < len(top.Content); i += 2 {
		if top.Content[i].Value == "driploop" {
			return true
		}
	}
	return false
}

// read returns the text of a file, or of standard input.
func (s *session) read(path string) ([]byte, error) {
	if path == standardInput {
		return record.ReadFrom("standard input", s.in)
	}
	return record.Read(path)
}

// beginning returns the first part of a file that is too large for a record.
func beginning(path string) []byte {
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, 64<<10))
	if err != nil {
		return nil
	}
	return text
}
