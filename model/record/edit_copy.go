package record

import (
	"strings"

	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
)

// inherited returns the value of a key that merge keys bring to a mapping, or
// nil.
func inherited(m *tree.Node, key string, depth int) *tree.Node {
	if depth > maxMergeDepth {
		return nil
	}
	for k := m.First; m.Merges && k != nil; k = k.Next.Next {
		if !k.IsMerge() {
			continue
		}
		for from := range merged(k.Next) {
			if v := valueOf(from, key, depth+1); v != nil {
				return v
			}
		}
	}
	return nil
}

// valueOf returns the value of a key of a mapping, its own or a merged one.
func valueOf(m *tree.Node, key string, depth int) *tree.Node {
	if m.Kind != tree.Mapping {
		return nil
	}
	for k := m.First; k != nil; k = k.Next.Next {
		if own := k.Aimed(); !own.IsMerge() && own.Value == key {
			return k.Next
		}
	}
	return inherited(m, key, depth)
}

// rewritten writes a copy of a node on one line, with the change made in it.
func (e *editor) rewritten(n *tree.Node, path []string) (string, error) {
	d := &decoder{src: e.src, r: &Record{}, words: vocabulary()}
	copied := flat(d, n, 0)
	target := copied
	for i, step := range path {
		next := held(target, step)
		if next == nil {
			if target.Kind != yaml.MappingNode {
				return "", e.noPlace(step)
			}
			next = &yaml.Node{Kind: yaml.ScalarNode}
			target.Content = append(target.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: step}, next)
			*next = *parsed(nested(path[i+1:], e.change.Value))
			return oneLine(copied)
		}
		target = next
	}
	*target = *parsed(e.change.Value)
	return oneLine(copied)
}

// held returns what stands at a step below a flat node, or nil.
func held(n *yaml.Node, step string) *yaml.Node {
	if i, ok := indexOf(step); ok && n.Kind == yaml.SequenceNode && i < len(n.Content) {
		return n.Content[i]
	}
	for i := 0; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == step {
			return n.Content[i+1]
		}
	}
	return nil
}

// flat copies a node with aliases followed, merges done, and no comments.
func flat(d *decoder, n *tree.Node, depth int) *yaml.Node {
	n = n.Aimed()
	out := &yaml.Node{Tag: n.TagName(), Value: n.Value, Style: yaml.Style(n.Style & (tree.DoubleQuoted | tree.SingleQuoted))}
	switch n.Kind {
	case tree.Mapping:
		out.Kind, out.Style = yaml.MappingNode, yaml.FlowStyle
	case tree.List:
		out.Kind, out.Style = yaml.SequenceNode, yaml.FlowStyle
	default:
		out.Kind = yaml.ScalarNode
	}
	if depth > maxDepth {
		return out
	}
	add := func(child *tree.Node) { out.Content = append(out.Content, flat(d, child, depth+1)) }
	if n.Kind == tree.Mapping {
		pairs := d.pairsOf(n)
		for _, p := range pairs {
			add(p.key)
			add(p.value)
		}
		d.drop(pairs)
		return out
	}
	for c := n.First; c != nil; c = c.Next {
		add(c)
	}
	return out
}

// parsed is the node of a value that is written as YAML.
func parsed(value string) *yaml.Node {
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(value), &doc); err != nil || len(doc.Content) == 0 {
		return &yaml.Node{Kind: yaml.ScalarNode, Value: value}
	}
	return doc.Content[0]
}

// oneLine writes a node in flow style.
func oneLine(n *yaml.Node) (string, error) {
	text, err := yaml.Marshal(n)
	if err != nil {
		return "", err
	}
	lines := strings.Split(strings.TrimRight(string(text), "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return strings.Join(lines, " "), nil
}

// spell writes a leaf as Leaves returns it as YAML.
func spell(leaf string) string {
	tag, value, tagged := strings.Cut(leaf, " ")
	if !tagged {
		return leaf // {} or []
	}
	text, err := oneLine(&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!" + tag, Value: value})
	if err != nil {
		return value
	}
	return text
}

// Spell writes a text as a value of YAML, quoted where it must be.
func Spell(value string) string { return spell("str " + value) }
