package record

import (
	"fmt"
	"strings"

	"github.com/agnivade/levenshtein"
)

// nearest returns the word closest to what was written, if it is close enough
// to be what was meant: at most a third of its letters differ. Ids of one or two
// letters are all alike.
func nearest(written string, words []string) (string, bool) {
	best, least := "", 1<<30
	for _, w := range words {
		if d := levenshtein.ComputeDistance(strings.ToLower(written), strings.ToLower(w)); d < least {
			best, least = w, d
		}
	}
	if len(best) < 3 || least > max(1, (len(best)+1)/3) || len(written) > 100 {
		return "", false
	}
	return best, true
}

// maxListed bounds how many choices a message lists.
const maxListed = 24

// choices says what would be right: the nearest word, or all of them after a
// few words such as "write" or "it has".
func choices(written string, words []string, lead string) string {
	if w, ok := nearest(written, words); ok {
		return fmt.Sprintf("did you mean %q?", w)
	}
	if len(words) == 0 {
		return lead + " none"
	}
	if len(words) > maxListed {
		return fmt.Sprintf("%s %s and %d more", lead, strings.Join(words[:maxListed], ", "), len(words)-maxListed)
	}
	if lead == "write" {
		return lead + " " + listed(words, "or")
	}
	return lead + " " + listed(words, "and")
}

// listed joins words as prose does: a, b and c.
func listed(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// clip shortens what was written, so that no message grows with hostile input.
func clip(text string) string {
	const most = 60
	if len(text) <= most {
		return text
	}
	r := []rune(text[:min(len(text), 4*most)])
	if len(r) <= most {
		return text
	}
	return string(r[:most]) + "…"
}
