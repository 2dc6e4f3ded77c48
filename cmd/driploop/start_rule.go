package main

import (
	"embed"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
)

// ruleFiles are the three files of a new rule.
//
//go:embed newrule/*
var ruleFiles embed.FS

const startRuleLong = `Begin a rule of the yard's own: three files, which prove at once. Put your own
condition, words and records in them, and prove them again.

`

func newStartRule(s *session) *cobra.Command {
	folder := ""
	cmd := &cobra.Command{
		Use:   "rule TOPIC/FAULT",
		Short: "Begin a rule of the yard's own",
		Long:  startRuleLong + exitHelp,
		Example: `  driploop start rule stowage/hatch-open
  driploop start rule --in house-rules wiring/fuse-not-of-ours
  driploop prove house-rules`,
		Args: exactlyOne("name the rule, as topic/fault"),
		RunE: func(_ *cobra.Command, args []string) error { return s.startRule(folder, args[0]) },
	}
	cmd.Flags().StringVar(&folder, "in", "house-rules", "the folder of the yard's rules")
	return cmd
}

// newRuleID is the form of a rule's id.
var newRuleID = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*/[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

func (s *session) startRule(folder, id string) error {
	if !newRuleID.MatchString(id) {
		return fmt.Errorf("%q is no name for a rule; write topic/fault in lower case with hyphens, such as stowage/hatch-open", id)
	}
	e, err := s.engine()
	if err != nil {
		return err
	}
	if _, err := e.Rule(id); err == nil {
		return fmt.Errorf("%s is a rule that the program ships with; choose another name", id)
	}
	topic, fault, _ := strings.Cut(id, "/")
	snake := strings.ReplaceAll(fault, "-", "_")
	fill := strings.NewReplacer(
		"TOPIC_FAULT", topic+"/"+fault, "PACKAGE", strings.ReplaceAll(topic, "-", "_")+"."+snake, "NAME", snake, "TITLE", title(fault),
	)
	into := filepath.Join(folder, topic)
	if err := os.MkdirAll(into, 0o755); err != nil { //nolint:gosec // a folder like any other of the repository
		return err
	}
	for _, ending := range []string{".rego", "_test.rego", ".yaml"} {
		text, err := ruleFiles.ReadFile("newrule/rule" + ending)
		if err != nil {
			return &programFault{err}
		}
		path := filepath.Join(into, snake+ending)
		if err := s.keep(destination(path), []byte(fill.Replace(string(text)))); err != nil {
			return err
		}
		fmt.Fprintln(s.out, path)
	}
	fmt.Fprintf(s.out, "Prove them with: driploop prove %s\n", folder)
	return nil
}

// title makes words of a fault's name.
func title(fault string) string {
	words := strings.ReplaceAll(fault, "-", " ")
	return strings.ToUpper(words[:1]) + words[1:]
}
