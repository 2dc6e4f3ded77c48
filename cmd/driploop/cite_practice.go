package main

import (
	"fmt"
	"slices"

	"driploop/reports"
	"driploop/rules"
)

// practice prints the practice sets that are named, or all.
func (c citer) practice(named []string) error {
	all := c.Sets()
	ids := make([]string, len(all))
	for i, set := range all {
		ids[i] = set.ID
	}
	if len(named) == 0 {
		named = ids
	}
	var pages []*reports.PracticePage
	for _, id := range named {
		at := slices.Index(ids, id)
		if at < 0 {
			return fmt.Errorf("no practice set %q%s; there are %s", id, meant(id, ids, ""), either(ids))
		}
		pages = append(pages, c.practicePage(all[at]))
	}
	switch c.format {
	case "json":
		return reports.PracticesJSON(c.out, pages)
	case "md":
		return reports.PracticesMarkdown(c.out, pages)
	}
	return reports.Practices(c.out, pages, c.o)
}

// practicePage gathers the documents of a practice set in the order of the
// register, each with the rules that rest on it.
func (c citer) practicePage(set rules.Set) *reports.PracticePage {
	page := &reports.PracticePage{ID: set.ID, Title: set.Title, Description: set.Description, Documents: []reports.PracticeDocument{}}
	for _, source := range c.Sources() {
		document := reports.PracticeDocument{Source: source}
		for _, r := range c.Rules() {
			for _, cited := range r.Sources {
				if cited.Set == set.ID && cited.Source == source.ID {
					document.Rules = append(document.Rules, reports.PracticeRule{ID: r.ID, Clause: cited.Clause, Trust: cited.Trust})
				}
			}
		}
		if len(document.Rules) > 0 {
			page.Documents = append(page.Documents, document)
		}
	}
	return page
}
