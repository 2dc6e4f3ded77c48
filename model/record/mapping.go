package record

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/record/internal/tree"

	"driploop/model/verdict"
)

// maxFields bounds the fields of one table.
const maxFields = 128

// decode reads a mapping into v: all keys that are right, a fault for each that
// is not. The ranges are those of its key, or of the list item, and of the
// mapping itself.
func (t *table[T]) decode(d *decoder, at, body verdict.Range, n *tree.Node, in spot, id string, v *T) {
	m := d.enter(n)
	defer d.leave(n)
	if e, ok := any(v).(entrant); ok {
		*e.entry() = Entry{ID: id, Path: in.path, At: at, Body: body}
	}
	if m.Kind != tree.Mapping {
		switch {
		case isUnknown(m):
			d.fault(body, "a %s cannot be unknown as a whole; write unknown for each value that is", t.name)
		case m.IsNull():
			d.fault(at, "%s has no value; write a mapping with the keys %s", quoteOr(id, "this "+t.name), t.sample())
		default:
			d.fault(body, "%s is %s; write a mapping with the keys %s", quoteOr(id, "this "+t.name), noun(m), t.sample())
		}
		t.fill(d, in.path, Absent, verdict.Range{}, v)
		return
	}
	pairs := d.pairsOf(m)
	kind := -1
	if t.kind != nil {
		kind = t.decodeKind(d, pairs, v)
	}
	var seen fieldSet
	for i := range pairs {
		if !d.spend() {
			break
		}
		t.decodePair(d, pairs, i, in, kind, &seen, v)
	}
	d.drop(pairs)
	t.complete(d, at, in.path, seen, v)
	if t.done != nil {
		t.done(v)
	}
}

// fieldSet is a set of fields of a table, by their number.
type fieldSet [maxFields / 64]uint64

func (s *fieldSet) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s *fieldSet) has(i int) bool { return s[i/64]>>(i%64)&1 == 1 }

// decodeKind reads the kind ahead of the other keys, which depend on it.
func (t *table[T]) decodeKind(d *decoder, pairs []keyed, v *T) int {
	for _, p := range pairs {
		if key, _ := word(p.key); key == "kind" {
			f := &t.fields[t.index.of(key)[0]]
			d.muted = true // its faults come when its turn comes
			d.value(&f.spec, verdict.Range{}, p.value, spot{}, f.at(v))
			d.muted = false
			return t.kind(v)
		}
	}
	return -1
}

// decodePair reads one of the pairs of a mapping.
func (t *table[T]) decodePair(d *decoder, pairs []keyed, number int, in spot, kind int, seen *fieldSet, v *T) {
	p := pairs[number]
	key, ok := word(p.key)
	at := d.src.RangeOf(p.key)
	if !ok {
		d.fault(at, "a key is a plain word; here stands %s", noun(p.key))
		return
	}
	f, i := t.find(key, kind)
	if f == nil {
		t.strange(d, at, key, kind)
		return
	}
	if seen.has(i) {
		first := pairs[slices.IndexFunc(pairs, func(p keyed) bool { other, ok := word(p.key); return ok && other == key })].key.Begin()
		d.fault(at, "%q is here twice; the first one stands in line %d, column %d: keep one of them", key, first.Line, first.Column)
		return
	}
	seen.add(i)
	here := spot{number: d.place(in.number, key, at)}
	if f.part != nil {
		here.path = d.join(in.path, key)
	}
	d.value(&f.spec, at, p.value, here, f.at(v))
}

// strange reports a key that the mapping does not have, and what would be right.
func (t *table[T]) strange(d *decoder, at verdict.Range, key string, kind int) {
	mine := t.keysFor(kind)
	if all := t.index.of(key); len(all) > 0 {
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
func (t *table[T]) complete(d *decoder, at verdict.Range, path string, seen fieldSet, v *T) {
	for _, i := range t.musts {
		if f := &t.fields[i]; !seen.has(t.index.of(f.key)[0]) {
			d.fault(at, "%s has no %q; write %s", quoteOr(path, "the record"), f.key, f.sample())
		}
	}
	for _, i := range t.parts {
		if f := &t.fields[i]; !seen.has(i) {
			f.part.fill(d, d.join(path, f.key), Absent, verdict.Range{}, f.at(v))
		}
	}
}

// fill marks every value in v as absent or unknown and sets the paths.
func (t *table[T]) fill(d *decoder, path string, state State, at verdict.Range, v *T) {
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
		f.part.fill(d, d.join(path, f.key), state, at, f.at(v))
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
