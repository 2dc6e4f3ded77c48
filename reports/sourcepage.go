package reports

import (
	"fmt"
	"io"
	"strings"

	"driploop/model/verdict"
)

// SourcePage is what a reader is told of one document: its clauses, and the
// rules that judge them.
type SourcePage struct {
	verdict.Coverage
	Sets   []string // practice sets that bring it
	Listed bool     // clause by clause; else only what rules cite
}

// Sources writes documents, each with its clauses and rules, for a person.
func Sources(w io.Writer, pages []*SourcePage, o Options) error {
	return sourcePages(&textSheet{page: newPage(w, o)}, pages)
}

// SourcesMarkdown writes documents in Markdown.
func SourcesMarkdown(w io.Writer, pages []*SourcePage) error {
	return sourcePages(newMarkdownSheet(w), pages)
}

func sourcePages(s sheet, pages []*SourcePage) error {
	for _, p := range pages {
		p.head(s)
		for _, c := range p.Clauses {
			clause := c.Clause
			if clause == "" {
				clause = "no clause known"
			}
			s.item(clause, ": "+c.Asks, clauseLines(c)...)
		}
	}
	s.para("Every clause is told in our own words. " + Caution)
	return s.close()
}

func (p *SourcePage) head(s sheet) {
	s.title(strong, "", p.Source.Title)
	s.entry("source", p.Source.ID)
	s.entry("edition", p.Source.Edition)
	s.entry("force", authorityOf(p.Source))
	if len(p.Sets) > 0 {
		s.entry("sets", strings.Join(p.Sets, ", "))
	}
	if !p.Listed {
		s.section("WHAT RULES CITE", "the document is not listed clause by clause")
		return
	}
	s.section("CLAUSES", p.Covers+"; "+p.tally())
}

// tally counts the clauses by what becomes of them.
func (p *SourcePage) tally() string {
	count := map[verdict.Left]int{}
	for _, c := range p.Clauses {
		count[c.Left]++
	}
	text := fmt.Sprintf("%s: judged by rules %d", plural(len(p.Clauses), "clause"), count[""])
	for _, left := range verdict.Lefts() {
		if count[left] > 0 {
			text += fmt.Sprintf(", %s %d", leftText(left), count[left])
		}
	}
	return text
}

func clauseLines(c verdict.Clause) []string {
	var lines []string
	if len(c.Rules) > 0 {
		lines = append(lines, "judged by "+strings.Join(c.Rules, ", "))
	}
	if c.Left != "" {
		lines = append(lines, strings.TrimSuffix(leftText(c.Left)+": "+c.Why, ": "))
	} else if c.Why != "" {
		lines = append(lines, "note: "+c.Why)
	}
	return lines
}

// leftText says in words why no rule judges a clause.
func leftText(l verdict.Left) string {
	switch l {
	case verdict.LeftScope:
		return "says whom or what it binds"
	case verdict.LeftEmpty:
		return "has no text"
	case verdict.LeftTerm:
		return "defines terms"
	case verdict.LeftOutside:
		return "outside the electrical installation under 50 V"
	case verdict.LeftBeyond:
		return "beyond a record"
	case verdict.LeftInPart:
		return "judged in part"
	}
	return "no rule yet"
}

// SourceList writes the register of sources, for a person.
func SourceList(w io.Writer, pages []*SourcePage, o Options) error {
	return sourceList(&textSheet{page: newPage(w, o)}, pages)
}

// SourceListMarkdown writes the register of sources in Markdown.
func SourceListMarkdown(w io.Writer, pages []*SourcePage) error {
	return sourceList(newMarkdownSheet(w), pages)
}

func sourceList(s sheet, pages []*SourcePage) error {
	s.title(strong, "", plural(len(pages), "source"))
	s.section("REGISTER", "in the order of authority; read one with: driploop cite --source SOURCE")
	for _, p := range pages {
		lines := []string{authorityOf(p.Source), "rests on it: " + plural(p.rules(), "rule")}
		if p.Listed {
			lines = append(lines, "listed: "+p.Covers+"; "+p.tally())
		}
		s.item(p.Source.ID, ": "+p.Source.Title+" "+edition(p.Source), lines...)
	}
	return s.close()
}

// rules counts the rules that rest on the document.
func (p *SourcePage) rules() int {
	seen := map[string]bool{}
	for _, c := range p.Clauses {
		for _, id := range c.Rules {
			seen[id] = true
		}
	}
	return len(seen)
}
