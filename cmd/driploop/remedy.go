package main

import (
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

const remedyLong = `Seek for each breach the smallest change that clears it without causing another:
the next gauge, another rating, or the one entry that says the work was done.
Each is proven by judging again. Where more copper is one way, its mass is told.

With --write the changes that are a matter of the record alone are made in the
file; comments, order and spelling of all else stay as they are. What was
measured is never touched, and a record that is signed is not written at all:
what belongs to it is listed as work to do.

`

func newRemedy(s *session) *cobra.Command {
	units := choice{words: quantity.Systems()}
	write := false
	cmd := &cobra.Command{
		Use:   "remedy RECORD",
		Short: "Say what would clear each breach",
		Long:  remedyLong + exitHelp,
		Example: `  driploop remedy job.yaml
  driploop remedy --write job.yaml`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error { return s.remedy(args[0], write, units) },
	}
	cmd.Flags().BoolVar(&write, "write", false, "make the changes in the record")
	cmd.Flags().Var(&units, "units", unitsHelp("both"))
	return cmd
}

func (s *session) remedy(path string, write bool, units choice) error {
	if write && path == yard.StandardInput {
		return errors.New("--write needs a file; standard input cannot be written")
	}
	one, source, err := s.one(path)
	if err != nil {
		return err
	}
	today := time.Now()
	judge := func(text []byte) (*remedy.Judged, error) { return s.judged(path, text, today) }
	plan, err := remedy.Find(path, one.text, judge)
	if err != nil {
		return err
	}
	if write && len(plan.Made) > 0 {
		if err := s.rewrite(path, plan.Text); err != nil {
			return err
		}
	}
	old, err := record.Leaves(path, one.text)
	if err != nil {
		return err
	}
	o := s.options(units)
	o.Sources = map[string]*reports.Source{path: source}
	if plan.After.Counts[verdict.Breach] > 0 || !write && len(plan.Made) > 0 {
		s.code = exitBreach
	}
	return reports.Remedies(s.out, plan, old, write, o)
}

// judged reads, solves and judges the text of a record that a program wrote.
func (s *session) judged(name string, text []byte, today time.Time) (*remedy.Judged, error) {
	one, faults := solve(name, text)
	if len(faults) > 0 {
		return nil, fmt.Errorf("%s:%d:%d: %s", name, faults[0].At.Line, faults[0].At.Column, faults[0].Says)
	}
	e, err := s.engine()
	if err != nil {
		return nil, err
	}
	verdicts, err := e.Judge(one.record, one.facts(), today)
	if err != nil {
		return nil, &programFault{err}
	}
	return &remedy.Judged{Record: one.record, Analysis: one.analysis, Verdicts: &verdicts}, nil
}
