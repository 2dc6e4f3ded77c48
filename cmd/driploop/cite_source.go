package main

import (
	"slices"

	"driploop/model/verdict"
	"driploop/reports"
)

// documents prints the documents that are named, or a list of all.
func (c citer) documents(named []string) error {
	pages, err := c.sourcePages()
	if err != nil {
		return err
	}
	if len(named) == 0 {
		switch c.format {
		case "json":
			return reports.SourcesJSON(c.out, pages)
		case "md":
			return reports.SourceListMarkdown(c.out, pages)
		}
		return reports.SourceList(c.out, pages, c.o)
	}
	var wanted []*reports.SourcePage
	for _, id := range named {
		source, err := c.Source(id) // its error names the nearest
		if err != nil {
			return err
		}
		at := slices.IndexFunc(pages, func(p *reports.SourcePage) bool { return p.Source == source })
		wanted = append(wanted, pages[at])
	}
	switch c.format {
	case "json":
		return reports.SourcesJSON(c.out, wanted)
	case "md":
		return reports.SourcesMarkdown(c.out, wanted)
	}
	return reports.Sources(c.out, wanted, c.o)
}

// sourcePages returns a page for every source: with all its clauses if they are
// listed, else with what rules cite.
func (c citer) sourcePages() ([]*reports.SourcePage, error) {
	coverage, err := c.Coverage()
	if err != nil {
		return nil, err
	}
	var pages []*reports.SourcePage
	for _, s := range c.Sources() {
		page := &reports.SourcePage{Coverage: verdict.Coverage{Source: s}}
		at := slices.IndexFunc(coverage, func(v verdict.Coverage) bool { return v.Source == s })
		if page.Listed = at >= 0; page.Listed {
			page.Coverage = coverage[at]
		}
		c.cited(page)
		pages = append(pages, page)
	}
	return pages, nil
}

// cited fills in which sets bring a source, and its clauses where they are not
// listed.
func (c citer) cited(page *reports.SourcePage) {
	for _, set := range c.Sets() {
		for _, r := range c.Rules() {
			for _, citation := range r.Sources {
				if citation.Source != page.Source.ID || citation.Set != set.ID {
					continue
				}
				if !slices.Contains(page.Sets, set.ID) {
					page.Sets = append(page.Sets, set.ID)
				}
				if !page.Listed {
					page.Clauses = append(page.Clauses, verdict.Clause{
						Clause: citation.Clause, Asks: citation.Asks + " (" + reports.Trust(citation.Trust) + ")", Rules: []string{r.ID},
					})
				}
			}
		}
	}
}
