package main

import (
	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/reports"
)

const figuresLong = `Print the computed schedule of circuits: for each load what feeds it, the
conductors out and back, and the voltage drop by the standards' formula and by
the solved network; for conductors what each may carry and does; for fuses and
breakers the range of fault currents; for batteries what the solution took.

A figure that cannot be computed says "open", and the entries that it waits for
are listed. With --working every figure shows its formula, the values that went
in with their places in the record, and the source of the formula.

`

func newFigures(s *session) *cobra.Command {
	units := choice{words: quantity.Systems()}
	working := false
	cmd := &cobra.Command{
		Use:   "figures RECORD",
		Short: "Print the computed schedule of circuits",
		Long:  figuresLong + exitHelp,
		Example: `  driploop figures job.yaml
  driploop figures --working --units metric job.yaml`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error {
			one, source, err := s.one(args[0])
			if err != nil {
				return err
			}
			o := reports.ScheduleOptions{Working: working, Options: s.options(units)}
			o.Sources = map[string]*reports.Source{args[0]: source}
			return reports.Schedule(s.out, one.record, one.analysis, o)
		},
	}
	cmd.Flags().BoolVar(&working, "working", false, "show how each figure was got")
	cmd.Flags().Var(&units, "units", unitsHelp("both"))
	return cmd
}

// options are those that all reports of a session share.
func (s *session) options(units choice) reports.Options {
	return reports.Options{Units: quantity.System(units.value), Colour: s.terminal.colour(), Width: s.terminal.width}
}
