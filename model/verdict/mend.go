package verdict

import (
	"slices"
	"strings"
)

// Mends that take more than one entry of a subject.
const (
	MendSize   = "size"   // larger conductors
	MendRating = "rating" // another fuse or breaker
	MendPlace  = "place"  // the fuse or breaker nearer to its source
)

// IsMend reports whether a text is one of the mends of a rule: see Rule.Mends.
func IsMend(text string) bool {
	entry, value, ok := strings.Cut(text, ": ")
	return slices.Contains([]string{MendSize, MendRating, MendPlace}, text) || ok && entry != "" && value != "" && !strings.Contains(entry, " ")
}
