package yard

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"driploop/model/record"
	"driploop/model/verdict"
)

// unknownEntry says what is wrong with a path of a required entry, if anything.
func unknownEntry(path string) string {
	known := record.GivenPaths()
	if slices.Contains(known, path) {
		return ""
	}
	return fmt.Sprintf("no entry %q can be required; %s", path, record.Choices(path, known, "these can:"))
}

// Load reads the settings from a file.
func Load(path string) (*Settings, []verdict.Fault) {
	text, err := record.Read(path)
	if err != nil {
		return &Settings{Path: path, Root: filepath.Dir(path)}, []verdict.Fault{{Path: path, Says: Reason(err)}}
	}
	return Read(path, text)
}

// Locate finds the settings of what is to be judged: the file of that name in
// the folder named, or that a file named stands in, or above it, as far up as
// the repository goes. It is empty if there is none. Paths that belong to
// different yards cannot be judged at once.
func Locate(args []string) (string, error) {
	found, first := "", ""
	for _, arg := range args {
		path, err := locate(arg)
		switch {
		case err != nil:
			return "", err
		case first == "":
			found, first = path, arg
		case !same(path, found):
			return "", fmt.Errorf("%s and %s are judged by different settings (%s and %s); judge them one after the other, or name one with --config",
				first, arg, orNone(found), orNone(path))
		}
	}
	return found, nil
}

func orNone(path string) string {
	if path == "" {
		return "none"
	}
	return path
}

func same(a, b string) bool {
	if a == "" || b == "" {
		return a == b
	}
	one, errOne := os.Stat(a)
	two, errTwo := os.Stat(b)
	return errOne == nil && errTwo == nil && os.SameFile(one, two)
}

// locate looks for the settings of one path.
func locate(arg string) (string, error) {
	folder := arg
	if info, err := os.Stat(arg); arg == StandardInput || err == nil && !info.IsDir() || err != nil {
		folder = filepath.Dir(arg)
	}
	for up := filepath.Clean(folder); ; up = parent(up) {
		path := filepath.Join(up, SettingsName)
		switch is, err := isSettings(path); {
		case err != nil:
			return "", err
		case is:
			return path, nil
		}
		if top, err := isTop(up); top || err != nil {
			return "", err
		}
	}
}

// parent is the folder above, named as shortly as the folder itself.
func parent(folder string) string {
	if base := filepath.Base(folder); base == "." || base == ".." {
		return filepath.Join(folder, "..")
	}
	return filepath.Dir(folder)
}

// isSettings tells whether a path is a file of settings: a record by that name is
// a record.
func isSettings(path string) (bool, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, fmt.Errorf("%s: %s", path, Reason(err))
	}
	if info.IsDir() {
		return false, nil
	}
	text, err := record.Read(path)
	if err != nil {
		return false, fmt.Errorf("%s: %s", path, Reason(err))
	}
	return !IsRecord(text), nil
}

// isTop tells whether the search for settings ends at a folder: where a
// repository of git begins, or at the top of the file system.
func isTop(folder string) (bool, error) {
	if _, err := os.Lstat(filepath.Join(folder, ".git")); err == nil {
		return true, nil
	}
	whole, err := filepath.Abs(folder)
	if err != nil {
		return true, fmt.Errorf("%s: %s", folder, Reason(err))
	}
	return whole == filepath.Dir(whole), nil
}
