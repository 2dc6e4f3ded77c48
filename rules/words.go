package rules

import (
	"regexp"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/quantity"
)

// place is a place of a template that a figure fills.
var place = regexp.MustCompile(`\{([^{}]*)\}`)

// words checks that every finding gives each figure that the templates name, as
// far as the findings are written out in the Rego.
func (v *validator) words(r *rule) {
	for _, template := range []struct{ entry, text string }{{"custom.says", r.meta.Says}, {"custom.remedy", r.meta.Remedy}} {
		for _, match := range place.FindAllStringSubmatch(template.text, -1) {
			for _, def := range r.mod.Rules {
				if nameOf(def) != "breach" {
					continue
				}
				given, known := figuresGiven(def)
				if known && match[1] != "subject" && !slices.Contains(given, match[1]) {
					v.at(r, template.entry, "{%s} is given by no figure of the breach in line %d; it has %v", match[1], def.Location.Row, given)
				}
			}
		}
	}
}

// figuresGiven returns the names that a finding offers to templates; unknown if
// the finding or its figures are not written out.
func figuresGiven(def *ast.Rule) (given []string, known bool) {
	if def.Head.Key == nil {
		return nil, false
	}
	finding, ok := def.Head.Key.Value.(ast.Object)
	if !ok {
		return nil, false
	}
	for part, prefix := range map[string]string{"figures": "", "limit": "limit."} {
		term := finding.Get(ast.StringTerm(part))
		if term == nil {
			continue
		}
		figures, ok := term.Value.(ast.Object)
		if !ok {
			return nil, false
		}
		figures.Foreach(func(key, _ *ast.Term) {
			name, _ := key.Value.(ast.String)
			plain, _ := quantity.FromFact(string(name), 0)
			given = append(given, prefix+plain)
		})
	}
	slices.Sort(given)
	return given, true
}
