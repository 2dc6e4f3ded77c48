package record

import (
	"iter"
	"slices"

	"driploop/model/record/internal/tree"
)

// maxMergeDepth bounds merge keys within merged mappings; a mapping that merges
// itself reaches it too.
const maxMergeDepth = 16

// keyed is a key of a mapping with its value.
type keyed struct {
	key, value *tree.Node
	word       word  // of the key
	memo       *memo // of a pair that a merge key brings, else nil
}

// isWord reports whether a key is a text; any text may be one but that of no value.
func isWord(key *tree.Node) bool { return key.Kind == tree.Scalar && key.Tag != tree.Null }

// firstOf returns the first key that is a word.
func firstOf(pairs []keyed, w word) *tree.Node {
	for _, p := range pairs {
		if p.word == w && isWord(p.key.Aimed()) {
			return p.key
		}
	}
	return nil
}

// pairsOf returns the keys and values of a mapping, those that merge keys bring
// after its own, as in YAML 1.1: own keys win, then the earlier merge. They are to
// be dropped when they were read, the last ones first.
func (d *decoder) pairsOf(m *tree.Node) []keyed {
	base := len(d.pairs)
	for key := m.First; key != nil; key = key.Next.Next {
		if !m.Merges || !key.IsMerge() {
			d.pairs = append(d.pairs, keyed{key, key.Next, d.words.number(key.Aimed().Value), nil})
		}
	}
	if m.Merges {
		d.taken.clear()
		for i := range d.pairs[base:] {
			p := &d.pairs[base+i]
			d.taken.add(p.word, p.key.Aimed().Value)
		}
		d.merge(m, 0)
	}
	return d.pairs[base:len(d.pairs):len(d.pairs)]
}

func (d *decoder) drop(pairs []keyed) { d.pairs = d.pairs[:len(d.pairs)-len(pairs)] }

// keySet is a set of keys, most often of few.
type keySet struct {
	few  []string
	many map[string]bool // instead, if there are more
}

func (k *keySet) clear() { k.few, k.many = k.few[:0], nil }

func (k *keySet) forget() {
	clear(k.few[:cap(k.few)])
	k.clear()
}

// add reports whether a key is new.
func (k *keySet) add(key string) bool {
	const few = 48
	switch {
	case k.many[key] || slices.Contains(k.few, key):
		return false
	case k.many != nil:
		k.many[key] = true
	case len(k.few) < few:
		k.few = append(k.few, key)
	default:
		k.many = map[string]bool{key: true}
		for _, other := range k.few {
			k.many[other] = true
		}
		k.few = k.few[:0]
	}
	return true
}

// merge adds what the merge keys of m bring.
func (d *decoder) merge(m *tree.Node, depth int) {
	for key := m.First; m.Merges && key != nil; key = key.Next.Next {
		if !key.IsMerge() {
			continue
		}
		if depth >= maxMergeDepth {
			d.fault(key, "mappings merge into each other more than %d deep; write one of them out", maxMergeDepth)
			return
		}
		for from := range merged(key.Next) {
			if from.Kind != tree.Mapping {
				d.fault(key, "\"<<\" takes a mapping or a list of mappings by alias, such as \"<<: *name\"; here stands %s", noun(from))
				continue
			}
			d.expand(1 + int(from.Size)/2)
			if d.stopped {
				return
			}
			for _, pair := range d.brought(from) {
				if d.taken.add(pair.word, pair.key.Aimed().Value) {
					d.pairs = append(d.pairs, pair)
				}
			}
			d.merge(from, depth+1)
		}
	}
}

// brought are the keys that a mapping brings to one that merges it, with their words:
// of most such mappings they are asked for many times.
func (d *decoder) brought(m *tree.Node) []keyed {
	if pairs, ok := d.bringing[m]; ok {
		return pairs
	}
	pairs, memos := make([]keyed, 0, m.Size/2), make([]memo, m.Size/2)
	for key := m.First; key != nil; key = key.Next.Next {
		if own := key.Aimed(); !own.IsMerge() {
			pairs = append(pairs, keyed{key, key.Next, d.words.number(own.Value), &memos[len(pairs)]})
		}
	}
	if d.bringing == nil {
		d.bringing = map[*tree.Node][]keyed{}
	}
	d.bringing[m] = pairs
	return pairs
}

// merged are what the value of a merge key stands for: one mapping, or each item
// of a list.
func merged(value *tree.Node) iter.Seq[*tree.Node] {
	return func(yield func(*tree.Node) bool) {
		value = value.Aimed()
		if value.Kind != tree.List {
			yield(value)
			return
		}
		for item := value.First; item != nil; item = item.Next {
			if !yield(item.Aimed()) {
				return
			}
		}
	}
}

// noun says what a node is, for messages.
func noun(n *tree.Node) string {
	n = n.Aimed()
	switch {
	case n.Kind == tree.Mapping:
		return "a mapping"
	case n.Kind == tree.List:
		return "a list"
	case n.IsNull():
		return "nothing"
	}
	return "the text \"" + clip(n.Value) + "\""
}
