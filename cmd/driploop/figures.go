package main

import (
	"cmp"
	"errors"
	"io"

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

// The formats of the schedule.
const (
	figuresText = "text"
	figuresCSV  = "csv"
	figuresXLSX = "xlsx"
)

type figuresFlags struct {
	format  choice
	table   choice
	units   choice
	working bool
	at      moment
	output  destination
}

func newFigures(s *session) *cobra.Command {
	f := &figuresFlags{
		format: choice{value: figuresText, words: []string{figuresText, figuresCSV, figuresXLSX}},
		table:  choice{words: reports.Tables()},
		units:  choice{words: quantity.Systems()},
	}
	cmd := &cobra.Command{
		Use:   "figures RECORD",
		Short: "Print the computed schedule of circuits",
		Long:  figuresLong + exitHelp,
		Example: `  driploop figures job.yaml
  driploop figures --working --units metric job.yaml
  driploop figures --format xlsx -o schedule.xlsx job.yaml
  driploop figures --format csv --table labels -o labels.csv job.yaml`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error { return s.figures(args[0], f) },
	}
	flags := cmd.Flags()
	flags.Var(&f.format, "format", "how to print the schedule: "+either(f.format.words)+" (a workbook of all tables)")
	flags.Var(&f.table, "table", "the one table that csv holds: "+either(f.table.words)+" (default: circuits)")
	flags.BoolVar(&f.working, "working", false, "show how each figure was got")
	flags.Var(&f.units, "units", unitsHelp("metric for csv, both for others"))
	f.at.addTo(flags)
	f.output.addTo(flags)
	return cmd
}

func (s *session) figures(path string, f *figuresFlags) error {
	switch format := f.format.value; {
	case f.table.value != "" && format != figuresCSV:
		return errors.New("--table is for --format csv: the other formats hold all tables")
	case f.working && format != figuresText:
		return errors.New("--working is for --format text")
	case format == figuresXLSX && s.terminal.is && !f.output.isFile():
		return errors.New("a workbook is not for a terminal; name a file with -o")
	}
	one, source, err := s.one(path)
	if err != nil {
		return err
	}
	o := s.options(f.units)
	o.At = f.at.Time
	o.Sources = map[string]*reports.Source{path: source}
	if f.output.isFile() {
		o.Colour, o.Width = false, 0
	}
	return s.to(f.output, func(w io.Writer) error {
		switch f.format.value {
		case figuresCSV:
			return reports.ScheduleCSV(w, one.record, one.analysis, cmp.Or(f.table.value, reports.Tables()[0]), o)
		case figuresXLSX:
			return reports.ScheduleXLSX(w, one.record, one.analysis, o)
		}
		return reports.Schedule(w, one.record, one.analysis, reports.ScheduleOptions{Working: f.working, Options: o})
	})
}

// options are those that all reports of a session share.
func (s *session) options(units choice) reports.Options {
	return reports.Options{Units: quantity.System(units.value), Colour: s.terminal.colour(), Width: s.terminal.width}
}
