package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/reports/html"
)

// reportParts writes a page that lists the records of a run that was judged in
// parts.
func (s *session) reportParts(cmd *cobra.Command, paths []string, f *reportFlags) (err error) {
	for _, other := range []string{"units", "today", "config", "format"} {
		if cmd.Flags().Changed(other) {
			return fmt.Errorf("--%s does not go with --join, which takes the verdicts as they are and writes them as HTML", other)
		}
	}
	if slices.Contains(paths, yard.StandardInput) {
		return errors.New("--join reads files; name that of each part")
	}
	f.check.gate.value = yard.GateNone
	j := joining{checking: &checking{session: s, flags: &f.check}}
	defer func() {
		for _, p := range slices.Concat(j.parts, j.ended) {
			err = errors.Join(err, p.file.Close())
		}
	}()
	if err := j.open(paths); err != nil {
		return err
	}
	page := html.Index{Rules: j.parts[0].tool.Rules, Version: j.parts[0].tool.Version, At: f.at.Time}
	for len(j.parts) > 0 {
		text, err := j.next()
		if err != nil {
			return err
		}
		if text == nil {
			continue
		}
		entry, err := joinedEntry(text)
		if err != nil {
			return err
		}
		page.Entries = append(page.Entries, entry)
	}
	rest := j.rest()
	page.Faults = rest.Faults
	if len(rest.Faults) > 0 {
		s.code = max(s.code, exitUnusable)
	}
	for _, note := range rest.Notes {
		complain(s.errs, note)
	}
	return s.to(f.output, func(w io.Writer) error { return html.WriteIndex(w, page) })
}

// joinedEntry is the line of a record, from what a part says of it.
func joinedEntry(text json.RawMessage) (html.Entry, error) {
	var r struct {
		Path, Job string
		Counts    struct{ Breach, Undecided, Waived int }
		Verdicts  []struct {
			Outcome  verdict.Outcome
			Severity verdict.Severity
			Missing  []string
		}
	}
	if err := json.Unmarshal(text, &r); err != nil {
		return html.Entry{}, err
	}
	entry := html.Entry{
		Path: reports.Plain(r.Path), Name: reports.Plain(r.Job), Mark: "clear",
		Faults: r.Counts.Breach, Open: r.Counts.Undecided, Waived: r.Counts.Waived,
	}
	if entry.Name == "" {
		entry.Name = "job without a number"
	}
	if entry.Open > 0 {
		entry.Mark = "open"
	}
	worst, breached, asked := verdict.Notice, false, map[string]bool{}
	for _, v := range r.Verdicts {
		if v.Outcome == verdict.Breach {
			worst, breached = max(worst, v.Severity), true
		}
		for _, m := range v.Missing {
			asked[m] = true
		}
	}
	if breached {
		entry.Mark = worst.String()
	}
	entry.Answers = len(asked)
	return entry, nil
}
