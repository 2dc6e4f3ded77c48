package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"driploop/model/remedy"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/rules"
)

// judging judges single records as check does: by the rules, practice sets,
// severities and documents of their yard.
type judging struct {
	rules    *rules.Engine
	practice practice
	today    time.Time
}

// judgingFor is how the record of a command that takes one is judged, with its
// flags before the settings.
func (s *session) judgingFor(cmd *cobra.Command, path string, f *checkFlags) (*judging, error) {
	today, err := dayOf(f.today)
	if err != nil {
		return nil, err
	}
	settings, err := s.settle(cmd, []string{path}, f)
	if err != nil {
		return nil, err
	}
	return s.judgingBy(settings, today)
}

// judgingAt is how a record at a path is judged today; a record that has no path
// yet, by the settings of the folder that the program works in.
func (s *session) judgingAt(path string) (*judging, error) {
	if path == "" || path == yard.StandardInput {
		path = "."
	}
	if _, err := os.Stat(path); err != nil { // not written yet
		path = filepath.Dir(path)
	}
	found, err := yard.Locate([]string{path})
	if err != nil {
		return nil, err
	}
	settings := &yard.Settings{}
	if found != "" {
		var faults []verdict.Fault
		if settings, faults = yard.Load(found); len(faults) > 0 {
			f := faults[0]
			return nil, fmt.Errorf("%s:%d:%d: %s", f.Path, f.At.Line, f.At.Column, f.Says)
		}
	}
	return s.judgingBy(settings, time.Now())
}

func (s *session) judgingBy(settings *yard.Settings, today time.Time) (*judging, error) {
	e, err := s.engineFor(settings)()
	if err != nil {
		return nil, err
	}
	p, err := practiceOf(e, settings)
	if err != nil {
		return nil, err
	}
	return &judging{rules: e, practice: p, today: today}, nil
}

// verdicts judges a solved record and returns what stands against it.
func (j *judging) verdicts(path string, one solved) (verdict.Record, error) {
	doc := one.facts()
	doc.Practice = j.practice.inForce(doc.Practice, one.record.Practice.At().Start.Line > 0)
	judged, err := j.rules.JudgeBriefly(one.record, doc, j.today)
	if err != nil {
		return verdict.Record{}, &programFault{err}
	}
	settings := j.practice.settings
	out := result{verdicts: judged, source: reports.NewSource(one.text, one.record.Places.Find)}
	out.ask(settings.RequiredEntries(one.record))
	out.ask(settings.RequiredFiles(judged.Kind, path, one.record.Places.At("job")))
	j.practice.recast(&out.verdicts)
	return out.verdicts, nil
}

// text reads, solves and judges the text of a record.
func (j *judging) text(path string, text []byte) (*remedy.Judged, error) {
	one, faults := solve(path, text)
	if len(faults) > 0 {
		return nil, fmt.Errorf("%s:%d:%d: %s", path, faults[0].At.Line, faults[0].At.Column, faults[0].Says)
	}
	verdicts, err := j.verdicts(path, one)
	if err != nil {
		return nil, err
	}
	return &remedy.Judged{Record: one.record, Analysis: one.analysis, Verdicts: &verdicts}, nil
}
