package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

// joining makes one run of the parts of one, each a file of --format json, and
// holds no more of each than one record.
type joining struct {
	*checking
	parts []*partFile
	ended []*partFile // in the order of their ends
	count int
}

// joinParts writes the whole run, as check writes it, and holds it to the gate.
func (c *checking) joinParts(w io.Writer, paths []string) (err error) {
	j := joining{checking: c}
	defer func() {
		for _, p := range slices.Concat(j.parts, j.ended) {
			err = errors.Join(err, p.file.Close())
		}
	}()
	if err := j.open(paths); err != nil {
		return err
	}
	out := reports.JoinJSON(w, verdict.Run{Version: j.parts[0].tool.Version, Rules: j.parts[0].tool.Rules})
	for len(j.parts) > 0 {
		text, err := j.next()
		if err != nil {
			return err
		}
		if text != nil {
			out.Add(text)
		}
	}
	rest := j.rest()
	if len(rest.Faults) > 0 {
		c.code = max(c.code, exitUnusable)
	}
	c.session.code = max(c.session.code, c.code)
	return out.Close(rest)
}

// open opens the files of the parts, which have to make a whole.
func (j *joining) open(paths []string) error {
	for _, path := range paths {
		p, err := openPart(path)
		if err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
		j.parts = append(j.parts, p)
	}
	return makeWhole(j.parts)
}

// next returns the next record of all parts, by path; nil where a part ends.
func (j *joining) next() ([]byte, error) {
	first := slices.MinFunc(j.parts, func(a, b *partFile) int {
		return cmp.Or(strings.Compare(a.record.Path, b.record.Path), a.part.one-b.part.one)
	})
	text := first.text
	if text != nil {
		j.count++
		for _, v := range first.record.Verdicts {
			if j.flags.fails(&verdict.Verdict{Outcome: v.Outcome, Severity: v.Severity}) {
				j.code = max(j.code, exitBreach)
			}
		}
	}
	if err := first.advance(); err != nil {
		return nil, fmt.Errorf("%s: %w", first.path, err)
	}
	if first.text == nil {
		j.parts = slices.DeleteFunc(j.parts, func(p *partFile) bool { return p == first })
		j.ended = append(j.ended, first)
	}
	return text, nil
}

// rest is what is told of the run as a whole. What several parts say of a file is
// told once; a note is that of its part.
func (j *joining) rest() *verdict.Run {
	run := &verdict.Run{}
	slices.SortFunc(j.ended, func(a, b *partFile) int { return a.part.one - b.part.one })
	for _, p := range j.ended {
		for _, e := range p.errors {
			f := verdict.Fault{Path: e.Path, At: verdict.Position{Line: e.Line, Column: e.Column}, Says: e.Says}
			if !slices.Contains(run.Faults, f) {
				run.Faults = append(run.Faults, f)
			}
		}
		own := "part " + p.part.String() + ": "
		for _, note := range p.notes {
			if !strings.HasPrefix(note, own) {
				run.Notes = append(run.Notes, own+note)
			}
		}
	}
	if j.count == 0 && len(run.Faults) == 0 {
		run.Faults = append(run.Faults, verdict.Fault{Path: j.ended[0].path, Says: "neither this part nor another holds a record"})
	}
	return run
}

// makeWhole tells whether parts make a whole that was judged by the same rules.
func makeWhole(parts []*partFile) error {
	of := parts[0].part.of
	seen := map[int]string{}
	for _, p := range parts {
		switch other := seen[p.part.one]; {
		case p.part.of != of:
			return fmt.Errorf("%s is part %s, and %s part %s: these are not parts of one run", parts[0].path, &parts[0].part, p.path, &p.part)
		case p.tool != parts[0].tool:
			return fmt.Errorf("%s and %s were judged by different rules or programs", parts[0].path, p.path)
		case other != "":
			return fmt.Errorf("%s and %s are both part %s", other, p.path, &p.part)
		}
		seen[p.part.one] = p.path
	}
	for one := 1; one <= of; one++ {
		if seen[one] == "" {
			return fmt.Errorf("part %d/%d is missing", one, of)
		}
	}
	return nil
}

// joinArgs are what check --join takes.
func joinArgs(cmd *cobra.Command, args []string) error {
	for _, other := range []string{"since", "staged", "baseline", "write-baseline", "part", "lines", "all", "units", "format"} {
		if flag := cmd.Flags().Lookup(other); flag.Changed && flag.Value.String() != "json" {
			return fmt.Errorf("--%s does not go with --join, which takes the verdicts as they are and writes them as JSON", other)
		}
	}
	if slices.Contains(args, yard.StandardInput) {
		return errors.New("--join reads files; name that of each part")
	}
	return atLeastOne("name the file of each part")(cmd, args)
}

// partRecord is what joining has to know of a record.
type partRecord struct {
	Path     string
	Verdicts []struct {
		Outcome  verdict.Outcome
		Severity verdict.Severity
	}
}

var errNoPart = errors.New("is no part of a run: write one with driploop check --part I/N --format json -o FILE")

// unmarshalRecord reads it.
func unmarshalRecord(text json.RawMessage) (r partRecord, err error) {
	if err = json.Unmarshal(text, &r); err == nil && r.Path == "" {
		err = errNoPart
	}
	return r, err
}
