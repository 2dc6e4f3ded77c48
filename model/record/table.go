package record

import (
	"slices"
	"sync"

	"driploop/model/record/internal/tree"
)

// table is the format of one mapping: its keys, and where their values go in
// a T. Tables are made once and never changed.
type table[T any] struct {
	name   string // what messages call such a mapping
	says   string
	fields []field[T]
	keys   []string     // each once, in the order of fields
	twins  []int        // by field: the next one with the same key; -1 if there is none
	parts  []int        // fields that hold a mapping
	musts  []int        // required fields
	kind   func(*T) int // component kind, if fields depend on it
	done   func(*T)     // what is left to do once a mapping was read

	once   sync.Once
	firsts []int // see byWord
}

func newTable[T any](name, says string, fields ...field[T]) *table[T] {
	t := &table[T]{name: name, says: says, fields: fields, twins: make([]int, len(fields))}
	last := map[string]int{}
	for i := range fields {
		f := &fields[i]
		if twin, ok := last[f.key]; ok {
			t.twins[twin] = i
		} else {
			t.keys = append(t.keys, f.key)
		}
		last[f.key], t.twins[i] = i, -1
		if f.shape == partShape {
			t.parts = append(t.parts, i)
		}
		if f.required {
			t.musts = append(t.musts, i)
		}
	}
	return t
}

// byWord lists by word the first field with that key, -1 where there is none. The
// vocabulary is that of all tables, so this waits until all are there.
func (t *table[T]) byWord() []int {
	t.once.Do(func() {
		t.firsts = slices.Repeat([]int{-1}, len(vocabulary().texts))
		for i := range slices.Backward(t.fields) {
			t.firsts[vocabulary().number(t.fields[i].key)] = i
		}
	})
	return t.firsts
}

// keysFor returns the keys that a component of the kind may carry; all keys
// with kind -1.
func (t *table[T]) keysFor(kind int) []string {
	if kind < 0 {
		return t.keys
	}
	var keys []string
	for _, key := range t.keys {
		if t.named(key, kind) != nil {
			keys = append(keys, key)
		}
	}
	return keys
}

// onKind returns the field on a kind among those with the same key, from the first of
// them on; nil if there is none.
func (t *table[T]) onKind(first, kind int) *field[T] {
	for i := first; i >= 0; i = t.twins[i] {
		if f := &t.fields[i]; f.kinds.has(kind) {
			return f
		}
	}
	return nil
}

// named returns the field of a key on a kind, or nil.
func (t *table[T]) named(key string, kind int) *field[T] {
	return t.onKind(t.byWord()[vocabulary().number(key)], kind)
}

// all lists the fields of a key.
func (t *table[T]) all(key string) []int {
	var all []int
	for i := t.byWord()[vocabulary().number(key)]; i >= 0; i = t.twins[i] {
		all = append(all, i)
	}
	return all
}

// part decodes what is itself a mapping or a list of them.
type part interface {
	// decode reads n into the target; key is the node that names it.
	decode(d *decoder, s *spec, at, n *tree.Node, in spot, target any)
	// fill marks a part that the file lacks or calls unknown, and sets its paths.
	fill(d *decoder, path string, state State, at tree.Extent, target any)
	// schema adds the definition of the mapping and returns a reference to it.
	schema(b *schemaBuilder) object
	// sample is a short example of the mapping.
	sample() object
	// describe finds the spec at the steps of a path below the part.
	describe(path []string, kind int) (*spec, int)
	// keysAt lists the keys of the mapping at the steps of a path below the part.
	keysAt(path []string) []string
	// words adds all keys of the part and below it.
	words(into *[]string)
}

// single is one mapping in a P.
type single[P any] struct{ of func() *table[P] }

func (p single[P]) decode(d *decoder, _ *spec, at, n *tree.Node, in spot, target any) {
	p.of().decode(d, at, n, in, "", target.(*P))
}

func (p single[P]) fill(d *decoder, path string, state State, at tree.Extent, target any) {
	p.of().fill(d, path, state, at, target.(*P))
}

// several is a list of mappings.
type several[P any] struct{ of func() *table[P] }

func (p several[P]) decode(d *decoder, s *spec, _, n *tree.Node, in spot, target any) {
	list := target.(*[]*P)
	seq := d.enter(n)
	defer d.leave(n)
	if seq.Kind != tree.List {
		d.fault(n, "%q is %s; write a list of %ss, each beginning with -", s.key, noun(seq), p.of().name)
		return
	}
	if d.crowded(s, n, int(seq.Size)) {
		return
	}
	made := make([]P, seq.Size)
	*list = make([]*P, 0, seq.Size)
	i := 0
	for item := seq.First; item != nil && d.spend(); item = item.Next {
		step := itemStep(i)
		p.of().decode(d, item, item, spot{d.places.part(in.part, step, d.extent(item)), d.paths.under(in.path, step)}, "", &made[i])
		*list = append(*list, &made[i])
		i++
	}
}

func (p several[P]) fill(*decoder, string, State, tree.Extent, any) {}

// byID is a mapping of mappings by id.
type byID[P any] struct{ of func() *table[P] }

func (p byID[P]) decode(d *decoder, s *spec, _, n *tree.Node, in spot, target any) {
	list := target.(*[]*P)
	m := d.enter(n)
	defer d.leave(n)
	if m.Kind != tree.Mapping {
		d.fault(n, "%q is %s; write a mapping with the id of each %s as its key", s.key, noun(m), p.of().name)
		return
	}
	pairs := d.pairsOf(m)
	defer d.drop(pairs)
	if d.crowded(s, n, len(pairs)) {
		return
	}
	made := make([]P, 0, len(pairs))
	*list = make([]*P, 0, len(pairs))
	ids := idsOf(pairs)
	for i, pair := range pairs {
		if !d.spend() {
			return
		}
		id, ok := d.id(pair.key, p.of().name)
		if !ok {
			continue
		}
		if first := ids.first(i, id); first != nil {
			other := d.src.RangeOf(first).Start
			d.fault(pair.key, "%s %q is here twice; the first one stands in line %d, column %d: give this one another id",
				p.of().name, clip(id), other.Line, other.Column)
			continue
		}
		made = made[:len(made)+1]
		v := &made[len(made)-1]
		item := spot{d.places.part(in.part, id, d.extent(pair.key)), d.paths.under(in.path, id)}
		p.of().decode(d, pair.key, pair.value, item, id, v)
		*list = append(*list, v)
	}
}

func (p byID[P]) fill(*decoder, string, State, tree.Extent, any) {}

// maxEntries bounds a section or list: each entry takes up to 5 KB.
const maxEntries = 20_000

// crowded reports a section or list that no record has.
func (d *decoder) crowded(s *spec, n *tree.Node, entries int) bool {
	if entries > maxEntries {
		d.fault(n, "%q has %d entries; a record has at most %d", s.key, entries, maxEntries)
	}
	return entries > maxEntries
}

// entrant is any part of a record: it has an Entry.
type entrant interface{ entry() *Entry }

func (e *Entry) entry() *Entry { return e }
