package record

import (
	"slices"

	"go.yaml.in/yaml/v3"
)

const (
	nullTag  = "!!null"
	mergeTag = "!!merge"
	boolTag  = "!!bool"
)

// maxMergeDepth bounds merge keys within merged mappings; a mapping that merges
// itself reaches it too.
const maxMergeDepth = 16

// pairs returns the keys and values of a mapping in turn, those that merge keys
// bring after its own, as in YAML 1.1: own keys win, then the earlier merge.
func (d *decoder) pairs(m *yaml.Node) []*yaml.Node {
	first := 0
	for first < len(m.Content) && !isMerge(m.Content[first]) {
		first += 2
	}
	if first+1 >= len(m.Content) {
		return m.Content
	}
	const usual = 64 // keys and values of a large mapping of a record
	own := make([]*yaml.Node, 0, len(m.Content)+min(len(aimed(m.Content[first+1]).Content), usual))
	d.taken.clear()
	for i := 0; i+1 < len(m.Content); i += 2 {
		if !isMerge(m.Content[i]) {
			own = append(own, m.Content[i], m.Content[i+1])
			d.taken.add(aimed(m.Content[i]).Value)
		}
	}
	return d.merge(own, m, 0)
}

// keySet is a set of keys, most often of few.
type keySet struct {
	few  []string
	many map[string]bool // instead, if there are more
}

func (k *keySet) clear() { k.few, k.many = k.few[:0], nil }

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
func (d *decoder) merge(pairs []*yaml.Node, m *yaml.Node, depth int) []*yaml.Node {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if !isMerge(m.Content[i]) {
			continue
		}
		at := d.src.rangeOf(m.Content[i])
		if depth >= maxMergeDepth {
			d.fault(at, "mappings merge into each other more than %d deep; write one of them out", maxMergeDepth)
			return pairs
		}
		value := aimed(m.Content[i+1])
		from := []*yaml.Node{value}
		if value.Kind == yaml.SequenceNode {
			from = value.Content
		}
		for _, f := range from {
			f = aimed(f)
			if f.Kind != yaml.MappingNode {
				d.fault(at, "\"<<\" takes a mapping or a list of mappings by alias, such as \"<<: *name\"; here stands %s", noun(f))
				continue
			}
			d.expand(1 + len(f.Content)/2)
			if d.stopped {
				return pairs
			}
			for j := 0; j+1 < len(f.Content); j += 2 {
				if key := aimed(f.Content[j]); !isMerge(key) && d.taken.add(key.Value) {
					pairs = append(pairs, f.Content[j], f.Content[j+1])
				}
			}
			pairs = d.merge(pairs, f, depth+1)
		}
	}
	return pairs
}

func isMerge(n *yaml.Node) bool { return len(n.Value) == len("<<") && n.Tag == mergeTag }

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == nullTag }

// aimed returns the node that an alias stands for, or the node itself.
func aimed(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return n.Alias
	}
	return n
}

// noun says what a node is, for messages.
func noun(n *yaml.Node) string {
	n = aimed(n)
	switch {
	case n.Kind == yaml.MappingNode:
		return "a mapping"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case isNull(n):
		return "nothing"
	}
	return "the text \"" + clip(n.Value) + "\""
}
