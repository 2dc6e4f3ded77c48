package main

import (
	_ "embed"
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"driploop/model/verdict"
	"driploop/reports"
)

//go:embed blank.yaml
var blankRecord []byte

// needs lists the facts that a rule needs, each with the entries of a record
// that it comes from.
func needs(r *verdict.Rule, entries openFacts) []reports.RuleNeed {
	var all []reports.RuleNeed
	add := func(facts []string, when string) {
		for _, fact := range facts {
			if !slices.ContainsFunc(all, func(n reports.RuleNeed) bool { return n.Fact == fact }) {
				all = append(all, reports.RuleNeed{Fact: fact, When: when, Entries: entries.of(r.Subject, fact)})
			}
		}
	}
	add(r.Needs, "")
	add(r.Asks, "where the case calls for it")
	add(r.Decides, "to tell whether the rule applies")
	for _, c := range r.Sources {
		add(c.Needs, "under "+c.Set)
	}
	return all
}

// openFacts holds, by collection and fact, the entries that would make the fact
// known.
type openFacts map[string]map[string][]string

// of returns the entries behind a fact of a collection, or of the vessel or job
// where the fact's name says so.
func (o openFacts) of(collection, fact string) []string {
	if single, name, ok := strings.Cut(fact, "."); ok {
		collection, fact = single, name
	}
	return o[collection][fact]
}

// blankEntries reads from the facts of the blank record which entry each fact
// comes from: the model itself knows, and nothing has to be kept in step.
func blankEntries() openFacts {
	blank, faults := solve("blank.yaml", blankRecord)
	if len(faults) > 0 {
		panic(faults[0].Says)
	}
	text, err := json.Marshal(blank.facts())
	if err != nil {
		panic(err)
	}
	var document map[string]json.RawMessage
	if err := json.Unmarshal(text, &document); err != nil {
		panic(err)
	}
	all := openFacts{}
	for collection, held := range document {
		all[collection] = map[string][]string{}
		var subjects map[string]json.RawMessage
		if json.Unmarshal(held, &subjects) != nil {
			continue // "format", "practice"
		}
		all.add(collection, held)
		for _, id := range slices.Sorted(maps.Keys(subjects)) {
			all.add(collection, subjects[id])
		}
	}
	return all
}

// add notes the open facts of one subject.
func (o openFacts) add(collection string, subject json.RawMessage) {
	var held struct {
		Open map[string][]struct{ Field string }
	}
	if json.Unmarshal(subject, &held) != nil {
		return
	}
	for fact, gaps := range held.Open {
		for _, gap := range gaps {
			entry := reports.Pattern(gap.Field)
			if gap.Field != "" && !slices.Contains(o[collection][fact], entry) {
				o[collection][fact] = append(o[collection][fact], entry)
			}
		}
	}
}
