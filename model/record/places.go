package record

import (
	"hash/maphash"
	"iter"
	"maps"
	"slices"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// Places tells where the keys and list items of a file stand, by their paths: that
// of conductors.P1.route[0].length is the place of its key, that of
// conductors.P1.route[0] the place of the item itself. The zero Places has none.
//
// A place knows its last step and what it is under, so no path is made before
// somebody asks for it.
type Places struct {
	parts  []partPlace
	values valuePlaces
	// slots find a step under a part: the number of a part plus 1, or 0, from the slot
	// on that their hash names. They are twice as many as parts, or more.
	slots []int32
}

// partPlace is the place of a part: a mapping, a list of mappings, or one of these.
type partPlace struct {
	step        string // a key or id, or an index as [0]
	at          tree.Extent
	under       int32 // number of the part that it is in, or root
	first, last int32 // numbers of the single values in it, plus 1
}

// valuePlace is the place of a single value, or of an item of it.
type valuePlace struct {
	at   tree.Extent
	key  word  // unheard: the next item of the key before it
	next int32 // in the same part, plus 1
}

// valuePlaces are places of values in the order in which they were read, in pieces
// that need not be moved when there are more.
type valuePlaces struct {
	pieces [][]valuePlace
	count  int32
}

const placesAtOnce = 128 // a power of two

// at returns the place with a number, from 1.
func (p *valuePlaces) at(number int32) *valuePlace {
	i := uint32(number - 1)
	return &p.pieces[i/placesAtOnce][i%placesAtOnce]
}

// add adds a place, which has the number of all then.
func (p *valuePlaces) add() *valuePlace {
	if int(p.count) == placesAtOnce*len(p.pieces) {
		p.pieces = append(p.pieces, make([]valuePlace, placesAtOnce))
	}
	p.count++
	return p.at(p.count)
}

// root stands for the whole record, which has no place.
const root = 0

// PlacesOf returns some places, by the paths of a record. What only leads to one of
// them has the zero range.
func PlacesOf(some map[string]verdict.Range) Places {
	var p placing
	p.begin()
	numbers := map[string]int32{"": root}
	var add func(path string) int32
	add = func(path string) int32 {
		if number, ok := numbers[path]; ok {
			return number
		}
		above, step := lastStep(path)
		numbers[path] = p.part(add(above), step, tree.Of(some[path]))
		return numbers[path]
	}
	for _, path := range slices.Sorted(maps.Keys(some)) {
		add(path)
	}
	return p.placed()
}

// placing gathers places.
type placing struct {
	parts  []partPlace
	values valuePlaces
}

// begin adds the root.
func (p *placing) begin() { p.parts = append(p.parts, partPlace{}) }

// part adds a part under another and returns its number.
func (p *placing) part(under int32, step string, at tree.Extent) int32 {
	p.parts = append(p.parts, partPlace{step: step, at: at, under: under})
	return int32(len(p.parts) - 1)
}

// value adds a single value of a part.
func (p *placing) value(in int32, key word, at tree.Extent) {
	v := p.values.add()
	v.at, v.key = at, key
	number, part := p.values.count, &p.parts[in]
	if part.last == 0 {
		part.first = number
	} else {
		p.values.at(part.last).next = number
	}
	part.last = number
}

// placed returns what was gathered; the values are no longer its own.
func (p *placing) placed() Places {
	size := 2
	for size < 2*len(p.parts) {
		size *= 2
	}
	all := Places{parts: slices.Clone(p.parts), values: p.values, slots: make([]int32, size)}
	for i := range all.parts[1:] {
		part := &all.parts[i+1]
		all.slots[all.slot(part.under, part.step)] = int32(i + 1)
	}
	return all
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
	in := int32(root)
	for rest, more := path, true; more; {
		var step string
		if step, rest, more = firstStep(rest); step == "" {
			return verdict.Range{}, false
		}
		part := p.slots[p.slot(in, step)]
		if part == 0 {
			return p.value(in, step, rest, more)
		}
		in = part
	}
	return p.parts[in].at.Range(), true
}

// value finds a single value of a part, or the item of it that the rest of a path
// names, if there is a rest.
func (p Places) value(in int32, key, rest string, itemised bool) (verdict.Range, bool) {
	w := vocabulary().number(key)
	if w == unheard {
		return verdict.Range{}, false
	}
	at := p.parts[in].first
	for at != 0 && p.values.at(at).key != w {
		at = p.values.at(at).next
	}
	if at != 0 && itemised {
		at = p.item(p.values.at(at).next, rest)
	}
	if at == 0 {
		return verdict.Range{}, false
	}
	return p.values.at(at).at.Range(), true
}

// item returns the number of an item by its step, from the first item on; 0 if there
// is none.
func (p Places) item(at int32, step string) int32 {
	for i := 0; at != 0 && p.values.at(at).key == unheard; i++ {
		if itemStep(i) == step {
			return at
		}
		at = p.values.at(at).next
	}
	return 0
}

// All returns the paths and where they stand: each part behind the one that it is
// in, and before its values.
func (p Places) All() iter.Seq2[string, verdict.Range] {
	return func(yield func(string, verdict.Range) bool) {
		paths := make([]string, len(p.parts))
		for i := range p.parts {
			part := &p.parts[i]
			if i != root {
				paths[i] = under(paths[part.under], part.step)
				if !yield(paths[i], part.at.Range()) {
					return
				}
			}
			if !p.valuesOf(part, paths[i], yield) {
				return
			}
		}
	}
}

func (p Places) valuesOf(part *partPlace, path string, yield func(string, verdict.Range) bool) bool {
	var key string
	item := 0
	for at := part.first; at != 0; at = p.values.at(at).next {
		v := p.values.at(at)
		var here string
		if v.key != unheard {
			key, item = under(path, vocabulary().texts[v.key]), 0
			here = key
		} else {
			here = under(key, itemStep(item))
			item++
		}
		if !yield(here, v.at.Range()) {
			return false
		}
	}
	return true
}

// hashSeed is different in each run, so that no record can have all its steps under
// one hash.
var hashSeed = maphash.MakeSeed()

// slot returns the slot of a step under a part: the one that holds it, or the free
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
		if part := &p.parts[number]; part.under == under && part.step == step {
			return i
		}
	}
}
