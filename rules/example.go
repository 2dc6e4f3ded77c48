package rules

import (
	"bytes"
	"errors"
	"io/fs"
	"slices"
	"strings"

	"driploop/model/record"
)

// Example shows a rule at work on small records. Open is empty for a rule that
// can always decide.
type Example struct {
	Breach, Cure, Open Part
}

// Part is one record of an example.
type Part struct {
	Says string // one line for readers
	Text string // the record in YAML, marks included
}

// readExample reads the example beside a rule: a breach, its cure and an open
// case, as three YAML documents that each begin with a comment for readers.
func readExample(files fs.FS, name string) (Example, error) {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return Example{}, err
	}
	documents := bytes.Split(text, []byte("\n---\n"))
	if len(documents) != 2 && len(documents) != 3 {
		return Example{}, errors.New(name + `: an example is documents parted by "---": a breach, its cure, and an open case if there can be one`)
	}
	var parts [3]Part
	for i, document := range documents {
		first, _, _ := strings.Cut(string(document), "\n")
		says, ok := strings.CutPrefix(first, "# ")
		if !ok {
			return Example{}, errors.New(name + ": each document of an example begins with a comment that says what it shows")
		}
		parts[i] = Part{Says: says, Text: strings.TrimSuffix(string(document), "\n") + "\n"}
	}
	return Example{Breach: parts[0], Cure: parts[1], Open: parts[2]}, nil
}

// practised adds the practice sets to a record that names none, at its end, so
// that lines keep their numbers, where it would not be judged by all of them
// without.
func practised(text string, sets []string) string {
	lacks := slices.ContainsFunc(sets, func(set string) bool { return !slices.Contains(record.DefaultPractice(), set) })
	if text == "" || !lacks || strings.Contains(text, "\npractice:") {
		return text
	}
	return text + "practice: [" + strings.Join(sets, ", ") + "]\n"
}
