package main

import (
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"driploop/model/yard"
)

// part is a share of a run: one of so many, by the names of the files.
type part struct{ one, of int }

// maxParts keeps a slip of the keyboard from passing for a share.
const maxParts = 100000

// String is the word on the command line; empty for the whole.
func (p *part) String() string {
	if p.of == 0 {
		return ""
	}
	return fmt.Sprintf("%d/%d", p.one, p.of)
}

// Type names the kind of value in help texts.
func (p *part) Type() string { return "I/N" }

// Set reads the word.
func (p *part) Set(word string) error {
	left, right, _ := strings.Cut(word, "/")
	one, err := strconv.Atoi(left)
	of, errOf := strconv.Atoi(right)
	if err != nil || errOf != nil || one < 1 || one > of || of > maxParts {
		return errors.New("write the part and how many there are, such as 2/8")
	}
	p.one, p.of = one, of
	return nil
}

// takes tells whether a name falls into the part. It hangs on nothing but the
// name, so that another file moves none.
func (p *part) takes(name string) bool {
	sum := sha256.Sum256([]byte(name))
	return binary.BigEndian.Uint64(sum[:])%uint64(p.of) == uint64(p.one-1)
}

// share leaves of what was found the files of this run's part.
func (c *checking) share() error {
	p := &c.flags.part
	if p.of == 0 {
		return nil
	}
	if c.flags.newBase != "" {
		return errors.New("--write-baseline writes all that stands, and --part judges a part; leave out one")
	}
	c.roots = c.found.Folders
	if len(c.found.Files) > 0 {
		c.found.Folders = nil // that a part of a folder is empty is no fault
	}
	all := len(c.found.Files)
	c.found.Files = slices.DeleteFunc(c.found.Files, func(f yard.File) bool { return !p.takes(c.nameOf(f.Path)) })
	c.notes = append(c.notes, fmt.Sprintf("part %s: %d of %d files", p, len(c.found.Files), all))
	return nil
}

// nameOf is the path of a file from the root of the yard or, where that has no
// settings, from the folder that was named.
func (c *checking) nameOf(path string) string {
	roots := c.roots
	if c.settings.Path != "" {
		roots = []string{c.settings.Root}
	}
	whole, err := filepath.Abs(path)
	if err != nil {
		whole = path
	}
	for _, root := range roots {
		from, err := filepath.Abs(root)
		if err == nil && yard.Within(from, whole) {
			if name, err := filepath.Rel(from, whole); err == nil && name != "." {
				return filepath.ToSlash(name)
			}
		}
	}
	return filepath.ToSlash(filepath.Clean(path))
}
