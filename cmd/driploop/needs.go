package main

import (
	_ "embed"
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"driploop/model/record"
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
	add(r.Asks, "only where the case calls for it")
	add(r.Decides, "to tell whether the rule applies")
	for _, c := range r.Sources {
		add(c.Needs, "under "+c.Set)
	}
	return all
}

// entriesOf lists the entries behind needs, each once, with what the format says
// of it. What is needed in all cases is not said to be so in some.
func entriesOf(all []reports.RuleNeed) []reports.RuleEntry {
	var entries []reports.RuleEntry
	for _, n := range all {
		for _, path := range n.Entries {
			at := slices.IndexFunc(entries, func(e reports.RuleEntry) bool { return e.Path == path })
			switch {
			case at < 0:
				field, _ := record.Describe(anExample.Replace(path), func(string) string { return "" })
				entries = append(entries, reports.RuleEntry{Path: path, Says: field.Says, Example: field.Example, When: n.When})
			case n.When == "":
				entries[at].When = ""
			}
		}
	}
	return entries
}

// anExample makes of the pattern of an entry the path of one.
var anExample = strings.NewReplacer(".ends.*", ".ends.from", "[*]", "[0]", ".*", ".any")

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
