package main

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
)

// find returns the rules that the words mean: an id, a topic, or words to search
// for.
func (c citer) find(words []string) ([]*verdict.Rule, error) {
	all := c.all()
	if len(words) == 1 && words[0] == yard.RequiredID {
		return []*verdict.Rule{yard.Required()}, nil
	}
	if len(words) == 0 {
		return all, nil
	}
	if len(words) == 1 {
		if named := only(all, func(r *verdict.Rule) bool { return isNamed(r, words[0]) }); len(named) > 0 {
			return named, nil
		}
	}
	if strings.Contains(words[0], "/") && len(words) == 1 {
		_, err := c.Rule(words[0]) // its error names the nearest
		return nil, err
	}
	found := only(all, func(r *verdict.Rule) bool { return hasWords(r, words) })
	if len(found) == 0 {
		return nil, fmt.Errorf("no rule has the words %q%s", strings.Join(words, " "), nearestRules(all, words))
	}
	return found, nil
}

// all returns every rule that there is, that of the yard's settings too if they
// ask for anything.
func (c citer) all() []*verdict.Rule {
	all := c.Rules()
	if r := c.settings.RequiredRule(); r != nil && len(c.settings.Documents) > 0 {
		all = append(all, r)
		slices.SortFunc(all, func(a, b *verdict.Rule) int { return strings.Compare(a.ID, b.ID) })
	}
	return all
}

// required is the page of the rule that a yard's settings make: no Rego, no
// example, and behind it nothing but the settings.
func (c citer) required(r *verdict.Rule) *reports.RulePage {
	told := *r
	for _, k := range c.settings.Explain() {
		if k.Key == "documents" && len(c.settings.Documents) > 0 {
			told.Applies += fmt.Sprintf("; here %s (%s)", reports.Plain(k.Value), reports.Plain(k.From))
		}
	}
	return &reports.RulePage{Rule: &told, Sources: []*verdict.Source{{
		ID: yard.SettingsName, Title: "The yard's settings", Issuer: "the yard itself", Force: verdict.Practice, Scope: "the records of the yard's own repository",
	}}}
}

func only(all []*verdict.Rule, is func(*verdict.Rule) bool) []*verdict.Rule {
	return slices.DeleteFunc(slices.Clone(all), func(r *verdict.Rule) bool { return !is(r) })
}

// isNamed tells whether a word is the id of a rule, its topic, or its name
// within the topic.
func isNamed(r *verdict.Rule, word string) bool {
	topic, name, _ := strings.Cut(r.ID, "/")
	return word == r.ID || word == topic || word == name
}

// hasWords tells whether a rule has every word somewhere in what it says.
func hasWords(r *verdict.Rule, words []string) bool {
	text := strings.Join([]string{r.ID, r.Title, r.Why, r.Applies, r.Remedy}, "\n")
	for _, c := range r.Sources {
		text += strings.Join([]string{"", c.Set, c.Source, c.Clause, c.Asks}, "\n")
	}
	text = strings.ToLower(text)
	for _, w := range words {
		if !strings.Contains(text, strings.ToLower(w)) {
			return false
		}
	}
	return true
}

// nearestRules suggests the rule whose id or name is nearest to the words.
func nearestRules(all []*verdict.Rule, words []string) string {
	ids, names := make([]string, len(all)), make([]string, len(all))
	for i, r := range all {
		ids[i] = r.ID
		_, names[i], _ = strings.Cut(r.ID, "/")
	}
	word := strings.Join(words, "-")
	if near := nearest(word, names); near != "" {
		return fmt.Sprintf("; did you mean %q?", ids[slices.Index(names, near)])
	}
	return meant(word, ids, "")
}
