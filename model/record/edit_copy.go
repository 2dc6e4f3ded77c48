package record

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// inherited returns the value of a key that merge keys bring to a mapping, or
// nil.
func inherited(m *yaml.Node, key string, depth int) *yaml.Node {
	if depth > maxMergeDepth {
		return nil
	}
	for i := 0; i+1 < len(m.Content); i += 2 {
		if !isMerge(m.Content[i]) {
			continue
		}
		value := aimed(m.Content[i+1])
		from := []*yaml.Node{value}
		if value.Kind == yaml.SequenceNode {
			from = value.Content
		}
		for _, f := range from {
			if v := valueOf(aimed(f), key, depth+1); v != nil {
				return v
			}
		}
	}
	return nil
}

// valueOf returns the value of a key of a mapping, its own or a merged one.
func valueOf(m *yaml.Node, key string, depth int) *yaml.Node {
	for i := 0; m.Kind == yaml.MappingNode && i+1 < len(m.Content); i += 2 {
		if k := aimed(m.Content[i]); !isMerge(k) && k.Value == key {
			return m.Content[i+1]
		}
	}
	return inherited(m, key, depth)
}

// rewritten writes a copy of a node on one line, with the change made in it.
func (e *editor) rewritten(n *yaml.Node, path []string) (string, error) {
	d := &decoder{src: e.src, r: &Record{}}
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

func held(n *yaml.Node, step string) *yaml.Node {
	if i, ok := indexOf(step); ok && n.Kind == yaml.SequenceNode && i < len(n.Content) {
		return n.Content[i]
	}
	if n.Kind != yaml.MappingNode {
		return nil
	}
	return valueOf(n, step, 0)
}

// flat copies a node with aliases followed, merges done, and no comments.
func flat(d *decoder, n *yaml.Node, depth int) *yaml.Node {
	n = aimed(n)
	out := &yaml.Node{Kind: n.Kind, Tag: n.Tag, Value: n.Value, Style: n.Style & (yaml.DoubleQuotedStyle | yaml.SingleQuotedStyle)}
	if depth > maxDepth {
		return out
	}
	children := n.Content
	if n.Kind == yaml.MappingNode {
		children = d.pairs(n)
	}
	if n.Kind != yaml.ScalarNode {
		out.Style = yaml.FlowStyle
	}
	for _, c := range children {
		out.Content = append(out.Content, flat(d, c, depth+1))
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
