package main

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
	"driploop/rules"
)

const citeLong = `List the rules, or read one: what it asks and why, what could happen, its limits
by practice set, the sources it rests on with clause and edition, what a record
has to say for it, and a record that breaks it with the cure.

Without RULE it lists all rules; with the name of a topic those of the topic; with
other words the rules that have all of them in their id, title, reasons or
sources. If one rule is left it is shown whole.

`

const citeExample = `  driploop cite
  driploop cite protection/device-too-far
  driploop cite penetrations
  driploop cite drip loop
  driploop cite --example penetrations/no-drip-loop > try.yaml
  driploop cite --format json > rules.json`

type citeFlags struct {
	format  choice
	units   choice
	example bool
}

func newCite(s *session) *cobra.Command {
	f := &citeFlags{format: choice{value: "text", words: []string{"text", "json"}}, units: choice{words: quantity.Systems()}}
	cmd := &cobra.Command{
		Use:     "cite [RULE | TOPIC | WORDS...]",
		Short:   "List the rules, or read one with its sources",
		Long:    citeLong + exitHelp,
		Example: citeExample,
		RunE:    func(_ *cobra.Command, args []string) error { return s.cite(args, f) },
	}
	cmd.Flags().Var(&f.format, "format", "how to print: "+either(f.format.words))
	cmd.Flags().Var(&f.units, "units", unitsHelp("both for text, metric for json"))
	cmd.Flags().BoolVar(&f.example, "example", false, "print only the record that breaks the rule, to judge it")
	return cmd
}

// citer looks rules up and prints them.
type citer struct {
	*rules.Engine
	*session
	entries func() openFacts
}

func (s *session) cite(args []string, f *citeFlags) error {
	entries := sync.OnceValue(blankEntries)
	if len(args) > 0 {
		// Beside the compiling of the rules, to be ready with them.
		go func() {
			defer func() { _ = recover() }() // raised again for whoever asks
			entries()
		}()
	}
	compiled, err := s.engine()
	if err != nil {
		return err
	}
	c := citer{Engine: compiled, session: s, entries: entries}
	found, err := c.find(args)
	if err != nil {
		return err
	}
	whole := len(found) == 1 && len(args) > 0
	switch {
	case f.example && !whole:
		return fmt.Errorf("--example wants one rule; %d are meant", len(found))
	case f.example:
		example, err := c.Example(found[0].ID)
		if err != nil {
			return err
		}
		_, err = s.out.Write([]byte(example.Breach.Text))
		return err
	case f.format.value == "json":
		return c.json(found, whole, s.options(f.units))
	case whole:
		page, err := c.page(found[0], true)
		if err != nil {
			return err
		}
		return reports.RuleText(s.out, page, s.options(f.units))
	}
	return reports.RuleList(s.out, found, s.options(f.units))
}

func (c citer) json(found []*verdict.Rule, whole bool, o reports.Options) error {
	var pages []*reports.RulePage
	for _, r := range found {
		page, err := c.page(r, whole)
		if err != nil {
			return err
		}
		pages = append(pages, page)
	}
	return reports.RulesJSON(c.out, pages, o)
}

// find returns the rules that the words mean: an id, a topic, or words to search
// for.
func (c citer) find(words []string) ([]*verdict.Rule, error) {
	all := c.Rules()
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

// page gathers all that is told of a rule; with whole also what costs time.
func (c citer) page(r *verdict.Rule, whole bool) (*reports.RulePage, error) {
	page := &reports.RulePage{Rule: r}
	for _, cited := range r.Sources {
		source, err := c.Source(cited.Source)
		if err != nil {
			return nil, err
		}
		if !slices.Contains(page.Sources, source) {
			page.Sources = append(page.Sources, source)
		}
	}
	limits, err := c.Limits(r.ID)
	if err != nil {
		return nil, err
	}
	for _, l := range limits {
		page.Limits = append(page.Limits, reports.RuleLimit{Set: l.Set, When: l.When, Figures: l.Figures})
	}
	if !whole {
		return page, nil
	}
	page.Needs = needs(r, c.entries())
	example, err := c.Example(r.ID)
	if err != nil {
		return nil, err
	}
	page.Breach = reports.RuleExample(example.Breach)
	page.Cure = reports.RuleExample(example.Cure)
	page.Open = reports.RuleExample(example.Open)
	return page, nil
}
