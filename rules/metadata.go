package rules

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// metadata is the METADATA comment of a rule as written.
type metadata struct {
	Title       string              `yaml:"title"`
	Description string              `yaml:"description"`
	Schemas     []map[string]string `yaml:"schemas"`
	Custom      custom              `yaml:"custom"`

	columns map[string]int // like lines
	lines   map[string]int // line in the file of "title", "custom.needs", "custom.needs.0", ...
	first   int            // line of the comment's first entry
}

// custom is what our rules add to OPA's own metadata.
type custom struct {
	ID       string     `yaml:"id"`
	Severity string     `yaml:"severity"`
	Subject  string     `yaml:"subject"`
	Applies  string     `yaml:"applies"`
	Needs    []string   `yaml:"needs"`
	Asks     []string   `yaml:"asks"`
	Decides  []string   `yaml:"decides"`
	Says     string     `yaml:"says"`
	Remedy   string     `yaml:"remedy"`
	Mends    []string   `yaml:"mends"`
	Sources  []citation `yaml:"sources"`
	Related  []string   `yaml:"related"`
	Since    string     `yaml:"since"`
}

// citation is one entry of a rule's sources.
type citation struct {
	Set    string   `yaml:"set"`
	Source string   `yaml:"source"`
	Clause string   `yaml:"clause"`
	Asks   string   `yaml:"asks"`
	Trust  string   `yaml:"trust"`
	Needs  []string `yaml:"needs"`
}

// readMetadata reads the METADATA comment that stands before the package of a
// file. Lines are those of the file.
func readMetadata(text string) (*metadata, error) {
	var block strings.Builder
	found, first := false, 0
	for number, line := range strings.Split(text, "\n") {
		comment, ok := strings.CutPrefix(line, "#")
		switch {
		case !found && strings.TrimSpace(comment) == "METADATA" && ok:
			found, first = true, number+2
			block.WriteByte('\n')
		case !found && strings.HasPrefix(line, "package "):
			return nil, errors.New("no METADATA comment before the package")
		case !found:
			block.WriteByte('\n')
		case !ok:
			return decodeMetadata(block.String(), first)
		default:
			block.WriteString(strings.TrimPrefix(comment, " "))
			block.WriteByte('\n')
		}
	}
	return nil, errors.New("no METADATA comment before the package")
}

// entries lists what each level of a METADATA comment may hold. "*" stands for
// the entries of a list.
var entries = map[string][]string{
	"":                 {"title", "description", "schemas", "custom"},
	"schemas.*":        {"input"},
	"custom":           {"id", "severity", "subject", "applies", "needs", "asks", "decides", "says", "remedy", "mends", "sources", "related", "since"},
	"custom.sources.*": {"set", "source", "clause", "asks", "trust", "needs"},
}

func decodeMetadata(block string, first int) (*metadata, error) {
	m := &metadata{first: first, lines: map[string]int{}, columns: map[string]int{}}
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(block), &document); err != nil {
		return nil, err
	}
	if len(document.Content) == 0 {
		return m, nil
	}
	if err := m.note("", "", document.Content[0]); err != nil {
		return nil, err
	}
	return m, document.Content[0].Decode(m)
}

// note keeps the line of every entry below a node, and refuses unknown ones.
// The form of a path has "*" for the numbers of list entries.
func (m *metadata) note(path, form string, node *yaml.Node) error {
	m.lines[path], m.columns[path] = node.Line, node.Column+len("# ")
	switch node.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(node.Content); i += 2 {
			key, value := node.Content[i], node.Content[i+1]
			if known := entries[form]; !slices.Contains(known, key.Value) {
				return fmt.Errorf("line %d: %q is no entry here%s", key.Line, key.Value, meant(key.Value, known))
			}
			if err := m.note(join(path, key.Value), join(form, key.Value), value); err != nil {
				return err
			}
			m.lines[join(path, key.Value)], m.columns[join(path, key.Value)] = key.Line, key.Column+len("# ")
		}
	case yaml.SequenceNode:
		for i, item := range node.Content {
			if err := m.note(entry(path, i), join(form, "*"), item); err != nil {
				return err
			}
		}
	}
	return nil
}

// place returns where an entry stands, or where it is missing.
func (m *metadata) place(path string) (line, column int) {
	for path != "" {
		if line, ok := m.lines[path]; ok {
			return line, m.columns[path]
		}
		path = cutLast(path)
	}
	return m.first, len("# ") + 1
}

// describe returns the rule as the metadata describes it.
func (m *metadata) describe(severity verdict.Severity) verdict.Rule {
	c := &m.Custom
	r := verdict.Rule{
		ID: c.ID, Title: m.Title, Why: strings.TrimSpace(m.Description), Severity: severity, Subject: c.Subject, Applies: c.Applies,
		Needs: list(c.Needs), Asks: list(c.Asks), Decides: list(c.Decides),
		Says: c.Says, Remedy: c.Remedy, Mends: c.Mends, Related: list(c.Related), Since: c.Since,
	}
	for _, s := range c.Sources {
		r.Sources = append(r.Sources, verdict.Citation{
			Set: s.Set, Source: s.Source, Clause: s.Clause, Asks: s.Asks, Trust: verdict.Trust(s.Trust), Needs: s.Needs,
		})
	}
	return r
}

// list keeps an absent list from being nil, so that JSON shows it empty.
func list(words []string) []string {
	if words == nil {
		return []string{}
	}
	return words
}
