package reports

import (
	"fmt"
	"io"
	"strings"

	"driploop/model/verdict"
)

// RuleList writes the rules by topic, for a person.
func RuleList(w io.Writer, rules []*verdict.Rule, o Options) error {
	p := newPage(w, o)
	topic := ""
	for _, r := range rules {
		if t, _, _ := strings.Cut(r.ID, "/"); t != topic {
			if topic != "" {
				p.blank()
			}
			topic = t
			p.hang(0, 0, in(strong, topic))
		}
		word := strings.ToUpper(r.Severity.String())
		p.labelled(in(severityInk(r.Severity), word), margin, txt(r.ID+ofYard(r)))
		p.hang(margin+2, margin+2, txt(flow(r.Title)))
	}
	p.blank()
	p.hang(0, 0, txt(fmt.Sprintf("%s. Read one with: driploop cite RULE", plural(len(rules), "rule"))))
	return p.close()
}

// ofYard marks the rule of a yard.
func ofYard(r *verdict.Rule) string {
	if r.OfYard() {
		return ", the yard's own"
	}
	return ""
}

// RuleListMarkdown writes the rules by topic, in Markdown.
func RuleListMarkdown(w io.Writer, rules []*verdict.Rule) error {
	s := newMarkdownSheet(w)
	s.title(strong, "", plural(len(rules), "rule"))
	for len(rules) > 0 {
		topic, _, _ := strings.Cut(rules[0].ID, "/")
		s.section(topic, "")
		rows := newTable("rule", "severity", "title")
		for len(rules) > 0 && strings.HasPrefix(rules[0].ID, topic+"/") {
			rows.add(rules[0].ID, rules[0].Severity.String(), rules[0].Title+ofYard(rules[0]))
			rules = rules[1:]
		}
		s.table(rows)
	}
	return s.close()
}
