package reports

import (
	"fmt"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// Line is what came of one line of a stream of records.
type Line struct {
	Number int             // of the line, from 1
	Path   string          // the record's name
	Record *verdict.Record // nil if it could not be judged
	Faults []verdict.Fault
}

type jsonLine struct {
	Line int    `json:"line"`
	Path string `json:"path"` // of a record that could not be judged, too
	*jsonRecord
	Tool   jsonTool    `json:"tool"`
	Errors []jsonError `json:"errors,omitempty"`
}

// LineText is what came of one line as one line of JSON: an entry of "records" of
// the JSON format, or the errors for which there is none. Each line stands for
// itself and names the program and the rules, since lines that were judged on many
// machines end in one place.
func LineText(l Line, head verdict.Run, o Options) ([]byte, error) {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	out := jsonLine{Line: l.Number, Path: l.Path, Tool: jsonTool{head.Version, head.Rules}, Errors: errorsJSON(l.Faults)}
	if l.Record != nil {
		rec := recordJSON(l.Record, o)
		out.jsonRecord = &rec
	}
	text, err := jsonText(out, compact)
	if err != nil {
		return nil, fmt.Errorf("line %d: %w", l.Number, err)
	}
	return append(text, '\n'), nil
}

func errorsJSON(faults []verdict.Fault) []jsonError {
	all := make([]jsonError, 0, len(faults))
	for _, f := range faults {
		all = append(all, jsonError{Path: f.Path, Line: f.At.Line, Column: f.At.Column, Says: f.Says})
	}
	return all
}
