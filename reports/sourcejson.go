package reports

import (
	"io"

	"driploop/model/verdict"
)

// Names of the versions of the JSON formats of documents and practice sets.
const (
	SourcesFormat  = "driploop.sources/1"
	PracticeFormat = "driploop.practice/1"
)

type jsonDocument struct {
	*verdict.Source
	Sets    []string         `json:"sets"`
	Covers  string           `json:"covers,omitempty"` // which clauses are listed; absent where only what rules cite is
	Clauses []verdict.Clause `json:"clauses"`
}

// SourcesJSON writes documents with their clauses and rules for programs.
func SourcesJSON(w io.Writer, pages []*SourcePage) error {
	all := make([]jsonDocument, len(pages))
	for i, p := range pages {
		all[i] = jsonDocument{Source: p.Source, Sets: entriesOf(p.Sets), Covers: p.Covers, Clauses: entriesOf(p.Clauses)}
	}
	return WriteJSON(w, map[string]any{"format": SourcesFormat, "sources": all})
}

// PracticesJSON writes practice sets for programs.
func PracticesJSON(w io.Writer, pages []*PracticePage) error {
	return WriteJSON(w, map[string]any{"format": PracticeFormat, "sets": pages})
}

// entriesOf keeps an empty list from being null.
func entriesOf[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
