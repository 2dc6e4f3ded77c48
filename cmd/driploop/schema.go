package main

import (
	"github.com/spf13/cobra"

	"driploop/model/record"
	"driploop/model/yard"
)

const schemaLong = `Print the JSON Schema (draft 2020-12) of a record, or of a yard's settings, for
editors: with it a YAML language server completes keys, shows what each is, and
marks what cannot be. It cannot tell what only a whole record does, such as a
reference to nothing; driploop check does.

Save it, and begin each record with a line that names it:

  # yaml-language-server: $schema=./record.schema.json

`

func newSchema(s *session) *cobra.Command {
	settings := false
	cmd := &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of a record, for editors",
		Long:  schemaLong + exitHelp,
		Example: `  driploop schema > record.schema.json
  driploop schema --settings > settings.schema.json`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			text := record.Schema()
			if settings {
				text = yard.Schema()
			}
			_, err := s.out.Write(text)
			return err
		},
	}
	cmd.Flags().BoolVar(&settings, "settings", false, "of a yard's settings, "+yard.SettingsName)
	return cmd
}
