package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

// atLeastOne refuses a command line without arguments, saying what to name.
func atLeastOne(says string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return fmt.Errorf("%s: %s; see %s --help", cmd.CommandPath(), says, cmd.CommandPath())
		}
		return nil
	}
}

// exactlyOne refuses any other number of arguments than one.
func exactlyOne(says string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) != 1 {
			return fmt.Errorf("%s: %s, not %d; see %s --help", cmd.CommandPath(), says, len(args), cmd.CommandPath())
		}
		return nil
	}
}
