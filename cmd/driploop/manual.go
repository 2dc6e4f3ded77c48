package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
)

const manualLong = `Write a manual page for each command into a folder, for man(1):

  driploop manual --into ~/.local/share/man/man1
  man driploop-check

`

func newManual(s *session) *cobra.Command {
	into := ""
	cmd := &cobra.Command{
		Use:     "manual",
		Short:   "Write the manual pages",
		Long:    manualLong + exitHelp,
		Example: `  driploop manual --into man1`,
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if into == "" {
				return fmt.Errorf("driploop manual: name the folder with --into")
			}
			if err := os.MkdirAll(into, 0o755); err != nil {
				return err
			}
			return s.manuals(cmd.Root(), into)
		},
	}
	cmd.Flags().StringVar(&into, "into", "", "folder that the pages are written into")
	return cmd
}

// manuals writes the page of a command and of those below it. The date is left
// out, so that the same program writes the same pages.
func (s *session) manuals(cmd *cobra.Command, into string) error {
	if !cmd.IsAvailableCommand() && cmd.HasParent() {
		return nil
	}
	var page bytes.Buffer
	no := time.Unix(0, 0).UTC()
	head := &doc.GenManHeader{Section: "1", Source: "driploop", Manual: "driploop", Date: &no}
	cmd.DisableAutoGenTag = true
	if err := doc.GenMan(cmd, head, &page); err != nil {
		return err
	}
	text := strings.ReplaceAll(page.String(), `"Jan 1970" `, `"" `)
	name := filepath.Join(into, strings.ReplaceAll(cmd.CommandPath(), " ", "-")+".1")
	if err := s.to(destination(name), func(w io.Writer) error { _, err := io.WriteString(w, text); return err }); err != nil {
		return err
	}
	for _, below := range cmd.Commands() {
		if err := s.manuals(below, into); err != nil {
			return err
		}
	}
	return nil
}
