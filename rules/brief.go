package rules

import (
	"slices"
	"strings"

	"driploop/model/verdict"
)

// longestText is how long a text of a yard's rule may be, bytes: a report repeats
// it for every subject.
const longestText = 1000

// brief cuts a text that is longer, and shows that it did.
func brief(text string) string {
	if len(text) <= longestText {
		return text
	}
	return strings.ToValidUTF8(text[:longestText], "") + "…"
}

// brief returns figures as they are; of a yard's rule, with long texts cut.
func (r *rule) brief(figures []verdict.Figure) []verdict.Figure {
	if r.yard == nil || !slices.ContainsFunc(figures, func(f verdict.Figure) bool { return len(f.Text) > longestText }) {
		return figures
	}
	short := slices.Clone(figures)
	for i := range short {
		short[i].Text = brief(short[i].Text)
	}
	return short
}
