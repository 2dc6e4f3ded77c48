package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"syscall"
	"time"

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

func (s *session) check(cmd *cobra.Command, args []string, f *checkFlags) error {
	today, err := dayOf(f.today)
	if err != nil {
		return err
	}
	settings, err := s.settle(cmd, args, f)
	if err != nil {
		return err
	}
	s.takeRules(settings)
	if f.settings {
		return s.tellSettings(cmd, settings, f)
	}
	ctx, release := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
	defer release()
	go func() { // beside the reading of the first files
		defer func() { _ = recover() }() // raised again for whoever asks
		_, _ = s.engine()
	}()
	c := &checking{session: s, flags: f, settings: settings, today: today, code: exitClean}
	work := c.run
	switch {
	case f.join:
		work = func(_ context.Context, w io.Writer) error { return c.joinParts(w, args) }
	case f.lines:
		work = c.judgeLines
		stayFlat()
	default:
		if err := errors.Join(c.look(ctx, args), c.share()); err != nil {
			return err
		}
		if len(c.found.Folders) > 0 {
			stayFlat()
		}
	}
	err = errors.Join(s.to(f.output, func(w io.Writer) error { return work(ctx, w) }), c.close())
	if errors.Is(err, errStopped) {
		complain(s.errs, fmt.Sprintf("%s is left as it was", f.output))
		err = nil
	}
	return err
}

// errStopped keeps what was written up to an interruption from becoming a file
// that looks whole.
var errStopped = errors.New("stopped before the end")

// stoppedEarly begins the note of a run that did not come to its end.
const stoppedEarly = "stopped before the end"

// checking is one run of check.
type checking struct {
	*session
	flags    *checkFlags
	settings *yard.Settings
	today    time.Time
	found    yard.Found
	roots    []string // folders that were named, if a part of them is judged
	practice practice
	whole    bool   // results keep the record and what was solved of it
	memory   memory // empty without a cache

	earlier  *yard.Earlier  // nil unless compared with a revision
	baseline *yard.Baseline // nil unless there is one
	draft    yard.Draft     // of a new baseline
	known    known

	stream  reports.Stream
	head    verdict.Run                // of each line of a stream of records
	sources map[string]*reports.Source // of files with faults
	holding map[string]bool            // folders in which a record was found
	looked  int                        // files that were looked at
	judged  int
	faults  []verdict.Fault
	notes   []string
	code    int
}

// run judges what was found and prints it, record by record.
func (c *checking) run(ctx context.Context, w io.Writer) error {
	if err := c.open(w); err != nil {
		return err
	}
	shown := c.progressOf()
	err := inOrder(ctx, slices.Values(c.found.Files), c.judge, func(f yard.File, r result) error {
		shown.add()
		return c.take(f, r)
	})
	shown.end()
	interrupted := errors.Is(err, context.Canceled)
	if err != nil && !interrupted {
		return err
	}
	if interrupted {
		c.notes = append(c.notes, fmt.Sprintf(stoppedEarly+": %d of %d files looked at, %d records judged", c.looked, len(c.found.Files), c.judged))
		complain(c.errs, c.notes[len(c.notes)-1])
	} else {
		c.faults = append(append(c.found.Faults, c.found.Empty(c.holding)...), c.faults...)
		if err := c.writeBaseline(); err != nil {
			return err
		}
	}
	c.summarise()
	if err := c.stream.Close(&verdict.Run{Faults: c.faults, Notes: c.notes}); err != nil {
		return err
	}
	switch {
	case interrupted:
		c.code = exitInterrupted
	case len(c.faults) > 0:
		c.code = max(c.code, exitUnusable)
	}
	c.session.code = max(c.session.code, c.code)
	if interrupted && c.flags.output.isFile() {
		return errStopped
	}
	return nil
}

// open prepares what is the same for all records.
func (c *checking) open(w io.Writer) error {
	e, err := c.engine()
	if err != nil {
		return err
	}
	if c.practice, err = practiceOf(e, c.settings); err != nil {
		return err
	}
	c.sources, c.holding = map[string]*reports.Source{}, map[string]bool{}
	o := c.options(c.flags.units)
	if c.flags.output.isFile() {
		o.Colour, o.Width = false, 0
	}
	o.All, o.Sources, o.At, o.Fails = c.flags.all, c.sources, c.flags.at.Time, c.flags.fails
	c.openMemory(e, o)
	c.stream, err = reports.Open(w, c.flags.format.value, verdict.Run{Version: version(), Rules: e.Digest(), Sources: e.Sources(), Part: c.flags.part.String()}, o)
	return err
}

// take prints the result of one file.
func (c *checking) take(f yard.File, r result) error {
	if r.stray {
		return nil
	}
	if r.runaway != nil {
		return r.runaway
	}
	c.looked++
	c.found.Hold(c.holding, f.Path)
	if r.broken != nil {
		r.broken.report(c.errs)
		c.session.code = exitFault
	}
	if r.failed != nil {
		return r.failed
	}
	if len(r.faults) > 0 {
		c.faults = append(c.faults, r.faults...)
		c.sources[f.Path] = r.source
	}
	if !r.judged {
		return nil
	}
	if r.rendered == nil {
		c.hold(&r.verdicts)
		if err := c.render(&r); err != nil {
			return err
		}
	}
	c.weigh(r.tally)
	return c.stream.Add(*r.rendered)
}

// summarise notes what concerns the run as a whole.
func (c *checking) summarise() {
	if n := c.found.Left; n > 0 {
		c.notes = append(c.notes, leftOut(n, c.settings.Path))
	}
	c.notes = append(c.notes, c.practice.notes()...)
	c.notes = append(c.notes, c.sinceNotes()...)
	c.notes = append(c.notes, c.baselineNotes()...)
}

func leftOut(files int, settings string) string {
	if files == 1 {
		return "1 YAML file was not looked at: " + settings + " leaves it out"
	}
	return fmt.Sprintf("%d YAML files were not looked at: %s leaves them out", files, settings)
}

// fails tells whether a verdict fails the check: a breach at or above the gate,
// and what is undecided if all has to be decided.
func (f *checkFlags) fails(v *verdict.Verdict) bool {
	switch v.Outcome {
	case verdict.Undecided:
		return f.complete
	case verdict.Breach:
		return f.gate.value != yard.GateNone && v.Severity >= f.least()
	}
	return false
}

// least is the mildest severity that the gate stops.
func (f *checkFlags) least() verdict.Severity {
	gate, err := verdict.ParseSeverity(f.gate.value)
	if err != nil {
		panic(err) // the flag takes no other word
	}
	return gate
}

// severityWords lists the signal words, worst first.
func severityWords() []string { return yard.Severities() }

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
