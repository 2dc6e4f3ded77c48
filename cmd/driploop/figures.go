package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/reports"
)

const figuresLong = `Print the computed schedule of circuits: for each load what feeds it, the
conductors out and back, and the voltage drop by the standards' formula and by
the solved network; for conductors what each may carry and does; for fuses and
breakers the range of fault currents; for conductors the current in each kind of
operating case, faults, opening times and temperatures; for batteries what the
solution took.

A figure that cannot be computed says "open", and the entries that it waits for
are listed. With --working every figure shows its formula, the values that went
in with their places in the record, and the source of the formula; with the ids
of conductors, loads, devices or batteries behind, those of these alone. Format
json holds every figure with its working, and every operating case whole.

`

// The formats of the schedule.
const (
	figuresText = "text"
	figuresCSV  = "csv"
	figuresXLSX = "xlsx"
	figuresJSON = "json"
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
		format: choice{value: figuresText, words: []string{figuresText, figuresJSON, figuresCSV, figuresXLSX}},
		table:  choice{words: reports.Tables()},
		units:  choice{words: quantity.Systems()},
	}
	cmd := &cobra.Command{
		Use:   "figures RECORD [--working [SUBJECT]...]",
		Short: "Print the computed schedule of circuits",
		Long:  figuresLong + exitHelp,
		Example: `  driploop figures job.yaml
  driploop figures --working --units metric job.yaml
  driploop figures job.yaml --working P3 main-fuse
  driploop figures --format xlsx -o schedule.xlsx job.yaml
  driploop figures --format csv --table labels -o labels.csv job.yaml`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 && (f.working || f.format.value == figuresJSON) {
				return nil // subjects
			}
			return exactlyOne("name one record, or - for standard input")(cmd, args)
		},
		RunE: func(_ *cobra.Command, args []string) error { return s.figures(args[0], args[1:], f) },
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

func (s *session) figures(path string, subjects []string, f *figuresFlags) error {
	switch format := f.format.value; {
	case f.table.value != "" && format != figuresCSV:
		return errors.New("--table is for --format csv: the other formats hold all tables")
	case f.working && format != figuresText && format != figuresJSON:
		return errors.New("--working is for --format text; json always holds it")
	case format == figuresXLSX && s.terminal.is && !f.output.isFile():
		return errors.New("a workbook is not for a terminal; name a file with -o")
	}
	one, source, err := s.one(path)
	if err != nil {
		return err
	}
	known := reports.Subjects(one.record, one.analysis)
	for _, id := range subjects {
		_, bare, _ := strings.Cut(id, ".")
		if !slices.Contains(known, id) && !slices.Contains(known, bare) {
			return fmt.Errorf("there are no figures of %q in %s%s", id, path, meant(id, known, ""))
		}
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
		case figuresJSON:
			return reports.ScheduleJSON(w, one.record, one.analysis, subjects, o)
		case figuresXLSX:
			return reports.ScheduleXLSX(w, one.record, one.analysis, o)
		}
		return reports.Schedule(w, one.record, one.analysis, reports.ScheduleOptions{Working: f.working, Subjects: subjects, Options: o})
	})
}

// options are those that all reports of a session share.
func (s *session) options(units choice) reports.Options {
	return reports.Options{Units: quantity.System(units.value), Colour: s.terminal.colour(), Width: s.terminal.width}
}
