package record

import (
	"hash/maphash"
	"iter"
	"maps"
	"slices"
	"strconv"
	"strings"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// Places tells where the keys and list items of a file stand, by their paths: that
// of conductors.P1.route[0].length is the place of its key, that of
// conductors.P1.route[0] the place of the item itself. The zero Places has none.
//
// A place knows its last step and the place that it is under, so no path is made
// before somebody asks for it.
type Places struct {
	all []place
	// slots find a step under a place: the number of a place plus 1, or 0, from
	// the slot on that their hash names. There are twice as many as places, or more.
	slots []int32
}

// place is one place of a record.
type place struct {
	step  string // a key or id, or an index as [0]
	under int32  // number of the place that it is under, or root
	at    tree.Extent
}

// root stands for the whole record, which has no place.
const root = -1

// PlacesOf returns some places, by the paths of a record. What only leads to one of
// them has the zero range.
func PlacesOf(some map[string]verdict.Range) Places {
	var all []place
	numbers := map[string]int32{"": root}
	var add func(path string) int32
	add = func(path string) int32 {
		if number, ok := numbers[path]; ok {
			return number
		}
		above, step := lastStep(path)
		under := add(above)
		numbers[path] = int32(len(all))
		all = append(all, place{step, under, tree.Of(some[path])})
		return numbers[path]
	}
	for _, path := range slices.Sorted(maps.Keys(some)) {
		add(path)
	}
	return placesOf(all)
}

// At returns where a path stands; the zero range if it does not.
func (p Places) At(path string) verdict.Range {
	at, _ := p.Find(path)
	return at
}

// Find returns where a path stands, and whether it does.
func (p Places) Find(path string) (verdict.Range, bool) {
	if len(p.slots) == 0 {
		return verdict.Range{}, false
	}
	at := int32(root)
	for rest, more := path, true; more; {
		var step string
		if step, rest, more = firstStep(rest); step == "" {
			return verdict.Range{}, false
		}
		if at = p.slots[p.slot(at, step)] - 1; at < 0 {
			return verdict.Range{}, false
		}
	}
	return p.all[at].at.Range(), true
}

// All returns the paths and where they stand, in the order in which they were
// read: each behind the one that it is under.
func (p Places) All() iter.Seq2[string, verdict.Range] {
	return func(yield func(string, verdict.Range) bool) {
		paths := make([]string, len(p.all))
		for i := range p.all {
			at := &p.all[i]
			paths[i] = at.step
			switch {
			case strings.HasPrefix(at.step, "["):
				paths[i] = paths[at.under] + at.step
			case at.under != root:
				paths[i] = paths[at.under] + "." + at.step
			}
			if !yield(paths[i], at.at.Range()) {
				return
			}
		}
	}
}

// Len is the number of places.
func (p Places) Len() int { return len(p.all) }

// placesOf returns places as they were read.
func placesOf(all []place) Places {
	if len(all) == 0 {
		return Places{}
	}
	p := Places{all: slices.Clone(all)}
	size := 2
	for size < 2*len(p.all) {
		size *= 2
	}
	p.slots = make([]int32, size)
	for i := range p.all {
		p.slots[p.slot(p.all[i].under, p.all[i].step)] = int32(i) + 1
	}
	return p
}

// hashSeed is different in each run, so that no record can have all its steps under
// one hash.
var hashSeed = maphash.MakeSeed()

// slot returns the slot of a step under a place: the one that holds it, or the free
// one in which it would be.
func (p *Places) slot(under int32, step string) int {
	const odd = 0x9e3779b97f4a7c15 // spreads what differs little over all bits
	hash := (maphash.String(hashSeed, step) + uint64(under)) * odd
	mask := len(p.slots) - 1
	for i := int(hash>>32) & mask; ; i = (i + 1) & mask {
		number := p.slots[i]
		if number == 0 {
			return i
		}
		if at := &p.all[number-1]; at.under == under && at.step == step {
			return i
		}
	}
}

// firstStep cuts the first step off a path, and tells whether there are more. A
// step that no path has is "".
func firstStep(path string) (step, rest string, more bool) {
	end := 0
	for end < len(path) && path[end] != '.' && (path[end] != '[' || end == 0) {
		end++
	}
	switch {
	case end == len(path):
		return path, "", false
	case path[end] == '[':
		return path[:end], path[end:], true
	case end+1 < len(path) && path[end+1] == '[':
		return "", "", false // an index has no dot before it
	}
	return path[:end], path[end+1:], true
}

// lastStep cuts the last step off a path.
func lastStep(path string) (above, step string) {
	switch i := strings.LastIndexAny(path, ".["); {
	case i < 0:
		return "", path
	case path[i] == '[':
		return path[:i], path[i:]
	default:
		return path[:i], path[i+1:]
	}
}

// itemStep is the step of an item of a list.
func itemStep(i int) string {
	const few = "[0][1][2][3][4][5][6][7][8][9]"
	if i < len(few)/len("[0]") {
		return few[3*i : 3*i+3]
	}
	return "[" + strconv.Itoa(i) + "]"
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func index(path string, i int) string { return path + itemStep(i) }
