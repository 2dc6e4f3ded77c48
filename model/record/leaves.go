package record

import (
	"strings"

	"driploop/model/record/internal/tree"
)

// Leaves returns the text of every value of a record by its path, as the YAML
// says it with anchors followed and merges done: what an edit must not change
// beyond what it is for. An empty mapping or list is a value, too.
func Leaves(name string, text []byte) (map[string]string, error) {
	d := &decoder{name: name, r: &Record{}, words: vocabulary()}
	root, src, faults := parse(name, text, &d.nodes)
	if len(faults) > 0 {
		return nil, faults
	}
	d.src = src
	leaves := map[string]string{}
	d.leaves(root, "", leaves)
	if len(d.faults) > 0 {
		return nil, d.faults
	}
	return leaves, nil
}

func (d *decoder) leaves(n *tree.Node, path string, into map[string]string) {
	defer d.leave(n)
	n = d.enter(n)
	if d.depth > maxMergeDepth || !d.spend() {
		return
	}
	switch n.Kind {
	case tree.Mapping:
		pairs := d.pairsOf(n)
		for _, p := range pairs {
			d.leaves(p.value, join(path, p.key.Aimed().Value), into)
		}
		if len(pairs) == 0 {
			into[path] = "{}"
		}
		d.drop(pairs)
	case tree.List:
		i := 0
		for item := n.First; item != nil; item = item.Next {
			d.leaves(item, index(path, i), into)
			i++
		}
		if i == 0 {
			into[path] = "[]"
		}
	default:
		into[path] = strings.TrimPrefix(n.TagName(), "!!") + " " + n.Value
	}
}
