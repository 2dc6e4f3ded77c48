// Package madeup makes repositories of records up, to try and to time things on.
//
// The mix is invented, but argued. A record that a yard hands in is whole in what
// rules ask, since open questions hold it up: 65 of 100 are whole and in order, 20
// have a fault in one circuit of ten, 10 have that and some entries that nobody
// looked at, 5 are small and of old boats of which little is known. Of those with
// a fault that a foreman can let stand, one in four has a waiver. Four of five
// write what parts have in common once, with anchors, as the records of testdata
// do, since nobody writes the same forty lines a hundred times; the fifth spells
// every part out, as programs do. Sizes are log-normal with a median of 40
// conductors, from 7 to some 600: many jobs are small, and a rewired boat is long.
// In a hundred records two are unusable, torn off or with a slip, and five more
// files are YAML and no records.
package madeup

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// File is one file of a repository.
type File struct {
	Path string // from its root
	Text []byte
	Kind Kind
}

// Kind is what a file is.
type Kind string

// The kinds of files.
const (
	Record Kind = "record" // can be judged
	Broken Kind = "broken" // meant as a record, and unusable
	Stray  Kind = "stray"  // no record
)

// Repository yields the files of a repository with n records, broken ones
// included, in folders of a hundred. The same n gives the same bytes.
func Repository(n int) func(yield func(File) bool) {
	return func(yield func(File) bool) {
		r := rand.New(rand.NewPCG(7, 11)) //nolint:gosec // the same numbers each time are wanted
		for i := range n {
			folder := fmt.Sprintf("%04d", i/100)
			f := File{filepath.Join(folder, fmt.Sprintf("job-%06d.yaml", i)), Job(r, i), Record}
			switch p := r.Float64(); {
			case p < 0.01: // torn off within a line
				f.Kind, f.Text = Broken, append(f.Text[:len(f.Text)*2/3], "\n  - {torn: off"...)
			case p < 0.02:
				f.Kind, f.Text = Broken, bytes.Replace(f.Text, []byte("12 V"), []byte("12 Volts"), 1)
			}
			if !yield(f) {
				return
			}
			if r.IntN(20) == 0 && !yield(File{filepath.Join(folder, fmt.Sprintf("notes-%06d.yaml", i)), []byte("shelf: 3\nparts: [lugs, tape]\n"), Stray}) {
				return
			}
		}
	}
}

// Write writes such a repository into a folder.
func Write(folder string, n int) error {
	for f := range Repository(n) {
		path := filepath.Join(folder, f.Path)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return fmt.Errorf("make up: %w", err)
		}
		if err := os.WriteFile(path, f.Text, 0o600); err != nil {
			return fmt.Errorf("make up: %w", err)
		}
	}
	return nil
}
