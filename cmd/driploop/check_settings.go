package main

import (
	"fmt"
	"os"
	"slices"
	"sync"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/rules"
)

// noConfig is the word for judging without settings.
const noConfig = "none"

// settle finds and reads the settings, and lets them stand where no flag was
// given.
func (s *session) settle(cmd *cobra.Command, args []string, f *checkFlags) (*yard.Settings, error) {
	path := f.config
	var err error
	if path == "" {
		if path, err = yard.Locate(args); err != nil {
			return nil, err
		}
	}
	if path == "" || path == noConfig {
		return &yard.Settings{}, nil
	}
	settings, faults := yard.Load(path)
	if len(faults) > 0 {
		return nil, s.refuse(faults, "the settings cannot be used")
	}
	given := cmd.Flags().Changed
	if !given("gate") && settings.Gate.V != "" {
		f.gate.value = settings.Gate.V
	}
	if !given("units") && settings.Units.V != "" {
		f.units.value = settings.Units.V
	}
	if !given("complete") && settings.Complete.At.Line > 0 {
		f.complete = settings.Complete.V
	}
	return settings, nil
}

// refuse prints faults as those of a record are, and returns the error that ends
// the command.
func (s *session) refuse(faults []verdict.Fault, says string) error {
	sources := map[string]*reports.Source{}
	for _, f := range faults {
		if text, err := s.read(f.Path); err == nil {
			sources[f.Path] = reports.NewSource(text, nil)
		}
	}
	if err := reports.Text(s.errs, &verdict.Run{Faults: faults}, reports.Options{Sources: sources}); err != nil {
		return err
	}
	return fmt.Errorf("%s", says)
}

// tellSettings prints each setting that holds, and where it comes from.
func (s *session) tellSettings(cmd *cobra.Command, settings *yard.Settings, f *checkFlags) error {
	e, err := s.engine()
	if err != nil {
		return err
	}
	if _, err := practiceOf(e, settings); err != nil {
		return err
	}
	flags := map[string]string{"gate": f.gate.value, "units": f.units.value, "complete": fmt.Sprint(f.complete)}
	path := settings.Path
	if path == "" {
		path = "none; a yard keeps them in " + yard.SettingsName + " at the root of its repository"
	}
	fmt.Fprintf(s.out, "settings  %s\n", reports.Plain(path))
	for _, k := range settings.Explain() {
		if value, is := flags[k.Key]; is && cmd.Flags().Changed(k.Key) {
			k.Value, k.From = value, "--"+k.Key
		}
		fmt.Fprintf(s.out, "\n%s: %s\n  from   %s\n  means  %s\n", k.Key, reports.Plain(k.Value), reports.Plain(k.From), k.Says)
	}
	return nil
}

// configFlag gives a command that judges no record the flag for the settings.
func (f *checkFlags) configFlag(flags *pflag.FlagSet) {
	flags.StringVar(&f.config, "config", "", `the settings of the yard (default: driploop.yaml above this folder; "none" for none)`)
}

// takeRules has the records judged by the yard's own rules, too.
func (s *session) takeRules(settings *yard.Settings) { s.engine = s.engineFor(settings) }

// engineFor is the engine with the yard's own rules, if it has any.
func (s *session) engineFor(settings *yard.Settings) engine {
	if len(settings.Rules) == 0 {
		return s.engine
	}
	return sync.OnceValues(func() (*rules.Engine, error) {
		var folders []*rules.Folder
		for _, f := range settings.Rules {
			if info, err := os.Stat(f.Path); err != nil || !info.IsDir() {
				return nil, fmt.Errorf("%s:%d:%d: there is no folder %s for rules", settings.Path, f.At.Line, f.At.Column, f.Path)
			}
			folder, err := rulesIn(f.Path)
			if err != nil {
				return nil, err
			}
			folders = append(folders, folder)
		}
		return rules.NewWith(folders...)
	})
}

// rulesIn opens a folder of rules, out of which no link leads.
func rulesIn(path string) (*rules.Folder, error) {
	root, err := os.OpenRoot(path)
	if err != nil {
		return nil, err
	}
	return &rules.Folder{Path: path, Files: root.FS()}, nil
}

// practice is what the settings make of the rules: the practice sets in force
// beside those of a record, and other severities.
type practice struct {
	settings *yard.Settings
	sets     []string
	also     []string // the set of the yard's own rules, if it has any
	changes  map[string]yard.Change
	lowered  map[string]int // dangers shown as less, by rule
}

// practiceOf holds the settings against the rules that there are.
func practiceOf(e *rules.Engine, settings *yard.Settings) (practice, error) {
	p := practice{settings: settings, sets: settings.Practice.V, changes: map[string]yard.Change{}, lowered: map[string]int{}}
	if len(settings.Rules) > 0 {
		p.also = []string{rules.YardSet}
	}
	for _, c := range settings.Severity {
		if _, err := e.Rule(c.Rule); err != nil && c.Rule != yard.RequiredID {
			return p, fmt.Errorf("%s:%d:%d: severity: %w", settings.Path, c.At.Line, c.At.Column, err)
		}
		p.changes[c.Rule] = c
	}
	return p, nil
}

// inForce returns the practice sets to judge a record by: the yard's, and those
// that the record names beside them.
func (p *practice) inForce(named []string, byItself bool) []string {
	all := slices.Clone(p.sets)
	if byItself || len(all) == 0 {
		all = append(all, named...)
	}
	return distinct(append(all, p.also...))
}

// distinct keeps the first of equal words.
func distinct(words []string) []string {
	var kept []string
	for _, w := range words {
		if !slices.Contains(kept, w) {
			kept = append(kept, w)
		}
	}
	return kept
}

// recast gives the breaches of a record the severities that the yard wants. What
// a danger was stays with the verdict, for every report to show.
func (p *practice) recast(rec *verdict.Record) {
	if len(p.changes) == 0 {
		return
	}
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		c, is := p.changes[v.Rule.ID]
		if !is {
			continue
		}
		to := c.To
		if c.To < v.Rule.Severity {
			to = min(c.To, v.Severity)
		}
		if to == v.Severity {
			continue
		}
		stands := v.Outcome == verdict.Breach || v.Outcome == verdict.Waived
		if stands {
			v.Recast = &verdict.Recast{From: v.Severity, Why: c.Reason, Where: p.place(c.At)}
		}
		v.Severity = to
	}
}

// lowered counts the dangers of a record that are shown as less, by rule.
func lowered(rec *verdict.Record) map[string]int {
	var all map[string]int
	for i := range rec.Verdicts {
		if v := &rec.Verdicts[i]; v.Recast != nil && v.Recast.From == verdict.Danger {
			if all == nil {
				all = map[string]int{}
			}
			all[v.Rule.ID]++
		}
	}
	return all
}

func (p *practice) place(at verdict.Position) string {
	return fmt.Sprintf("%s:%d:%d", p.settings.Path, at.Line, at.Column)
}

// notes says which dangers are shown as less.
func (p *practice) notes() (all []string) {
	for _, c := range p.settings.Severity {
		if n := p.lowered[c.Rule]; n > 0 {
			all = append(all, fmt.Sprintf("%d of severity danger shown as %s: %s, by %s (%s)", n, c.To, c.Rule, p.place(c.At), c.Reason))
		}
	}
	return all
}
