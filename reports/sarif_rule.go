package reports

import (
	"slices"
	"strings"
	"unicode"

	"driploop/model/verdict"
)

// rule returns the place of a rule in the list of rules, and adds it there when
// it is first met.
func (s *sarif) rule(r *verdict.Rule, cited []verdict.Cited) int {
	if i, listed := s.ruleAt[r.ID]; listed {
		return i
	}
	i := len(s.described)
	s.ruleAt[r.ID] = i
	d := sarifRule{
		ID: r.ID, Name: pascal(r.ID),
		ShortDescription: sarifText{Text: sarifLiteral(sentence(flow(r.Title)))},
		FullDescription:  sarifText{Text: sarifLiteral(sentence(flow(r.Title) + ". " + flow(r.Why)))},
		Help:             sarifText{Text: sarifLiteral(ruleHelp(r)), Markdown: ruleHelpMarkdown(r)},
		Default:          sarifDefault{Level: sarifLevel(r.Severity), Rank: sarifRank(r.Severity)},
		Properties:       sarifRuleMore{Severity: r.Severity.String(), Problem: problemSeverity(r.Severity), Tags: tags(r)},
	}
	for _, target := range s.taxa(cited) {
		d.Relationships = append(d.Relationships, sarifRelation{Target: target, Kinds: []string{"relevant"}})
	}
	s.described = append(s.described, d)
	return i
}

// problemSeverity is the word of hosted code review for a severity.
func problemSeverity(s verdict.Severity) string {
	if level := sarifLevel(s); level != "note" {
		return level
	}
	return "recommendation"
}

// pascal writes the fault of a rule's id as one name: of "topic/a-fault" "AFault".
func pascal(id string) string {
	_, fault, _ := strings.Cut(id, "/")
	var b strings.Builder
	first := true
	for _, r := range fault {
		if r == '-' {
			first = true
			continue
		}
		if first {
			r = unicode.ToUpper(r)
		}
		first = false
		b.WriteRune(r)
	}
	return b.String()
}

// helpPart is one labelled paragraph of the help of a rule.
type helpPart struct{ label, text string }

func helpParts(r *verdict.Rule) []helpPart {
	parts := []helpPart{
		{"Judges", flow(r.Applies)},
		{"Why", flow(r.Why)},
		{"At worst", Consequence(r.Severity)},
		{"Remedy", openPlaces(flow(r.Remedy))},
	}
	for _, c := range r.Sources {
		rests := c.Source
		if c.Clause != "" {
			rests += ", " + flow(c.Clause)
		}
		text := rests + ": " + flow(c.Asks)
		if trust := trustText(c.Trust); trust != "" {
			text += " (" + trust + ")"
		}
		parts = append(parts, helpPart{"Under " + c.Set, text})
	}
	return append(parts, helpPart{"Caution", Caution})
}

func ruleHelp(r *verdict.Rule) string {
	var b strings.Builder
	for _, p := range helpParts(r) {
		if p.text != "" {
			b.WriteString(p.label + ": " + sentence(p.text) + "\n")
		}
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func ruleHelpMarkdown(r *verdict.Rule) string {
	var b strings.Builder
	for _, p := range helpParts(r) {
		if p.text != "" {
			b.WriteString("- **" + markdownText(p.label) + "**: " + markdownText(sentence(p.text)) + "\n")
		}
	}
	return b.String()
}

// taxa returns the clauses that a verdict rests on, as taxa of the documents.
func (s *sarif) taxa(cited []verdict.Cited) []sarifTarget {
	var all []sarifTarget
	seen := map[[2]string]bool{}
	for _, c := range cited {
		id := taxon(c)
		if key := [2]string{c.Source, id}; !seen[key] {
			seen[key] = true
			all = append(all, s.clause(c, id))
		}
	}
	return all
}

// taxaBeside returns the clauses that a verdict rests on, if they are others than
// those that the rule itself is relevant to: a result has the taxa of its rule.
func (s *sarif) taxaBeside(rule int, cited []verdict.Cited) []sarifTarget {
	all := s.taxa(cited)
	if slices.EqualFunc(all, s.described[rule].Relationships, func(t sarifTarget, r sarifRelation) bool { return t == r.Target }) {
		return nil
	}
	return all
}

// taxon names a clause; common practice, which has none, goes by its set.
func taxon(c verdict.Cited) string {
	if c.Clause == "" {
		return c.Set
	}
	return flow(c.Clause)
}

// clause points at a clause of a document, and lists both when first met.
func (s *sarif) clause(c verdict.Cited, id string) sarifTarget {
	document, listed := s.documentAt[c.Source]
	if !listed {
		document = len(s.documents)
		s.documentAt[c.Source] = document
		s.documents = append(s.documents, sarifComponent{
			Name: c.Source, Version: flow(c.Edition), Organization: s.issuers[c.Source],
			ShortDescription: &sarifText{Text: sarifLiteral(sentence(flow(c.Title)))}, Properties: &sarifForce{Force: string(c.Force)},
		})
	}
	of := &s.documents[document]
	target := sarifTarget{ID: id, Index: -1, ToolComponent: sarifReference{Name: c.Source, Index: document}}
	for i, t := range of.Taxa {
		if t.ID == id {
			target.Index = i
			return target
		}
	}
	target.Index = len(of.Taxa)
	of.Taxa = append(of.Taxa, sarifTaxon{ID: id, ShortDescription: sarifText{Text: sarifLiteral(sentence(flow(c.Title) + ", " + id))}})
	return target
}
