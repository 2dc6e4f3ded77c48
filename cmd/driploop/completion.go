package main

import (
	"slices"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// completeAll has shells complete the words that flags take, the ids of rules,
// and the files that records are.
func completeAll(s *session, cmd *cobra.Command) {
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if c, ok := f.Value.(*choice); ok {
			words := slices.Clone(c.words)
			// The flag is there and has no completion yet: nothing can go wrong.
			_ = cmd.RegisterFlagCompletionFunc(f.Name, func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
				return words, cobra.ShellCompDirectiveNoFileComp
			})
		}
	})
	if cmd.Name() == "cite" {
		cmd.ValidArgsFunction = s.completeRules
	}
	for _, below := range cmd.Commands() {
		completeAll(s, below)
	}
}

// completeRules lists the ids of rules with their titles.
func (s *session) completeRules(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	e, err := s.engine()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	var all []cobra.Completion
	for _, r := range e.Rules() {
		all = append(all, cobra.CompletionWithDesc(r.ID, r.Title))
	}
	return all, cobra.ShellCompDirectiveNoFileComp
}
