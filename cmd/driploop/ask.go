package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/model/yard"
)

const askLong = `Write into a record every entry that a verdict still waits for: as unknown, where
it belongs, with a comment that says what it is. Then only the answers are left
to be written. All that is there stays as it is, byte for byte.

What is asked depends on what is known: that a space is wet brings the question
of drip loops. So ask again when you have answered.

`

func newAsk(s *session) *cobra.Command {
	write := false
	cmd := &cobra.Command{
		Use:   "ask RECORD",
		Short: "Write what is still to be answered into a record",
		Long:  askLong + exitHelp,
		Example: `  driploop ask job.yaml > asked.yaml
  driploop ask --write job.yaml`,
		Args: exactlyOne("name one record, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error { return s.ask(args[0], write) },
	}
	cmd.Flags().BoolVar(&write, "write", false, "write into the file itself")
	return cmd
}

func (s *session) ask(path string, write bool) error {
	if write && path == yard.StandardInput {
		return errors.New("--write needs a file; standard input cannot be written")
	}
	one, _, err := s.one(path)
	if err != nil {
		return err
	}
	if write && one.record.SignOff.By.State == record.Given {
		return errors.New(path + " is signed; what it lacks is listed by driploop check, and is for its signer to add")
	}
	asked, err := s.asked(path, one.text)
	if err != nil {
		return err
	}
	if !write {
		_, err = s.out.Write(asked.text)
	} else if asked.added > 0 {
		err = s.rewrite(path, asked.text)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(s.errs, "%d entries added to %s as unknown\n", asked.added, path)
	for _, entry := range asked.left {
		fmt.Fprintf(s.errs, "not added: %s\n", entry)
	}
	return nil
}

// asked is a record with what is asked of it written in.
type asked struct {
	text  []byte
	added int
	left  []string // entries that its layout has no place for, and why
}

// asked adds what verdicts wait for until nothing new is asked: an entry can
// bring others, such as a crimp its pull.
func (s *session) asked(path string, text []byte) (asked, error) {
	out := asked{text: text}
	j, err := s.judgingAt(path)
	if err != nil {
		return out, err
	}
	const rounds = 8
	for range rounds {
		judged, err := j.text(path, out.text)
		if err != nil {
			return out, err
		}
		there, err := record.Leaves(path, out.text)
		if err != nil {
			return out, err
		}
		changes := questions(judged.Verdicts, there, judged.Record.ComponentKind)
		added := out.add(path, changes)
		if added == 0 {
			return out, nil
		}
	}
	return out, nil
}

// add writes the changes in, together if that is possible, since entries that are
// shared can only be added to all that share them at once.
func (a *asked) add(path string, changes []record.Change) int {
	if text, err := record.Edit(path, a.text, changes...); err == nil {
		a.text, a.added, a.left = text, a.added+len(changes), nil
		return len(changes)
	}
	added := 0
	a.left = nil
	for _, c := range changes {
		text, err := record.Edit(path, a.text, c)
		if err != nil {
			a.left = append(a.left, c.Path+": "+err.Error())
			continue
		}
		a.text, added = text, added+1
	}
	a.added += added
	return added
}

// questions are the entries that undecided verdicts wait for and that are not
// there yet, in the order of the verdicts.
func questions(of *verdict.Record, there map[string]string, kindOf func(string) string) []record.Change {
	var all []record.Change
	seen := map[string]bool{}
	for i := range of.Verdicts {
		if of.Verdicts[i].Outcome != verdict.Undecided {
			continue
		}
		for _, gap := range of.Verdicts[i].Missing {
			f, known := record.Describe(gap.Field, kindOf)
			if !known || f.Part || seen[gap.Field] || stands(there, gap.Field) {
				continue
			}
			seen[gap.Field] = true
			all = append(all, record.Change{Path: gap.Field, Value: "unknown", Comment: f.Hint()})
		}
	}
	slices.Reverse(all) // each is put ahead of those that went into the same place before it
	return all
}

// stands reports whether a record has a value, or a list of them, at a path.
func stands(there map[string]string, path string) bool {
	_, plain := there[path]
	_, list := there[path+"[0]"]
	return plain || list
}
