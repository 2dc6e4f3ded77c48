package main

import (
	"github.com/spf13/cobra"

	"driploop/reports"
)

const factsLong = `Print the document that the rules read: the record joined with its solved
circuit, as JSON. A fact that is not known is absent, and stands in "open" with
the entries that would make it known. Stock opa evaluates the rules on it.

` + exitHelp

func newFacts(s *session) *cobra.Command {
	return &cobra.Command{
		Use:   "facts RECORD",
		Short: "Print the document that rules read",
		Long:  factsLong,
		Example: `  driploop facts job.yaml
  driploop facts job.yaml | opa eval -I -d rules/ data.driploop`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error {
			one, _, err := s.one(args[0])
			if err != nil {
				return err
			}
			return reports.WriteJSON(s.out, one.facts())
		},
	}
}
