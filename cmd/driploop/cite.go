package main

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/rules"
)

const citeLong = `List the rules, or read one: what it asks and why, what could happen, its limits
by practice set, the sources it rests on with clause and edition, what a record
has to say for it, and a record that breaks it with the cure.

Without RULE it lists all rules; with the name of a topic those of the topic; with
other words the rules that have all of them in their id, title, reasons or
sources. If one rule is left it is shown whole.

With --source the words name documents: of each you see every clause with the
rules that judge it, or why no record can decide it. With --practice they name
practice sets: of each you see the documents that it brings, with edition, force
and trust, and the rules that rest on them.

The rules of a yard, by the settings of the folder that you are in, stand among
them and are marked as the yard's own.

`

const citeExample = `  driploop cite
  driploop cite protection/device-too-far
  driploop cite penetrations
  driploop cite drip loop
  driploop cite --example penetrations/no-drip-loop > try.yaml
  driploop cite --source 33-cfr-183
  driploop cite --practice us-voluntary
  driploop cite --format json > rules.json`

type citeFlags struct {
	format   choice
	units    choice
	example  bool
	source   subject
	practice subject
	check    checkFlags
}

func newCite(s *session) *cobra.Command {
	f := &citeFlags{format: choice{value: "text", words: []string{"text", "json", "md"}}, units: choice{words: quantity.Systems()}}
	cmd := &cobra.Command{
		Use:     "cite [RULE | TOPIC | WORDS... | --source [SOURCE] | --practice [SET]]",
		Short:   "List the rules, or read one with its sources",
		Long:    citeLong + exitHelp,
		Example: citeExample,
		RunE:    func(cmd *cobra.Command, args []string) error { return s.cite(cmd, args, f) },
	}
	cmd.Flags().Var(&f.format, "format", "how to print: "+either(f.format.words))
	cmd.Flags().Var(&f.units, "units", unitsHelp("both for text, metric for json"))
	cmd.Flags().BoolVar(&f.example, "example", false, "print only the record that breaks the rule, to judge it")
	f.check.configFlag(cmd.Flags())
	f.source.flag(cmd, "source", "print documents: those named, with their clauses and the rules that judge them, or a list of all")
	f.practice.flag(cmd, "practice", "print practice sets: those named, or all, with the documents and rules that each brings")
	return cmd
}

// citer looks rules up and prints them.
type citer struct {
	*rules.Engine
	*session
	settings *yard.Settings
	entries  func() openFacts
	format   string
	o        reports.Options
}

func (s *session) cite(cmd *cobra.Command, args []string, f *citeFlags) error {
	entries := sync.OnceValue(blankEntries)
	if len(args) > 0 && !f.source.on && !f.practice.on {
		// Beside the compiling of the rules, to be ready with them.
		go func() {
			defer func() { _ = recover() }() // raised again for whoever asks
			entries()
		}()
	}
	settings, err := s.settle(cmd, []string{"."}, &f.check)
	if err != nil {
		return err
	}
	compiled, err := s.engineFor(settings)()
	if err != nil {
		return err
	}
	c := citer{Engine: compiled, session: s, settings: settings, entries: entries, format: f.format.value, o: s.options(f.units)}
	switch {
	case f.example && (f.source.on || f.practice.on):
		return errors.New("--example is of a rule: use it without --source and --practice")
	case f.source.on && f.practice.on:
		return errors.New("use --source or --practice, not both")
	case f.source.on:
		return c.documents(f.source.with(args))
	case f.practice.on:
		return c.practice(f.practice.with(args))
	}
	found, err := c.find(args)
	if err != nil {
		return err
	}
	whole := len(found) == 1 && len(args) > 0
	switch {
	case f.example && !whole:
		return fmt.Errorf("--example wants one rule; %d are meant", len(found))
	case f.example:
		return c.example(found[0])
	case c.format == "json":
		return c.json(found, whole)
	case whole:
		return c.rule(found[0])
	case c.format == "md":
		return reports.RuleListMarkdown(s.out, found)
	}
	return reports.RuleList(s.out, found, c.o)
}

func (c citer) example(r *verdict.Rule) error {
	var example rules.Example
	var err error
	if r.ID != yard.RequiredID {
		example, err = c.Example(r.ID)
	}
	if err == nil && example.Breach.Text == "" {
		err = fmt.Errorf("%s, a rule of the yard, has no example", r.ID)
	}
	if err != nil {
		return err
	}
	_, err = c.out.Write([]byte(example.Breach.Text))
	return err
}

func (c citer) rule(r *verdict.Rule) error {
	page, err := c.page(r, true)
	if err != nil {
		return err
	}
	if c.format == "md" {
		return reports.RuleMarkdown(c.out, page, c.o)
	}
	return reports.RuleText(c.out, page, c.o)
}

func (c citer) json(found []*verdict.Rule, whole bool) error {
	var pages []*reports.RulePage
	for _, r := range found {
		page, err := c.page(r, whole)
		if err != nil {
			return err
		}
		pages = append(pages, page)
	}
	return reports.RulesJSON(c.out, pages, c.o)
}

// page gathers all that is told of a rule; with whole also what costs time.
func (c citer) page(r *verdict.Rule, whole bool) (*reports.RulePage, error) {
	if r.ID == yard.RequiredID {
		return c.required(r), nil
	}
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
		page.Limits = append(page.Limits, reports.RuleLimit{Set: l.Set, Clause: clauseOf(r, l), When: l.When, Figures: l.Figures})
	}
	if !whole {
		return page, nil
	}
	page.Related = c.related(r)
	page.Needs = needs(r, c.entries())
	page.Entries = entriesOf(page.Needs)
	example, err := c.Example(r.ID)
	if err != nil {
		return nil, err
	}
	page.Breach = reports.RuleExample(example.Breach)
	page.Cure = reports.RuleExample(example.Cure)
	page.Open = reports.RuleExample(example.Open)
	return page, nil
}

// clauseOf returns where a limit stands: what it says itself, or the one clause
// that its practice set cites.
func clauseOf(r *verdict.Rule, l rules.Limit) string {
	if l.Clause != "" {
		return l.Clause
	}
	var cited []string
	for _, c := range r.Sources {
		if c.Set == l.Set {
			cited = append(cited, c.Clause)
		}
	}
	if len(cited) != 1 {
		return ""
	}
	return cited[0]
}

// related returns the rules that a rule names, and after them those that name
// it.
func (c citer) related(r *verdict.Rule) []*verdict.Rule {
	var all []*verdict.Rule
	for _, id := range r.Related {
		if other, err := c.Rule(id); err == nil { // the engine refuses unknown ones
			all = append(all, other)
		}
	}
	for _, other := range c.Rules() {
		if slices.Contains(other.Related, r.ID) && !slices.Contains(all, other) {
			all = append(all, other)
		}
	}
	return all
}
