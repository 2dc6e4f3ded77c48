package draft

import "strings"

const head = `# Installation record, drafted from a few answers. Nothing in it has been seen yet:
#   unknown     look, measure, and write what you find; the comment says what belongs there
#   proposed    computed or usual; confirm it, or write what was fitted
#   &name       what is alike on several is written here once, and taken over at *name;
#               where one of them differs, write the entry there again
# Judge it as often as you like: what is unknown stays undecided, never met.
# Not a substitute for the maker's instructions, local codes and licensed practice.
`

// Write drafts a record: what such a job has, sizes proposed so that the rules
// of the practice sets are kept, and all that the rules will ask for, unknown.
func Write(a Answers, judge Judge) ([]byte, error) {
	j, err := a.read()
	if err != nil {
		return nil, err
	}
	s := newSkeleton(j)
	if err := s.propose(judge); err != nil {
		return nil, err
	}
	if err := s.fill(judge); err != nil {
		return nil, err
	}
	return []byte(head + strings.TrimLeft(string(s.text()), "\n")), nil
}
