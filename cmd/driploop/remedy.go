package main

import (
	"errors"

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
	format := choice{value: "text", words: []string{"text", "json"}}
	write := false
	cmd := &cobra.Command{
		Use:   "remedy RECORD",
		Short: "Say what would clear each breach",
		Long:  remedyLong + exitHelp,
		Example: `  driploop remedy job.yaml
  driploop remedy --write job.yaml
  driploop remedy --format json job.yaml`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error { return s.remedy(args[0], write, format.value, units) },
	}
	cmd.Flags().BoolVar(&write, "write", false, "make the changes in the record")
	cmd.Flags().Var(&format, "format", "how to print the remedies: text or json")
	cmd.Flags().Var(&units, "units", unitsHelp("both for text, metric for json"))
	return cmd
}

func (s *session) remedy(path string, write bool, format string, units choice) error {
	if write && path == yard.StandardInput {
		return errors.New("--write needs a file; standard input cannot be written")
	}
	one, source, err := s.one(path)
	if err != nil {
		return err
	}
	j, err := s.judgingAt(path)
	if err != nil {
		return err
	}
	judge := func(text []byte) (*remedy.Judged, error) { return j.text(path, text) }
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
	if format == "json" {
		return reports.RemediesJSON(s.out, plan, old, write, o)
	}
	return reports.Remedies(s.out, plan, old, write, o)
}
