package main

import (
	"context"
	"errors"
	"fmt"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/model/yard"
)

// look finds what is to be judged: all that the arguments mean or, of that, what
// changed since a revision.
func (c *checking) look(ctx context.Context, args []string) error {
	if err := c.openBaseline(); err != nil {
		return err
	}
	c.found = yard.Find(args, c.settings)
	if c.flags.since == "" {
		if c.flags.staged {
			return errors.New("--staged goes with --since, such as --since HEAD --staged")
		}
		return nil
	}
	var err error
	if c.earlier, err = yard.Since(ctx, c.flags.since, c.flags.staged, args); err != nil {
		return fmt.Errorf("--since: %w", err)
	}
	c.found.Folders = nil // that nothing changed in a folder is no fault
	if c.flags.staged {
		c.found.Faults, c.found.Left = nil, 0
		c.found.Files, err = c.earlier.Staged(args, c.settings)
	} else {
		c.found.Files, err = c.earlier.Changed(c.found.Files)
	}
	return err
}

// close ends what was started for the run.
func (c *checking) close() error {
	_ = c.memory.cache.Close() // what is not kept is judged again
	if c.earlier == nil {
		return nil
	}
	return c.earlier.Close()
}

// compare keeps of the verdicts of a record what changed since the revision. To
// a record that could not be used then, all is new.
func (c *checking) compare(path string, out *result) {
	from, text, err := c.earlier.Was(path, out.verdicts.Job)
	if err != nil && !errors.Is(err, record.ErrTooLarge) {
		out.judged = false
		out.faults = []verdict.Fault{{Path: path, Says: "what it was cannot be read: " + err.Error()}}
		return
	}
	var was *verdict.Record
	if text != nil && yard.IsRecord(text) {
		if then := c.judgeText(path, text); then.judged {
			was = &then.verdicts
		}
	}
	since := c.earlier.Name
	if from != "" && !c.earlier.Same(path, from) {
		since += ", then " + from
	}
	yard.Compare(&out.verdicts, was, since)
}

// sinceNotes says what the comparison leaves out.
func (c *checking) sinceNotes() (all []string) {
	if c.earlier == nil {
		return nil
	}
	if len(c.found.Files) == 0 {
		all = append(all, "no record changed since "+c.earlier.Name)
	}
	if c.earlier.SettingsChanged(c.settings) {
		all = append(all, "settings or rules of the yard changed since "+c.earlier.Name+
			"; both states were judged by those of now, and records that did not change were not judged: check without --since does")
	}
	return append(all, c.earlier.Notes()...)
}
