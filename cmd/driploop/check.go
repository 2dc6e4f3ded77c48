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

	"driploop/model/facts"
	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

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
	builders spares[facts.Builder]

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

// listsMet tells whether anything that is made of a record lists what is met of it.
func (c *checking) listsMet() bool {
	return c.whole || reports.Options{All: c.flags.all}.ListsMet(c.flags.format.value)
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
