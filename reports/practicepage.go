package reports

import (
	"fmt"
	"io"
	"strings"

	"driploop/model/verdict"
)

// PracticePage is what a reader is told of one practice set: the documents that
// it brings, and the rules that rest on them.
type PracticePage struct {
	ID          string             `json:"id"`
	Title       string             `json:"title"`
	Description string             `json:"description"`
	Documents   []PracticeDocument `json:"documents"`
}

// PracticeDocument is a document of a practice set.
type PracticeDocument struct {
	Source *verdict.Source `json:"source"`
	Rules  []PracticeRule  `json:"rules"`
}

// PracticeRule is a rule that rests on a document, with a clause and how well
// that is known.
type PracticeRule struct {
	ID     string        `json:"id"`
	Clause string        `json:"clause,omitempty"`
	Trust  verdict.Trust `json:"trust"`
}

// Practices writes practice sets for a person.
func Practices(w io.Writer, pages []*PracticePage, o Options) error {
	return practicePages(&textSheet{page: newPage(w, o)}, pages)
}

// PracticesMarkdown writes practice sets in Markdown.
func PracticesMarkdown(w io.Writer, pages []*PracticePage) error {
	return practicePages(newMarkdownSheet(w), pages)
}

func practicePages(s sheet, pages []*PracticePage) error {
	for _, p := range pages {
		s.title(strong, "", p.Title)
		s.entry("set", p.ID)
		s.entry("what", p.Description)
		s.entry("brings", plural(p.rules(), "rule")+" on "+plural(len(p.Documents), "document"))
		if len(p.Documents) == 0 {
			continue
		}
		s.section("DOCUMENTS", "with edition, force, how well the clauses are known, and the rules that rest on them")
		for _, d := range p.Documents {
			lines := []string{authorityOf(d.Source), d.trust()}
			for _, r := range d.Rules {
				lines = append(lines, d.line(r))
			}
			s.item(d.Source.Title, edition(d.Source), lines...)
		}
	}
	s.para(Caution)
	return s.close()
}

func (p *PracticePage) rules() int {
	seen := map[string]bool{}
	for _, d := range p.Documents {
		for _, r := range d.Rules {
			seen[r.ID] = true
		}
	}
	return len(seen)
}

// trusts are in the order of their weight.
func trusts() []verdict.Trust {
	return []verdict.Trust{verdict.Read, verdict.ReadPart, verdict.Secondary, verdict.Memory, verdict.Computed, verdict.NoSource}
}

// trust counts the citations by how well they are known.
func (d *PracticeDocument) trust() string {
	count := map[verdict.Trust]int{}
	for _, r := range d.Rules {
		count[r.Trust]++
	}
	var parts []string
	for _, t := range trusts() {
		if count[t] > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", Trust(t), count[t]))
		}
	}
	return "Trust: " + strings.Join(parts, "; ")
}

// line names a rule with its clause, and its trust where those differ.
func (d *PracticeDocument) line(r PracticeRule) string {
	text := r.ID
	if r.Clause != "" {
		text += ", " + r.Clause
	}
	for _, other := range d.Rules {
		if other.Trust != r.Trust {
			return text + " (" + Trust(r.Trust) + ")"
		}
	}
	return text
}
