package reports

import (
	"io"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// RulesFormat names the version of the JSON format of rules.
const RulesFormat = "driploop.rules/1"

type jsonRules struct {
	Format  string            `json:"format"`
	Rules   []jsonRule        `json:"rules"`
	Sources []*verdict.Source `json:"sources"`
}

type jsonRule struct {
	*verdict.Rule
	Yard    bool          `json:"yard,omitempty"` // it is the yard's own
	Limits  []jsonLimit   `json:"limits"`
	Entries []jsonNeed    `json:"entries,omitempty"`
	Example *jsonExamples `json:"example,omitempty"`
}

type jsonLimit struct {
	Set    string            `json:"set"`
	Clause string            `json:"clause,omitempty"`
	When   string            `json:"when,omitempty"`
	Limit  map[string]string `json:"limit"`
}

type jsonNeed struct {
	Fact    string   `json:"fact"`
	When    string   `json:"when,omitempty"`
	Entries []string `json:"entries"`
}

type jsonExamples struct {
	Breach string `json:"breach"`
	Cure   string `json:"cure"`
	Open   string `json:"open"`
}

// RulesJSON writes pages of rules for programs, with the sources they cite.
func RulesJSON(w io.Writer, pages []*RulePage, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	tree := jsonRules{Format: RulesFormat, Rules: []jsonRule{}, Sources: []*verdict.Source{}}
	seen := map[string]bool{}
	for _, page := range pages {
		tree.Rules = append(tree.Rules, ruleJSON(page, o))
		for _, s := range page.Sources {
			if !seen[s.ID] {
				seen[s.ID] = true
				tree.Sources = append(tree.Sources, s)
			}
		}
	}
	return WriteJSON(w, tree)
}

func ruleJSON(page *RulePage, o Options) jsonRule {
	out := jsonRule{Rule: page.Rule, Yard: page.Rule.OfYard(), Limits: []jsonLimit{}}
	for _, l := range page.Limits {
		out.Limits = append(out.Limits, jsonLimit{Set: l.Set, Clause: l.Clause, When: l.When, Limit: printed(l.Figures, func(f verdict.Figure) string { return f.Print(o.Units) })})
	}
	for _, n := range page.Needs {
		entries := n.Entries
		if entries == nil {
			entries = []string{}
		}
		out.Entries = append(out.Entries, jsonNeed{Fact: n.Fact, When: n.When, Entries: entries})
	}
	if page.Breach.Text != "" {
		out.Example = &jsonExamples{Breach: page.Breach.Text, Cure: page.Cure.Text, Open: page.Open.Text}
	}
	return out
}
