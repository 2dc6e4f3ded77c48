package main

import (
	"github.com/spf13/cobra"
)

// subject is a flag that says what the words of a command name. It may carry a
// word itself, as in --source=33-cfr-183.
type subject struct {
	on   bool
	word string
}

// bare is what the flag is set to when it carries no word.
const bare = "true"

func (s *subject) String() string { return s.word }
func (s *subject) Type() string   { return "bool" } // shown without a value in help

// Set notes that the flag is given, and its word if it has one.
func (s *subject) Set(word string) error {
	s.on = true
	if word != bare {
		s.word = word
	}
	return nil
}

// with returns the words of a command, that of the flag first.
func (s *subject) with(words []string) []string {
	if s.word == "" {
		return words
	}
	return append([]string{s.word}, words...)
}

// flag adds the flag to a command.
func (s *subject) flag(cmd *cobra.Command, name, help string) {
	cmd.Flags().Var(s, name, help)
	cmd.Flags().Lookup(name).NoOptDefVal = bare
}
