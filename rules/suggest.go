package rules

import "github.com/agnivade/levenshtein"

// nearest returns the candidate that a slip of the pen most likely meant, or ""
// if none is near.
func nearest(word string, candidates []string) string {
	best, least := "", 1+len(word)/3
	for _, candidate := range candidates {
		if d := levenshtein.ComputeDistance(word, candidate); d <= least && (best == "" || d < least) {
			best, least = candidate, d
		}
	}
	return best
}

// meant is nearest as the end of a sentence.
func meant(word string, candidates []string) string {
	if near := nearest(word, candidates); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}
