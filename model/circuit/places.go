package circuit

import (
	"cmp"
	"slices"
)

// places finds where in a list of branches one stands: the places of the list, by
// ascending branch.
type places []int32

func newPlaces(branches []int) places {
	p := make(places, len(branches))
	for k := range p {
		p[k] = int32(k)
	}
	slices.SortFunc(p, func(j, k int32) int { return cmp.Compare(branches[j], branches[k]) })
	return p
}

// of returns the place of a branch in the list, if it is there.
func (p places) of(branches []int, branch int) (int, bool) {
	at := p.search(branches, branch)
	if at == len(p) || branches[p[at]] != branch {
		return 0, false
	}
	return int(p[at]), true
}

// search returns how many branches of the list are less than one.
func (p places) search(branches []int, branch int) int {
	low, high := 0, len(p)
	for low < high {
		if mid := (low + high) / 2; branches[p[mid]] < branch {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

// add takes in the branch that was last put on the list.
func (p places) add(branches []int) places {
	last := len(branches) - 1
	return slices.Insert(p, p.search(branches, branches[last]), int32(last))
}
