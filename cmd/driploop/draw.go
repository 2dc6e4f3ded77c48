package main

import (
	"io"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/reports"
	"driploop/reports/diagram"
)

const drawLong = `Draw the one-line diagram of an installation as SVG: sources left, loads right,
what distributes between them as a ladder. Each conductor shows size, length and
colour, each penetration stands on the lines that pass it, spaces are bands. What
breaks a rule is marked, and the marks link to the findings listed below.

The drawing is made for the smallest sheet, A4 or A3, on which it can be read.

`

type drawFlags struct {
	check   checkFlags // those that it shares with check
	returns bool
	list    bool
}

func newDraw(s *session) *cobra.Command {
	f := &drawFlags{check: checkFlags{units: choice{value: string(quantity.Metric), words: quantity.Systems()}}}
	cmd := &cobra.Command{
		Use:   "draw RECORD",
		Short: "Draw the one-line diagram as SVG",
		Long:  drawLong + exitHelp,
		Example: `  driploop draw -o job.svg job.yaml
  driploop draw --returns --units us job.yaml > job.svg`,
		Args: exactlyOne("name one record to draw, or - for standard input"),
		RunE: func(cmd *cobra.Command, args []string) error { return s.draw(cmd, args, f) },
	}
	flags := cmd.Flags()
	flags.BoolVar(&f.returns, "returns", false, "draw return and bonding conductors, too")
	flags.BoolVar(&f.list, "findings", true, "list what the marks stand for below the drawing")
	flags.Var(&f.check.units, "units", unitsHelp("metric"))
	f.check.output.addTo(flags)
	flags.StringVar(&f.check.today, "today", "", "the day by which waivers run out, as 2006-01-02 (default: today)")
	flags.StringVar(&f.check.config, "config", "", `the settings of the yard (default: driploop.yaml above RECORD; "none" for none)`)
	return cmd
}

// draw judges a record and draws it.
func (s *session) draw(cmd *cobra.Command, args []string, f *drawFlags) error {
	one, _, err := s.one(args[0])
	if err != nil {
		return err
	}
	j, err := s.judgingFor(cmd, args[0], &f.check)
	if err != nil {
		return err
	}
	judged, err := j.verdicts(args[0], one)
	if err != nil {
		return err
	}
	d := diagram.Lay(one.record, judged.Verdicts, diagram.Options{
		Returns: f.returns, Unlisted: !f.list, Units: quantity.System(f.check.units.value), Caution: reports.Caution,
	})
	return s.to(f.check.output, func(w io.Writer) error { return d.SVG(w) })
}
