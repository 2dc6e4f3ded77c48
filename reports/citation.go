package reports

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"driploop/model/verdict"
)

// sources writes the sources that a verdict rests on.
func (t *recordText) sources(v *verdict.Verdict) {
	for _, c := range v.Sources {
		t.entry(in(faint, "source"), txt(cited(c)))
	}
}

func (t *recordText) sourceKey(v *verdict.Verdict) string {
	var all []string
	for _, c := range v.Sources {
		all = append(all, cited(c))
	}
	return strings.Join(all, "\n")
}

// cited writes a citation as one sentence or two: document, clause, edition,
// what it asks, with what authority, and how well that was checked.
func cited(c verdict.Cited) string {
	var b strings.Builder
	b.WriteString(flow(c.Title))
	if c.Clause != "" {
		b.WriteString(", " + flow(c.Clause))
	}
	if c.Edition != "" {
		b.WriteString(" (" + flow(c.Edition) + ")")
	}
	if c.Asks != "" {
		b.WriteString(": " + flow(c.Asks))
	}
	b.WriteString(". ")
	b.WriteString(strings.Join(standing(c), "; "))
	return b.String() + " (" + c.Set + ")."
}

// standing says what authority a citation has here, and its trust.
func standing(c verdict.Cited) []string {
	var parts []string
	switch c.Force {
	case verdict.Law:
		parts = append(parts, lawText(c.Binds))
	case verdict.Practice:
		parts = append(parts, "Common practice, no source")
	case "":
	default:
		parts = append(parts, capital(string(c.Force)))
	}
	if trust := trustText(c.Trust); trust != "" && c.Force != verdict.Practice {
		parts = append(parts, trust)
	}
	return parts
}

func lawText(binds *bool) string {
	switch {
	case binds == nil:
		return "Law; the record does not tell whether it binds this vessel"
	case *binds:
		return "Law that binds this vessel"
	}
	return "Law that does not bind this vessel, shown for reference"
}

// trustText says what a reader has to know about how well a figure was checked;
// nothing for a clause that was read.
func trustText(t verdict.Trust) string {
	switch t {
	case verdict.ReadPart:
		return "clause read in part"
	case verdict.Secondary:
		return "as reported, the document itself was not seen"
	case verdict.Memory:
		return "from memory, unverified"
	case verdict.Computed:
		return "follows by computation"
	case verdict.NoSource:
		return "common practice, no source"
	}
	return ""
}

func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[size:]
}
