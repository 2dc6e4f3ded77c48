package main

import (
	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

const checkLong = `Judge installation records: every rule on every part of the job that it
concerns. Each verdict is met, breached, undecided (with what is missing), not
applicable, or waived.

PATH is a record, a folder, or - for standard input. In folders, below too,
every .yaml or .yml file is judged whose top level has the key "driploop"; other
files are not records and are passed over. A record that cannot be used is listed
with what is wrong and where, and the others are judged all the same.

A yard keeps its settings in driploop.yaml at the root of its repository. A flag
goes before the settings; --settings tells what holds and where it comes from.

With --lines standard input is a stream of records, one a line: an object of JSON
{"path": NAME, "text": YAML}, or the record itself as such an object. Each line
is answered by one line, in order: an entry of "records" of --format json with
the number of the line or, of a line that cannot be used, its "errors".

`

const checkExample = `  driploop check job.yaml
  driploop check --gate danger --complete records/
  driploop check --format sarif -o verdicts.sarif records/
  driploop check --all --units us job.yaml
  driploop check --settings .
  cat job.yaml | driploop check -
  driploop check --lines < records.jsonl > verdicts.jsonl`

type checkFlags struct {
	format   choice
	gate     choice
	units    choice
	complete bool
	all      bool
	today    string
	config   string
	settings bool
	at       moment
	output   destination
	since    string
	staged   bool
	baseline string
	newBase  string
	lines    bool
	part     part
	join     bool
	cache    string
	cacheMiB int
	noCache  bool
}

func newCheck(s *session) *cobra.Command {
	f := &checkFlags{
		format: choice{value: "text", words: reports.FormatNames()},
		gate:   choice{value: verdict.Warning.String(), words: append(severityWords(), yard.GateNone)},
		units:  choice{words: quantity.Systems()},
	}
	cmd := &cobra.Command{
		Use:     "check PATH...",
		Short:   "Judge records: files, folders, or - for standard input",
		Long:    checkLong + exitHelp,
		Example: checkExample,
		Args:    checkArgs(f),
		RunE:    func(cmd *cobra.Command, args []string) error { return s.check(cmd, args, f) },
	}
	flags := cmd.Flags()
	flags.Var(&f.format, "format", "how to print the verdicts: "+either(f.format.words))
	flags.Var(&f.gate, "gate", "the least severity of a breach that fails the check: "+either(f.gate.words))
	flags.BoolVar(&f.complete, "complete", false, "fail if anything is undecided, too")
	flags.BoolVar(&f.all, "all", false, "list what is met and what does not apply, too")
	flags.Var(&f.units, "units", unitsHelp("both for text and md, metric for others"))
	f.at.addTo(flags)
	f.output.addTo(flags)
	flags.StringVar(&f.today, "today", "", "the day by which waivers run out, as 2006-01-02 (default: today)")
	flags.StringVar(&f.config, "config", "", `the settings of the yard (default: driploop.yaml above PATH; "none" for none)`)
	flags.BoolVar(&f.settings, "settings", false, "tell the settings that hold, and where each comes from, and judge nothing")
	flags.StringVar(&f.since, "since", "", "report only what is new, worse or newly undecided since a revision of git, and what is cured")
	flags.BoolVar(&f.staged, "staged", false, "with --since: judge what is staged for the next commit, not what lies in the folders")
	flags.StringVar(&f.baseline, "baseline", "", "a file of verdicts that stood before, which are counted and do not fail the check")
	flags.StringVar(&f.cache, "cache", "", "folder for what was judged, so that it is not judged again (default: in the user's cache folder)")
	flags.IntVar(&f.cacheMiB, "cache-limit", yard.CacheLimit>>20, "MiB that the cache may take; what was of no use for longest goes first")
	flags.BoolVar(&f.noCache, "no-cache", false, "judge all anew")
	flags.StringVar(&f.newBase, "write-baseline", "", "write such a file of what stands now")
	flags.Var(&f.part, "part", "judge one part of the files of so many, such as 2/8; a file stays in its part whatever else comes or goes")
	flags.BoolVar(&f.join, "join", false, "make one run of the JSON files of all its parts, and hold it to the gate")
	flags.BoolVar(&f.lines, "lines", false, "judge a stream of records, one a line as JSON, and write a line of JSON for each, in the same order")
	return cmd
}
