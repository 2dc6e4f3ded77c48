package yard

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// Setting is one setting as it holds, and where it comes from.
type Setting struct {
	Key, Value, From, Says string
}

// Explain tells every setting: its value, and the place in the file that gives
// it or the default that holds.
func (s *Settings) Explain() []Setting {
	var all []Setting
	for _, k := range settings() {
		value, at := s.told(k.key)
		from := "default"
		if at.Line > 0 {
			from = fmt.Sprintf("%s:%d:%d", s.Path, at.Line, at.Column)
		}
		all = append(all, Setting{k.key, value, from, k.says})
	}
	return all
}

// told gives a setting in words, with its place.
func (s *Settings) told(key string) (string, verdict.Position) {
	none := verdict.Position{}
	switch key {
	case "practice":
		return or(strings.Join(s.Practice.V, ", "), "as each record says; us-federal and workmanship if it does not"), s.Practice.At
	case "gate":
		return or(s.Gate.V, verdict.Warning.String()), s.Gate.At
	case "complete":
		return fmt.Sprint(s.Complete.V), s.Complete.At
	case "units":
		return or(s.Units.V, "what suits the format"), s.Units.At
	case "baseline":
		return or(s.Baseline.V, "none"), s.Baseline.At
	case "severity":
		var parts []string
		for _, c := range s.Severity {
			parts = append(parts, fmt.Sprintf("%s to %s (%s)", c.Rule, c.To, c.Reason))
			none = first(none, c.At)
		}
		return or(strings.Join(parts, "; "), "as the rules say"), none
	case "include":
		return or(texts(s.Include), "every YAML file"), placeOf(s.Include)
	case "exclude":
		return or(texts(s.Exclude), "nothing"), placeOf(s.Exclude)
	case "rules":
		var parts []string
		for _, f := range s.Rules {
			parts = append(parts, f.Text)
			none = first(none, f.At)
		}
		return or(strings.Join(parts, ", "), "those of the program only"), none
	case "documents":
		var parts []string
		for _, d := range s.Documents {
			wanted := slices.Clone(d.Entries)
			for _, f := range d.Files {
				wanted = append(wanted, f.Text)
			}
			parts = append(parts, d.Kind+": "+strings.Join(wanted, ", "))
			none = first(none, d.At)
		}
		return or(strings.Join(parts, "; "), "none"), none
	}
	panic("no setting " + key)
}

func first(a, b verdict.Position) verdict.Position {
	if a.Line > 0 {
		return a
	}
	return b
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

func texts(patterns []Pattern) string {
	parts := make([]string, len(patterns))
	for i, p := range patterns {
		parts[i] = p.Text
	}
	return strings.Join(parts, ", ")
}

func placeOf(patterns []Pattern) verdict.Position {
	if len(patterns) == 0 {
		return verdict.Position{}
	}
	return patterns[0].At
}
