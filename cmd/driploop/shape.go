package main

import (
	"bytes"
	"fmt"

	"github.com/spf13/cobra"

	"driploop/model/record"
	"driploop/model/yard"
)

const shapeLong = `Print a record laid out in the one usual way: two blanks a level, one behind a
colon, two before a comment. No value, comment or order of entries changes, and
shaping twice is shaping once.

With --write the files themselves are laid out; with --verify they are only
looked at, and those that would change are named.

`

func newShape(s *session) *cobra.Command {
	write, verify := false, false
	cmd := &cobra.Command{
		Use:   "shape RECORD...",
		Short: "Lay records out in the usual way",
		Long:  shapeLong + exitHelp,
		Example: `  driploop shape job.yaml
  driploop shape --write jobs/*.yaml
  driploop shape --verify jobs/*.yaml`,
		Args: atLeastOne("name a record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error {
			for _, path := range args {
				if err := s.shape(path, write, verify); err != nil {
					return err
				}
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&write, "write", false, "lay out the files themselves")
	cmd.Flags().BoolVar(&verify, "verify", false, "name the files that would change, and exit with 1 if there are any")
	cmd.MarkFlagsMutuallyExclusive("write", "verify")
	return cmd
}

func (s *session) shape(path string, write, verify bool) error {
	if write && path == yard.StandardInput {
		return fmt.Errorf("--write needs a file; standard input cannot be written")
	}
	text, err := s.read(path)
	if err != nil {
		return fmt.Errorf("%s: %s", path, yard.Reason(err))
	}
	shaped, err := record.Shape(path, text)
	switch {
	case err != nil:
		return err
	case verify && !bytes.Equal(text, shaped):
		s.code = exitBreach
		fmt.Fprintln(s.out, path)
	case verify:
	case !write:
		_, err = s.out.Write(shaped)
	case !bytes.Equal(text, shaped):
		err = s.rewrite(path, shaped)
	}
	return err
}
