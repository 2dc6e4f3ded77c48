package editor

import (
	"strings"

	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
)

// actions are what would clear the breaches at a place, each proven by judging
// again.
func (s *server) actions(d *document, at textRange) ([]codeAction, error) {
	all := []codeAction{}
	d.solve()
	judged, err := s.judged(d)
	if err != nil || judged == nil {
		return all, err
	}
	for i := range judged.Verdicts {
		v := &judged.Verdicts[i]
		here := lspRange(d.lines, v.At)
		if v.Outcome != verdict.Breach || here.Start.Line > at.End.Line || here.End.Line < at.Start.Line {
			continue
		}
		cures, err := s.program.Cures(d.path(), []byte(d.text), v)
		if err != nil {
			return nil, err
		}
		for _, c := range cures {
			action, err := d.action(v, c)
			if err != nil {
				return nil, err
			}
			all = append(all, action)
		}
	}
	return all, nil
}

// action makes one cure, as an edit of the whole text, which editors reduce to
// what differs.
func (d *document) action(v *verdict.Verdict, c remedy.Cure) (codeAction, error) {
	var says []string
	for _, change := range c.Changes {
		says = append(says, change.Path+": "+change.Value)
	}
	title := "Set " + strings.Join(says, ", ")
	if c.Work {
		title = "Once the work is done: set " + strings.Join(says, ", ")
	}
	text, err := record.Edit(d.name(), []byte(d.text), c.Changes...)
	if err != nil {
		return codeAction{}, err
	}
	return codeAction{
		Title: title, Kind: "quickfix", Diagnostics: []diagnostic{d.breach(v)},
		Edit: &workspaceEdit{Changes: map[string][]textEdit{d.uri: {{Range: whole(d.text), NewText: string(text)}}}},
	}, nil
}
