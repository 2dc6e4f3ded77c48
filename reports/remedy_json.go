package reports

import (
	"encoding/json"
	"io"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/remedy"
)

// RemedyFormat names the version of the JSON of remedies.
const RemedyFormat = "driploop.remedies/1"

type jsonRemedies struct {
	Format  string       `json:"format"`
	Path    string       `json:"path"`
	Job     string       `json:"job"`
	Written bool         `json:"written"`
	Made    []jsonRemedy `json:"made"`  // a matter of the record alone
	Tasks   []jsonRemedy `json:"tasks"` // work to do
	Before  jsonCounts   `json:"before"`
	After   jsonCounts   `json:"after"`
	Caution string       `json:"caution"`
}

type jsonRemedy struct {
	Breach jsonVerdict `json:"breach"`
	Cures  []jsonCure  `json:"cures"` // that of choice first; empty if hands alone can do it
}

type jsonCure struct {
	Changes  []jsonChange `json:"changes"`
	Again    []string     `json:"take_anew"`
	Work     bool         `json:"work"` // to be done on board before the record may say so
	CopperKG float64      `json:"more_copper_kg"`
}

type jsonChange struct {
	Entry string `json:"entry"`
	To    string `json:"to"`
	Was   string `json:"was,omitempty"`
}

// RemediesJSON writes as JSON what Remedies prints.
func RemediesJSON(w io.Writer, plan *remedy.Plan, old map[string]string, written bool, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	all := func(items []remedy.Item) []jsonRemedy {
		list := []jsonRemedy{}
		for _, i := range items {
			list = append(list, remedyJSON(i, plan.Before.Job, old, o.Units))
		}
		return list
	}
	text, err := json.MarshalIndent(jsonRemedies{
		Format: RemedyFormat, Path: plan.Before.Path, Job: plan.Before.Job, Written: written, Made: all(plan.Made), Tasks: all(plan.Tasks),
		Before: countsJSON(plan.Before.Counts), After: countsJSON(plan.After.Counts), Caution: Caution,
	}, "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(text, '\n'))
	return err
}

func remedyJSON(i remedy.Item, job string, old map[string]string, units quantity.System) jsonRemedy {
	out := jsonRemedy{Breach: verdictJSON(i.Breach, job, units), Cures: []jsonCure{}}
	if i.Cure != nil {
		for _, c := range append([]remedy.Cure{*i.Cure}, i.Others...) {
			out.Cures = append(out.Cures, cureJSON(c, old))
		}
	}
	return out
}

func cureJSON(c remedy.Cure, old map[string]string) jsonCure {
	out := jsonCure{Changes: []jsonChange{}, Again: append([]string{}, c.Again...), Work: c.Work, CopperKG: quantity.Round(c.CopperKG)}
	for _, change := range c.Changes {
		out.Changes = append(out.Changes, jsonChange{Entry: change.Path, To: change.Value, Was: oldValue(change, old)})
	}
	return out
}

// oldValue is what an entry said before; empty if it was not written.
func oldValue(c record.Change, old map[string]string) string {
	_, value, _ := strings.Cut(old[c.Path], " ")
	return value
}
