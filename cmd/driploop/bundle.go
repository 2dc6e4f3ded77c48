package main

import (
	"errors"

	"github.com/spf13/cobra"
)

const bundleLong = `Write the rules as a bundle of the Open Policy Agent, for an OPA that runs
already. It evaluates them on what driploop facts prints: data.driploop.rules
holds breach, applies, asks and excludes of each rule. Which practice sets are in
force, what is undecided and what is waived, driploop check makes of these.

A yard's own rules, by the settings of the folder that you are in, stand beside
them under data.driploop.yard.

The revision in the bundle is the digest of the rules that every report names.
The same rules give the same bytes. opa build
--signing-key signs it; an OPA that runs with --verification-key takes no bundle
that is unsigned or was changed.

` + exitHelp

func newBundle(s *session) *cobra.Command {
	var output destination
	var f checkFlags
	cmd := &cobra.Command{
		Use:   "bundle -o FILE",
		Short: "Write the rules as a bundle for stock OPA",
		Long:  bundleLong,
		Example: `  driploop bundle -o rules.tar.gz
  driploop facts job.yaml | opa eval -b rules.tar.gz -I data.driploop.rules
  opa run --server -b rules.tar.gz
  opa build -b rules.tar.gz --signing-key private.pem -o signed.tar.gz
  opa run --server -b signed.tar.gz --verification-key public.pem`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !output.isFile() && s.terminal.is {
				return errors.New("a bundle is nothing to read in a terminal; name a file with -o")
			}
			settings, err := s.settle(cmd, []string{"."}, &f)
			if err != nil {
				return err
			}
			e, err := s.engineFor(settings)()
			if err != nil {
				return err
			}
			return s.to(output, e.Bundle)
		},
	}
	output.addTo(cmd.Flags())
	f.configFlag(cmd.Flags())
	return cmd
}
