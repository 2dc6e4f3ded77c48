package record

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// Leaves returns the text of every value of a record by its path, as the YAML
// says it with anchors followed and merges done: what an edit must not change
// beyond what it is for. An empty mapping or list is a value, too.
func Leaves(name string, text []byte) (map[string]string, error) {
	root, src, faults := parse(name, text)
	if len(faults) > 0 {
		return nil, faults
	}
	d := &decoder{name: name, src: src, r: &Record{}}
	leaves := map[string]string{}
	d.leaves(root, "", leaves)
	if len(d.faults) > 0 {
		return nil, d.faults
	}
	return leaves, nil
}

func (d *decoder) leaves(n *yaml.Node, path string, into map[string]string) {
	n, leave := d.follow(n)
	defer leave()
	if d.depth > maxMergeDepth || !d.spend() {
		return
	}
	switch n.Kind {
	case yaml.MappingNode:
		pairs := d.pairs(n)
		for i := 0; i+1 < len(pairs); i += 2 {
			d.leaves(pairs[i+1], join(path, aimed(pairs[i]).Value), into)
		}
		if len(pairs) == 0 {
			into[path] = "{}"
		}
	case yaml.SequenceNode:
		for i, item := range n.Content {
			d.leaves(item, index(path, i), into)
		}
		if len(n.Content) == 0 {
			into[path] = "[]"
		}
	default:
		into[path] = strings.TrimPrefix(n.Tag, "!!") + " " + n.Value
	}
}
