package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/rules"
)

const proveLong = `Check a folder of a yard's own rules without any record of a job: each rule is
read, held against the facts that there are, refused if it could pass in silence
where a fact is missing, and compiled strictly; its Rego tests are run and the
records of its example judged.

A rule stands in FOLDER/<topic>/<fault>.rego, in the package
driploop.yard.<topic>.<fault>, beside <fault>_test.rego and <fault>.yaml.
driploop start rule topic/fault begins one. Name the folder under "rules" in
driploop.yaml for check to judge by it.

`

func newProve(s *session) *cobra.Command {
	return &cobra.Command{
		Use:   "prove FOLDER",
		Short: "Check and test a folder of a yard's own rules",
		Long:  proveLong + exitHelp,
		Example: `  driploop start rule stowage/hatch-open
  driploop prove house-rules`,
		Args: exactlyOne("name a folder of rules"),
		RunE: func(_ *cobra.Command, args []string) error { return s.prove(args[0]) },
	}
}

func (s *session) prove(folder string) error {
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() {
		err = errors.New("this is no folder")
	}
	if err != nil {
		return fmt.Errorf("%s: %w", folder, err)
	}
	held, err := rulesIn(folder)
	if err != nil {
		return fmt.Errorf("%s: %w", folder, err)
	}
	proof, err := rules.Prove(held)
	if faults := problems(err); len(faults) > 0 {
		return s.refuse(faults, fmt.Sprintf("%s: %d to put right", folder, len(faults)))
	}
	if err != nil {
		return fmt.Errorf("%s: %w", folder, err)
	}
	for _, r := range proof.Rules {
		fmt.Fprintf(s.out, "%s  %s\n", r.ID, reports.Plain(r.Title))
	}
	fmt.Fprintf(s.out, "%s: %d rules hold, with %d tests and %d records\n", reports.Plain(folder), len(proof.Rules), proof.Tests, proof.Examples)
	return nil
}

// problems returns the faults of rules that an error joins.
func problems(err error) (all []verdict.Fault) {
	var one *rules.Problem
	if joined, ok := err.(interface{ Unwrap() []error }); ok { //nolint:errorlint // the error itself joins them
		for _, e := range joined.Unwrap() {
			all = append(all, problems(e)...)
		}
		return all
	}
	if errors.As(err, &one) {
		at := verdict.Position{Line: one.Line, Column: one.Column}
		if at.Line > 0 {
			at.Column = max(at.Column, 1)
		}
		all = append(all, verdict.Fault{Path: one.File, At: at, End: at, Says: strings.TrimSpace(one.Says)})
	}
	return all
}
