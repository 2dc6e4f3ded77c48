package survey

import (
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports"
)

// Questions are what somebody has to answer, the most urgent first.
type Questions struct {
	Entries []Question // entries of the record to fill in
	Reasons []Question // what no entry would cure
	Number  int        // entries in all
}

// Question is one kind of entry that is missing, in one or more places.
type Question struct {
	Asks     []Ask
	Fields   []reports.Field
	Whys     []string
	For      []string // rules, or figures, that wait
	Severity verdict.Severity
}

// Ask says what belongs into an entry.
type Ask struct {
	Entry string // its path, with stars for what differs
	Says  string
	Such  string // an example, or the words allowed
}

func (b *builder) questions(q reports.Questions) Questions {
	var out Questions
	for _, one := range q.Entries {
		out.Entries = append(out.Entries, b.question(one))
		out.Number += len(one.Fields)
	}
	for _, one := range q.Reasons {
		out.Reasons = append(out.Reasons, b.question(one))
	}
	return out
}

func (b *builder) question(q reports.Question) Question {
	out := Question{Whys: plainAll(q.Whys), For: plainAll(q.For), Severity: q.Severity}
	seen := map[string]bool{}
	for _, f := range q.Fields {
		out.Fields = append(out.Fields, reports.Field{Path: reports.Plain(f.Path), Where: reports.Plain(strings.Trim(f.Where, " ()"))})
		if pattern := reports.Pattern(f.Path); !seen[pattern] {
			seen[pattern] = true
			out.Asks = append(out.Asks, b.ask(pattern, f.Path))
		}
	}
	return out
}

// ask tells what the format says of an entry.
func (b *builder) ask(pattern, path string) Ask {
	a := Ask{Entry: reports.Plain(pattern)}
	f, known := record.Describe(path, b.kind)
	if !known {
		return a
	}
	a.Says = f.Says
	switch {
	case len(f.Words) > 0:
		a.Such = "one of: " + strings.Join(f.Words, ", ")
	case f.Example != "" && !f.Part:
		a.Such = "such as " + f.Example
	}
	return a
}

func (b *builder) kind(id string) string {
	if c := b.Record.Component(id); c != nil {
		return c.Kind.V
	}
	return ""
}

func plainAll(texts []string) []string {
	out := make([]string, len(texts))
	for i := range texts {
		out[i] = reports.Plain(texts[i])
	}
	return out
}
