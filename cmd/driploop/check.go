package main

import (
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
)

const checkLong = `Judge installation records: every rule on every part of the job that it
concerns. Each verdict is met, breached, undecided (with what is missing), not
applicable, or waived.

PATH is a record, a folder, or - for standard input. In folders, below too,
every .yaml or .yml file is judged whose top level has the key "driploop"; other
files are not records and are passed over. A record that cannot be used is listed
with what is wrong and where, and the others are judged all the same.

`

const checkExample = `  driploop check job.yaml
  driploop check --gate danger --complete records/
  driploop check --format json records/ > verdicts.json
  driploop check --all --units us job.yaml
  cat job.yaml | driploop check -`

// gateNone lets every breach pass.
const gateNone = "none"

type checkFlags struct {
	format   choice
	gate     choice
	units    choice
	complete bool
	all      bool
	today    string
}

func newCheck(s *session) *cobra.Command {
	f := &checkFlags{
		format: choice{value: "text", words: reports.FormatNames()},
		gate:   choice{value: verdict.Warning.String(), words: append(severityWords(), gateNone)},
		units:  choice{words: quantity.Systems()},
	}
	cmd := &cobra.Command{
		Use:     "check PATH...",
		Short:   "Judge records: files, folders, or - for standard input",
		Long:    checkLong + exitHelp,
		Example: checkExample,
		Args:    atLeastOne("name a record, a folder, or - for standard input"),
		RunE:    func(_ *cobra.Command, args []string) error { return s.check(args, f) },
	}
	flags := cmd.Flags()
	flags.Var(&f.format, "format", "how to print the verdicts: "+either(f.format.words))
	flags.Var(&f.gate, "gate", "the least severity of a breach that fails the check: "+either(f.gate.words))
	flags.BoolVar(&f.complete, "complete", false, "fail if anything is undecided, too")
	flags.BoolVar(&f.all, "all", false, "list what is met and what does not apply, too")
	flags.Var(&f.units, "units", unitsHelp("both for text, metric for json"))
	flags.StringVar(&f.today, "today", "", "the day by which waivers run out, as 2006-01-02 (default: today)")
	return cmd
}

func (s *session) check(args []string, f *checkFlags) error {
	today, err := dayOf(f.today)
	if err != nil {
		return err
	}
	g := gather(args)
	results := s.judgeAll(g.files, today)
	run, sources, err := s.collect(g, results)
	if err != nil {
		return err
	}
	if err := reports.Write(s.out, f.format.value, run, reports.Options{
		Units: quantity.System(f.units.value), All: f.all, Colour: s.terminal.colour(), Width: s.terminal.width, Sources: sources,
	}); err != nil {
		return err
	}
	s.code = max(s.code, exitCode(run, f))
	return nil
}

// collect puts the results of all files into one run.
func (s *session) collect(g gathered, results []result) (*verdict.Run, map[string]*reports.Source, error) {
	e, err := s.engine()
	if err != nil {
		return nil, nil, err
	}
	run := &verdict.Run{Version: version(), Rules: e.Digest(), Faults: append(g.faults, g.empty(results)...)}
	sources := map[string]*reports.Source{}
	for i, r := range results {
		if r.judged {
			run.Records = append(run.Records, r.verdicts)
		}
		run.Faults = append(run.Faults, r.faults...)
		if r.source != nil {
			sources[g.files[i].path] = r.source
		}
		if r.broken != nil {
			r.broken.report(s.errs)
			s.code = exitFault
		}
	}
	return run, sources, nil
}

// exitCode is what the verdicts come to under the gate.
func exitCode(run *verdict.Run, f *checkFlags) int {
	if len(run.Faults) > 0 {
		return exitUnusable
	}
	for i := range run.Records {
		if fails(&run.Records[i], f) {
			return exitBreach
		}
	}
	return exitClean
}

func fails(rec *verdict.Record, f *checkFlags) bool {
	if f.complete && rec.Counts[verdict.Undecided] > 0 {
		return true
	}
	if f.gate.value == gateNone {
		return false
	}
	gate, err := verdict.ParseSeverity(f.gate.value)
	if err != nil {
		panic(err) // the flag takes no other word
	}
	for i := range rec.Verdicts {
		if v := &rec.Verdicts[i]; v.Outcome == verdict.Breach && v.Severity >= gate {
			return true
		}
	}
	return false
}

// severityWords lists the signal words, worst first.
func severityWords() []string {
	return []string{verdict.Danger.String(), verdict.Warning.String(), verdict.Caution.String(), verdict.Notice.String()}
}

func unitsHelp(byDefault string) string {
	return "units to print in: " + either(quantity.Systems()) + " (default: " + byDefault + ")"
}

// dayOf reads a day; empty means today.
func dayOf(text string) (time.Time, error) {
	if text == "" {
		return time.Now(), nil
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return day, fmt.Errorf("--today %q is no day; write it as year-month-day, such as 2026-06-18", text)
	}
	return day, nil
}

// atLeastOne refuses a command line without arguments, saying what to name.
func atLeastOne(says string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return fmt.Errorf("%s: %s; see %s --help", cmd.CommandPath(), says, cmd.CommandPath())
		}
		return nil
	}
}

// exactlyOne refuses any other number of arguments than one.
func exactlyOne(says string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) != 1 {
			return fmt.Errorf("%s: %s, not %d; see %s --help", cmd.CommandPath(), says, len(args), cmd.CommandPath())
		}
		return nil
	}
}
