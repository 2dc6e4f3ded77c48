package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"driploop/model/verdict"
	"driploop/model/yard"
)

// known counts what the baseline kept from the list.
type known struct {
	breaches map[verdict.Severity]int
	open     int
}

// openBaseline reads the baseline that a flag or the settings name.
func (c *checking) openBaseline() error {
	if c.flags.newBase != "" && (c.flags.since != "" || c.flags.baseline != "") {
		return errors.New("--write-baseline writes all that stands; leave out --since and --baseline")
	}
	path := c.flags.baseline
	if path == "" && c.settings.Baseline.V != "" {
		path = filepath.Join(c.settings.Root, c.settings.Baseline.V)
	}
	if path == "" || c.flags.newBase != "" {
		return nil
	}
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("this is no file")
	}
	if err != nil {
		return fmt.Errorf("baseline %s: %s", path, yard.Reason(err))
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("baseline %s: %s", path, yard.Reason(err))
	}
	c.baseline, err = yard.ReadBaseline(path, text)
	c.known.breaches = map[verdict.Severity]int{}
	return err
}

// hold holds a record against the baseline, or takes it into a new one.
func (c *checking) hold(rec *verdict.Record) {
	if c.flags.newBase != "" {
		c.draft.Add(rec)
	}
	if c.baseline == nil {
		return
	}
	c.baseline.Apply(rec)
	for severity, n := range rec.Known {
		c.known.breaches[severity] += n
	}
	c.known.open += rec.KnownOpen
}

// writeBaseline writes what stands now. It is no check: nothing fails.
func (c *checking) writeBaseline() error {
	if c.flags.newBase == "" {
		return nil
	}
	text, err := c.draft.Text()
	if err == nil {
		err = yard.WriteFile(c.flags.newBase, text)
	}
	if err != nil {
		return err
	}
	breaches, open := c.draft.Count()
	c.notes = append(c.notes, fmt.Sprintf("%s now holds %s", c.flags.newBase, knownText(breaches, open)))
	return nil
}

// baselineNotes says what the baseline kept from the list, dangers first.
func (c *checking) baselineNotes() (all []string) {
	if c.baseline == nil {
		return nil
	}
	all = append(all, fmt.Sprintf("not listed, since %s has them: %s", c.baseline.Path, knownText(c.known.breaches, c.known.open)))
	if n := c.known.breaches[verdict.Danger]; n > 0 {
		all = append(all, fmt.Sprintf("%d DANGER among them: they stand as they did, and still have to be put right", n))
	}
	if n := c.baseline.Cured(); n > 0 && c.flags.part.of == 0 {
		all = append(all, fmt.Sprintf("%d entries of %s no longer hold; write it anew with --write-baseline", n, c.baseline.Path))
	}
	return all
}

func knownText(breaches map[verdict.Severity]int, open int) string {
	var parts []string
	for _, word := range yard.Severities() {
		severity, err := verdict.ParseSeverity(word)
		if err != nil {
			panic(err)
		}
		if n := breaches[severity]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, word))
		}
	}
	if open > 0 {
		parts = append(parts, fmt.Sprintf("%d undecided", open))
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}
