package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"go.yaml.in/yaml/v3"

	"driploop/model/draft"
	"driploop/model/verdict"
	"driploop/model/yard"
)

const startLong = `Draft a new record from a few answers: the parts that such a job has, sizes of
conductors and devices proposed from what the circuit computes to, and every
entry that the rules of the chosen practice sets will ask for, marked unknown
until somebody has looked.

On a terminal the answers are asked for; elsewhere give them as flags, or in a
YAML file with the same names.

`

const startExample = `  driploop start -o job.yaml
  driploop start --kind windlass --boat Marigold --voltage "12 V" --hull frp \
    --propulsion diesel-inboard --current "35 A" --load open-deck \
    --length "25 ft" --holes 1 -o windlass.yaml
  driploop start --answers answers.yaml -o job.yaml`

func newStart(s *session) *cobra.Command {
	given := map[string]*string{}
	file, to := "", ""
	cmd := &cobra.Command{
		Use:     "start",
		Short:   "Draft a new record from a few answers",
		Long:    startLong + exitHelp,
		Example: startExample,
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			answers, err := s.answers(file)
			if err != nil {
				return err
			}
			for key, value := range given {
				if cmd.Flags().Changed(key) {
					answers[key] = *value
				}
			}
			if err := s.askRest(answers); err != nil {
				return err
			}
			j, err := s.judgingAt(to)
			if err != nil {
				return err
			}
			text, err := draft.Write(answers, j.draft)
			if err != nil {
				return err
			}
			if err := s.keep(destination(to), text); err != nil || to == "" {
				return err
			}
			fmt.Fprintf(s.errs, "wrote %s; judge it with: driploop check %s\nwhat your answers bring up besides: driploop ask --write %s\n", to, to, to)
			return nil
		},
	}
	for _, q := range draft.Questions() {
		says := q.Asks
		if len(q.Words) > 0 {
			says += " " + either(q.Words)
		}
		if q.Default != "" {
			says += " (default: " + q.Default + ")"
		}
		given[q.Key] = cmd.Flags().String(q.Key, "", says)
	}
	cmd.Flags().StringVarP(&to, "output", "o", "", "file to write, which must not be there yet (default: standard output)")
	cmd.Flags().StringVar(&file, "answers", "", "file with answers, one \"name: answer\" a line")
	cmd.AddCommand(newStartRule(s))
	return cmd
}

// answers reads a file of answers, if one is named.
func (s *session) answers(file string) (draft.Answers, error) {
	answers := draft.Answers{}
	if file == "" {
		return answers, nil
	}
	text, err := s.read(file)
	if err != nil {
		return nil, errors.New(file + ": " + yard.Reason(err))
	}
	var held map[string]any
	if err := yaml.Unmarshal(text, &held); err != nil {
		return nil, fmt.Errorf("%s: write one \"name: answer\" a line; %s", file, strings.TrimPrefix(err.Error(), "yaml: "))
	}
	for key, value := range held {
		if list, ok := value.([]any); ok {
			value = strings.Trim(fmt.Sprint(list), "[]")
		}
		answers[key] = fmt.Sprint(value)
	}
	return answers, nil
}

// draft judges a record that is being drafted. If it is none, the program is at
// fault.
func (j *judging) draft(text []byte) (*verdict.Record, error) {
	got, err := j.text("draft.yaml", text)
	if err != nil {
		return nil, &programFault{err}
	}
	return got.Verdicts, nil
}
