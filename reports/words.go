package reports

import (
	"fmt"

	"driploop/model/verdict"
)

// The words that reports of other packages share with those of this one.

// Flow brings the prose of a rule, which may stand on several lines, to one.
func Flow(s string) string { return flow(s) }

// Spaced writes the name of a figure as words.
func Spaced(name string) string { return spaced(name) }

// Enumerate lists words as a sentence does.
func Enumerate(words []string) string { return enumerate(words) }

// Plural gives a count with its noun; the plural adds an s.
func Plural(n int, noun string) string { return plural(n, noun) }

// Capital begins a text with a capital letter.
func Capital(s string) string { return capital(s) }

// Document names the document of a citation with its edition and its authority.
func Document(c verdict.Cited) string { return document(c) }

// Clause says what one clause of a document asks; nothing without a clause.
func Clause(c verdict.Cited) string {
	if c.Clause == "" {
		return ""
	}
	return clause(c)
}

// Glued keeps the number and unit of a quantity on one line.
func Glued(text string) string { return glued(text) }

// ByRule groups verdicts by severity and rule: worst severity first, then by the
// first place in the record.
func ByRule(all []*verdict.Verdict) [][]*verdict.Verdict { return byRule(all) }

// SeverityCounts says how many there are of each severity, worst first.
func SeverityCounts(all []*verdict.Verdict) string { return severityCounts(all) }

// Cut splits the line at a place into what stands before the value, the value
// and the rest, all safe to show; ok is false where there is nothing to show.
func (src *Source) Cut(at verdict.Range) (before, value, after string, ok bool) { return src.cut(at) }

// TrustText says what a reader has to know about how well a figure was checked;
// nothing for a clause that was read.
func TrustText(t verdict.Trust) string { return trustText(t) }

// Place is a place in a file, as file, line and column.
func Place(path string, at verdict.Position) string {
	return fmt.Sprintf("%s:%d:%d", path, at.Line, at.Column)
}
