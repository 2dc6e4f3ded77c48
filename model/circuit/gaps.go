package circuit

import (
	"slices"

	"driploop/model/figure"
)

// moreGaps adds gaps to others that are all different.
func moreGaps(gaps, more []figure.Gap) []figure.Gap {
	if len(more) == 0 {
		return gaps
	}
	return uniqueGaps(slices.Concat(gaps, more))
}

// uniqueGaps drops repeated gaps and keeps their order.
func uniqueGaps(gaps []figure.Gap) []figure.Gap {
	if len(gaps) < 2 {
		return gaps
	}
	out := gaps[:0:0]
	if len(gaps) <= 16 {
		for _, g := range gaps {
			if !slices.Contains(out, g) {
				out = append(out, g)
			}
		}
		return out
	}
	seen := make(map[figure.Gap]bool, len(gaps))
	for _, g := range gaps {
		if !seen[g] {
			seen[g] = true
			out = append(out, g)
		}
	}
	return out
}
