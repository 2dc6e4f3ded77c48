package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

// checkArgs are what check takes: paths, with --lines standard input, or with
// --join the files of parts.
func checkArgs(f *checkFlags) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if f.join {
			return joinArgs(cmd, args)
		}
		if !f.lines {
			return atLeastOne("name a record, a folder, or - for standard input")(cmd, args)
		}
		if len(args) > 1 || len(args) == 1 && args[0] != yard.StandardInput {
			return errors.New("--lines reads standard input; leave out other paths")
		}
		for _, other := range []string{"since", "staged", "write-baseline", "format", "part"} {
			if cmd.Flags().Changed(other) {
				return fmt.Errorf("--%s does not go with --lines, which writes a line of JSON for each line that it is given", other)
			}
		}
		return nil
	}
}

// judgeLines judges the records of a stream, one a line, and writes a line for
// each as soon as it and those before it are judged.
func (c *checking) judgeLines(ctx context.Context, w io.Writer) error {
	if err := c.openBaseline(); err != nil {
		return err
	}
	e, err := c.engine()
	if err != nil {
		return err
	}
	if c.practice, err = practiceOf(e, c.settings); err != nil {
		return err
	}
	c.head = verdict.Run{Version: version(), Rules: e.Digest()}
	from := newLineReader(c.in)
	err = inOrder(ctx, from.all, c.judgeLine, func(l line, r result) error {
		if err := c.takeLine(l, &r); err != nil {
			return err
		}
		_, err := w.Write(r.rendered.Text)
		return err
	})
	interrupted := errors.Is(err, context.Canceled)
	if err != nil && !interrupted {
		return err
	}
	if interrupted {
		c.code = exitInterrupted
		complain(c.errs, fmt.Sprintf("stopped before the end: %d records judged", c.judged))
	} else if from.err != nil {
		return fmt.Errorf("standard input cannot be read beyond line %d: %w", from.number, from.err)
	}
	c.summarise()
	for _, note := range c.notes {
		complain(c.errs, note)
	}
	c.session.code = max(c.session.code, c.code)
	if interrupted && c.flags.output.isFile() {
		return errStopped
	}
	return nil
}

// judgeLine judges the record of one line. Whatever happens, the line is
// accounted for.
func (c *checking) judgeLine(l line) (out result) {
	path, text, err := l.record()
	defer func() { out.path = path }()
	if err != nil {
		out.faults = []verdict.Fault{{Path: path, Says: err.Error()}}
		return out
	}
	defer out.survive(path)
	out = c.judgeText(path, text)
	out.path = path
	if out.judged && !c.inPrint() {
		out.tally = tallyOf(&out.verdicts, lowered(&out.verdicts))
		out.failed = c.renderLine(l, &out)
		out.verdicts, out.source = verdict.Record{}, nil
	}
	return out
}

// renderLine renders what came of one line.
func (c *checking) renderLine(l line, r *result) error {
	out := reports.Line{Number: l.number, Path: r.path, Faults: r.faults}
	if r.judged {
		out.Record = &r.verdicts
	}
	text, err := reports.LineText(out, c.head, reports.Options{All: c.flags.all, Units: c.options(c.flags.units).Units})
	r.rendered = &reports.Chunk{Text: text}
	return err
}

// takeLine counts the result of one line, which is rendered after that.
func (c *checking) takeLine(l line, r *result) error {
	if r.runaway != nil {
		return fmt.Errorf("line %d: %w", l.number, r.runaway)
	}
	if r.broken != nil {
		r.broken.report(c.errs)
		c.session.code = exitFault
	}
	if len(r.faults) > 0 {
		c.code = max(c.code, exitUnusable)
	}
	if r.judged && r.rendered == nil {
		r.tally.Lowered = lowered(&r.verdicts) // those that the baseline has, too
		c.hold(&r.verdicts)
		r.tally = tallyOf(&r.verdicts, r.tally.Lowered)
	}
	if r.rendered == nil {
		r.failed = c.renderLine(l, r)
	}
	if r.judged {
		c.weigh(r.tally)
	}
	return r.failed
}
