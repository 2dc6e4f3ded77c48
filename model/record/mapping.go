package record

import (
	"fmt"
	"strings"

	"driploop/model/record/internal/tree"
)

// maxFields bounds the fields of one table.
const maxFields = 128

// decode reads a mapping into v: all keys that are right, a fault for each that
// is not. It stands at its key; in a list, at itself.
func (t *table[T]) decode(d *decoder, at, n *tree.Node, in spot, id string, v *T) {
	m := d.enter(n)
	defer d.leave(n)
	if e, ok := any(v).(entrant); ok {
		*e.entry() = Entry{ID: id, Path: in.path, At: d.src.RangeOf(at), Body: d.src.RangeOf(n)}
	}
	if m.Kind != tree.Mapping {
		switch {
		case isUnknown(m):
			d.fault(n, "a %s cannot be unknown as a whole; write unknown for each value that is", t.name)
		case m.IsNull():
			d.fault(at, "%s has no value; write a mapping with the keys %s", quoteOr(id, "this "+t.name), t.sample())
		default:
			d.fault(n, "%s is %s; write a mapping with the keys %s", quoteOr(id, "this "+t.name), noun(m), t.sample())
		}
		t.fill(d, in.path, Absent, tree.Extent{}, v)
		return
	}
	r := reading[T]{d: d, pairs: d.pairsOf(m), in: in, kind: -1, firsts: t.byWord(), v: v}
	if t.kind != nil {
		r.kind = t.decodeKind(&r)
	}
	for i := range r.pairs {
		if !d.spend() {
			break
		}
		t.decodePair(&r, &r.pairs[i])
	}
	d.drop(r.pairs)
	t.complete(d, at, in.path, r.seen, v)
	if t.done != nil {
		t.done(v)
	}
}

// reading is the state of reading one mapping.
type reading[T any] struct {
	d      *decoder
	pairs  []keyed
	in     spot
	kind   int      // of component, or -1
	firsts []int    // see byWord
	seen   fieldSet // the first fields of the keys that were read
	v      *T
}

// fieldSet is a set of fields of a table, by their number.
type fieldSet [maxFields / 64]uint64

func (s *fieldSet) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s *fieldSet) has(i int) bool { return s[i/64]>>(i%64)&1 == 1 }

// decodeKind reads the kind ahead of the other keys, which depend on it.
func (t *table[T]) decodeKind(r *reading[T]) int {
	f, d := t.named("kind", -1), r.d
	for _, p := range r.pairs {
		if key := p.key.Aimed(); key.Value == f.key && isWord(key) {
			d.muted = true // its faults come when its turn comes
			d.value(&f.spec, p.key, p.value, spot{}, f.at(r.v))
			d.muted = false
			return t.kind(r.v)
		}
	}
	return -1
}

// decodePair reads one of the pairs of a mapping.
func (t *table[T]) decodePair(r *reading[T], p *keyed) {
	d, key := r.d, p.key.Aimed()
	if !isWord(key) {
		d.fault(p.key, "a key is a plain word; here stands %s", noun(p.key))
		return
	}
	first := r.firsts[p.word]
	f := t.onKind(first, r.kind)
	switch {
	case f == nil:
		t.strange(d, p.key, key.Value, r.kind)
		return
	case r.seen.has(first):
		other := firstOf(r.pairs, p.word).Begin()
		d.fault(p.key, "%q is here twice; the first one stands in line %d, column %d: keep one of them", key.Value, other.Line, other.Column)
		return
	}
	r.seen.add(first)
	if f.part == nil {
		d.places.value(r.in.part, p.word, d.extent(p.key))
		if target := f.at(r.v); !p.memo.again(d, &f.spec, target) {
			d.value(&f.spec, p.key, p.value, spot{part: r.in.part}, target)
			p.memo.keep(&f.spec, target)
		}
		return
	}
	here := spot{d.places.part(r.in.part, f.key, d.extent(p.key)), d.paths.under(r.in.path, f.key)}
	d.value(&f.spec, p.key, p.value, here, f.at(r.v))
}

// strange reports a key that the mapping does not have, and what would be right.
func (t *table[T]) strange(d *decoder, at *tree.Node, key string, kind int) {
	mine := t.keysFor(kind)
	if all := t.all(key); len(all) > 0 {
		var carriers kindSet
		for _, i := range all {
			carriers |= t.fields[i].kinds
		}
		near := ""
		if w, ok := nearest(key, mine); ok {
			near = fmt.Sprintf("; did you mean %q?", w)
		}
		d.fault(at, "a %s has no %q: that belongs to %s%s", kindTable()[kind].Name, key, listed(carriers.names(), "and"), near)
		return
	}
	name := t.name
	if kind >= 0 {
		name = kindTable()[kind].Name
	}
	d.fault(at, "%q is no key of a %s; %s", clip(key), name, choices(key, mine, "its keys are"))
}

// complete reports required keys that are missing and sets the paths of parts
// that are.
func (t *table[T]) complete(d *decoder, at *tree.Node, path string, seen fieldSet, v *T) {
	for _, i := range t.musts {
		if f := &t.fields[i]; !seen.has(t.byWord()[vocabulary().number(f.key)]) {
			d.fault(at, "%s has no %q; write %s", quoteOr(path, "the record"), f.key, f.sample())
		}
	}
	for _, i := range t.parts {
		if f := &t.fields[i]; !seen.has(i) {
			f.part.fill(d, d.paths.under(path, f.key), Absent, tree.Extent{}, f.at(v))
		}
	}
}

// fill marks every value in v as absent or unknown and sets the paths.
func (t *table[T]) fill(d *decoder, path string, state State, at tree.Extent, v *T) {
	if e, ok := any(v).(entrant); ok && e.entry().Path == "" {
		e.entry().Path = path
	}
	if state == Unknown {
		for i := range t.fields {
			setUnknown(t.fields[i].at(v), at)
		}
	}
	for _, i := range t.parts {
		f := &t.fields[i]
		f.part.fill(d, d.paths.under(path, f.key), state, at, f.at(v))
	}
}

// sample lists the first few keys of the mapping.
func (t *table[T]) sample() string {
	if len(t.keys) <= 6 {
		return listed(t.keys, "and")
	}
	return strings.Join(t.keys[:5], ", ") + " and others"
}

// sample shows the key with a value.
func (s *spec) sample() string {
	if s.part != nil {
		return fmt.Sprintf("a mapping under %q", s.key)
	}
	return fmt.Sprintf("\"%s: %s\"", s.key, s.example)
}

func quoteOr(s, fallback string) string {
	if s == "" {
		return fallback
	}
	return fmt.Sprintf("%q", s)
}
