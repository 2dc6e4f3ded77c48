package main

import (
	"errors"
	"io"
	"os"

	"charm.land/huh/v2"
	"golang.org/x/term"

	"driploop/model/draft"
)

// errLeft says that the user left the form.
var errLeft = errors.New("left without a record")

// askRest asks on a terminal for what was not answered. Elsewhere nothing is
// asked, and what is missing is an error of the draft.
func (s *session) askRest(answers draft.Answers) error {
	in, out, ok := s.people()
	if !ok {
		return nil
	}
	got := map[string]*string{}
	var groups []*huh.Group
	for _, q := range draft.Questions() {
		if _, given := answers[q.Key]; given {
			continue
		}
		answer := q.Default
		got[q.Key] = &answer
		groups = append(groups, huh.NewGroup(field(q, &answer)))
	}
	if len(groups) == 0 {
		return nil
	}
	err := huh.NewForm(groups...).WithInput(in).WithOutput(out).WithAccessible(os.Getenv("TERM") == "dumb").Run()
	if errors.Is(err, huh.ErrUserAborted) {
		return errLeft
	}
	if err != nil {
		return err
	}
	for key, answer := range got {
		answers[key] = *answer
	}
	return nil
}

// field is the form's field for a question.
func field(q draft.Question, answer *string) huh.Field {
	if len(q.Words) > 0 {
		return huh.NewSelect[string]().Title(q.Asks).Options(huh.NewOptions(q.Words...)...).Value(answer)
	}
	return huh.NewInput().Title(q.Asks).Placeholder(q.Example).Validate(q.Check).Value(answer)
}

// people returns the terminal that somebody sits at: in and out, the latter
// beside the output, which may go to a file.
func (s *session) people() (io.Reader, io.Writer, bool) {
	in, isFile := s.in.(*os.File)
	out, isFileToo := s.errs.(*os.File)
	ok := isFile && isFileToo && term.IsTerminal(int(in.Fd())) && term.IsTerminal(int(out.Fd()))
	return in, out, ok
}
