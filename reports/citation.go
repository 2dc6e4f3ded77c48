package reports

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"driploop/model/verdict"
)

// sources writes what a verdict rests on: each document once, with its
// authority, and below it the clauses and what they ask.
func (t *recordText) sources(v *verdict.Verdict) {
	var last verdict.Cited
	for i, c := range v.Sources {
		if i == 0 || c.Source != last.Source || c.Set != last.Set || c.Clause == "" {
			t.entry(in(faint, "source"), txt(document(c)))
		}
		if c.Clause != "" {
			t.hang(margin+2, margin+4, txt(clause(c)))
		}
		last = c
	}
}

func (t *recordText) sourceKey(v *verdict.Verdict) string {
	all := make([]string, 0, 2*len(v.Sources))
	for _, c := range v.Sources {
		all = append(all, document(c), clause(c))
	}
	return strings.Join(all, "\n")
}

// document names the document of a citation with its edition and its authority
// here, and what it asks if that is in no one clause.
func document(c verdict.Cited) string {
	var b strings.Builder
	b.WriteString(flow(c.Title))
	if c.Force == verdict.Practice {
		b.WriteString(", no source")
	} else if edition := shortEdition(c.Edition); edition != "" {
		b.WriteString(" (" + edition + ")")
	}
	if c.Clause == "" {
		b.WriteString(": " + asked(c))
	}
	b.WriteString(". ")
	if authority := authority(c); authority != "" {
		b.WriteString(authority + ". ")
	}
	return b.String() + "[" + c.Set + "]"
}

// shortEdition leaves out what the register adds to the name of an edition; the
// page of the rule has it whole.
func shortEdition(edition string) string {
	short, _, _ := strings.Cut(flow(edition), ";")
	return short
}

// clause says what one clause of a document asks.
func clause(c verdict.Cited) string { return flow(c.Clause) + ": " + asked(c) }

func asked(c verdict.Cited) string {
	text := flow(c.Asks)
	if trust := trustText(c.Trust); trust != "" && c.Force != verdict.Practice {
		text += " (" + trust + ")"
	}
	return text
}

// authority says what a document is to this vessel.
func authority(c verdict.Cited) string {
	switch c.Force {
	case verdict.Law:
		return lawText(c.Binds)
	case verdict.Practice:
		return ""
	}
	return capital(string(c.Force))
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
		return "read in part"
	case verdict.Secondary:
		return "as reported; the document itself was not seen"
	case verdict.Memory:
		return "from memory, unverified"
	case verdict.Computed:
		return "computed"
	case verdict.NoSource:
		return "common practice, no source"
	}
	return ""
}

func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[size:]
}
