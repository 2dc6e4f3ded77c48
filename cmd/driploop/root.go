package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"driploop/reports"
)

const rootLong = `driploop reads the record of a direct-current installation on a small craft,
solves its circuit, judges it by rules that each cite a published source, and
says what is wrong, what cannot be decided and why, and what would put it right.

` + reports.Caution

const rootExample = `  driploop check job.yaml                    judge one record
  driploop check --gate danger records/      judge a folder of them
  driploop start -o job.yaml                 draft a new record
  driploop cite                              list the rules
  driploop cite drip loop                    find rules by words
  driploop figures job.yaml                  the computed schedule of circuits
  driploop report job.yaml -o job.html       a survey report, to read or to print`

// guide is what a bare "driploop" prints.
const guide = `driploop judges the record of a direct-current installation on a small craft.

See it at work, with a record that breaks a rule:

  driploop cite penetrations/no-drip-loop          what the rule asks, and why
  driploop cite --example penetrations/no-drip-loop > try.yaml
  driploop check try.yaml                          judge the record
  driploop figures try.yaml                        what its circuit computes to

Then draft your own with driploop start -o job.yaml, fill in what you see, and
judge it with driploop check. All commands: driploop --help

` + reports.Caution + "\n"

func newRoot(s *session) *cobra.Command {
	root := &cobra.Command{
		Use:           "driploop",
		Short:         "Judge the record of a direct-current installation on a small craft",
		Long:          reports.Wrap(rootLong),
		Example:       rootExample,
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          unknownCommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			fmt.Fprint(cmd.OutOrStdout(), reports.Wrap(guide))
			return nil
		},
	}
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SetFlagErrorFunc(flagError)
	root.SetVersionTemplate("driploop {{.Version}}\n")
	root.AddCommand(
		newCheck(s),
		newCite(s),
		newFigures(s),
		newDraw(s),
		newFacts(s), newReport(s),
		newBundle(s),
		newStart(s),
		newProve(s),
		newAsk(s),
		newRemedy(s),
		newShape(s),
		newSchema(s),
		newImport(s),
		newExport(s),
		newEditor(s),
		newManual(s),
	)
	completeAll(s, root)
	return root
}

// unknownCommand refuses words that are no command, with the nearest that is.
func unknownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	hint := meant(args[0], names, "driploop ")
	if hint == "" {
		hint = "; the commands are " + strings.Join(names, ", ")
	}
	return fmt.Errorf("%q is no command%s", args[0], hint)
}

// flagError says of a flag that cannot be used what would be right.
func flagError(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) {
		return err
	}
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	hint := meant(unknown.GetSpecifiedName(), names, "--")
	if hint == "" {
		hint = "; see " + cmd.CommandPath() + " --help"
	}
	return fmt.Errorf("%s has no flag %s%s", cmd.CommandPath(), flagWord(unknown), hint)
}

func flagWord(e *pflag.NotExistError) string {
	if e.GetSpecifiedShortnames() != "" {
		return "-" + e.GetSpecifiedName()
	}
	return "--" + e.GetSpecifiedName()
}
