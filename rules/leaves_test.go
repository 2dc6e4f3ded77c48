package rules

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// change is a record with one value changed or taken away.
type change struct {
	name string // what was done to which path
	path string
	text string
	// again: the value stands here by an alias or merge key, and has been changed
	// at an earlier place.
	again bool
}

// leaf is a single value in the tree of a record: of a mapping, under its key,
// or an item of a list.
type leaf struct {
	path  string
	value *yaml.Node
	item  bool
	steps []int // to it from the root, through opened nodes
}

// tree reads a record and lists its leaves.
func tree(t testing.TB, text string) (*yaml.Node, []leaf) {
	t.Helper()
	var document yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(text), &document))
	root := document.Content[0]
	return root, leavesOf(root, "", nil, nil)
}

// leavesOf lists the leaves below a node, those that aliases and merge keys bring
// at each place where they bring them.
func leavesOf(node *yaml.Node, path string, steps []int, all []leaf) []leaf {
	own := opened(node)
	for at, value := range own.Content {
		name := fmt.Sprintf("%s[%d]", path, at)
		if own.Kind == yaml.MappingNode {
			if at%2 == 0 {
				continue
			}
			name = strings.TrimPrefix(path+"."+own.Content[at-1].Value, ".")
		}
		to := append(slices.Clone(steps), at)
		if target(value).Kind == yaml.ScalarNode {
			all = append(all, leaf{name, target(value), own.Kind == yaml.SequenceNode, to})
			continue
		}
		all = leavesOf(value, name, to, all)
	}
	return all
}

func target(node *yaml.Node) *yaml.Node {
	for node.Kind == yaml.AliasNode {
		node = node.Alias
	}
	return node
}

// opened returns a node by itself: what an alias stands for, with what merge keys
// bring, so that a value taken away does not lay bare the one that it stood for.
// What it holds is still shared.
func opened(node *yaml.Node) *yaml.Node {
	own := *target(node)
	own.Anchor = ""
	if own.Kind != yaml.MappingNode {
		own.Content = slices.Clone(own.Content)
		return &own
	}
	var pairs, merged []*yaml.Node
	has := map[string]bool{}
	for i := 0; i+1 < len(own.Content); i += 2 {
		key, value := own.Content[i], own.Content[i+1]
		if key.Value == "<<" {
			merged = append(merged, opened(value))
			continue
		}
		has[key.Value] = true
		pairs = append(pairs, key, value)
	}
	for _, from := range merged {
		for i := 0; i+1 < len(from.Content); i += 2 {
			if !has[from.Content[i].Value] {
				pairs = append(pairs, from.Content[i], from.Content[i+1])
			}
		}
	}
	own.Content = pairs
	return &own
}

// edited returns the tree with a change where some steps lead. Nothing of the old
// tree changes.
func edited(node *yaml.Node, steps []int, f func(in *yaml.Node, at int)) *yaml.Node {
	own := opened(node)
	if at := steps[0]; len(steps) == 1 {
		f(own, at)
	} else {
		own.Content[at] = edited(own.Content[at], steps[1:], f)
	}
	return own
}

// without returns the tree without a leaf and its key.
func without(root *yaml.Node, l leaf) *yaml.Node {
	return edited(root, l.steps, func(in *yaml.Node, at int) {
		from := at
		if !l.item {
			from--
		}
		in.Content = slices.Delete(in.Content, from, at+1)
	})
}

// reading returns the tree with another text for a leaf.
func reading(root *yaml.Node, l leaf, text string) *yaml.Node {
	return edited(root, l.steps, func(in *yaml.Node, at int) {
		in.Content[at] = &yaml.Node{Kind: yaml.ScalarNode, Value: text}
	})
}

// withoutEachLeaf returns the record once without each of its values, and once
// with each written "unknown".
func withoutEachLeaf(t testing.TB, text string) []change {
	t.Helper()
	root, leaves := tree(t, text)
	var changes []change
	changed := map[*yaml.Node]bool{}
	for _, l := range leaves {
		if strings.HasPrefix(l.path, "practice[") || l.path == "sign_off.digest" {
			continue
		}
		again := changed[l.value]
		changes = append(changes, change{"without " + l.path, l.path, rendered(without(root, l)), again})
		if !l.item {
			changes = append(changes, change{"unknown " + l.path, l.path, rendered(reading(root, l, "unknown")), again})
		}
		changed[l.value] = true
	}
	return changes
}

// renderer writes a tree in flow style, an entry a line. The library's own writer
// takes a hundred times longer.
type renderer struct {
	out  strings.Builder
	seen map[*yaml.Node]string // anchors
}

func rendered(root *yaml.Node) string {
	r := renderer{seen: map[*yaml.Node]string{}}
	r.node(root)
	return r.out.String()
}

// bare tells whether a scalar means in a flow collection what it means in a block.
func bare(scalar string) bool {
	for i, c := range []byte(scalar) {
		plain := c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '.' || c == '_'
		if !plain && (i == 0 || i == len(scalar)-1 || !strings.ContainsRune(" +/-", rune(c))) {
			return false
		}
	}
	return scalar != ""
}

// node writes a node. One with an anchor is written where it first stands, be it
// for an alias, and is an alias from then on.
func (r *renderer) node(node *yaml.Node) {
	node = target(node)
	if node.Anchor != "" {
		if name, again := r.seen[node]; again {
			r.out.WriteString("*" + name + " ")
			return
		}
		name := "a" + strconv.Itoa(len(r.seen))
		r.seen[node] = name
		r.out.WriteString("&" + name + " ")
	}
	switch {
	case node.Kind == yaml.MappingNode:
		r.out.WriteString("{\n")
		for i := 0; i < len(node.Content); i += 2 {
			if node.Content[i].Value == "<<" {
				r.out.WriteString("<<")
			} else {
				r.node(node.Content[i])
			}
			r.out.WriteString(": ")
			r.node(node.Content[i+1])
			r.out.WriteString(",\n")
		}
		r.out.WriteString("}")
	case node.Kind == yaml.SequenceNode:
		r.out.WriteString("[\n")
		for _, item := range node.Content {
			r.node(item)
			r.out.WriteString(",\n")
		}
		r.out.WriteString("]")
	case node.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) == 0 && bare(node.Value):
		r.out.WriteString(node.Value)
	default:
		r.out.WriteString(strconv.Quote(node.Value))
	}
}

// TestRenderedRecordsAreJudgedAlike holds the writer of changed records to what
// it writes: all outcomes stay as they are, only places change.
func TestRenderedRecordsAreJudgedAlike(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	for name, text := range demos(t) {
		root, leaves := tree(t, text)
		require.NotEmpty(t, leaves)
		want, usable := outcomesOfRecord(t, engine, text)
		require.True(t, usable, name)
		last := leaves[len(leaves)-1]
		for _, same := range []*yaml.Node{root, opened(root), reading(root, last, last.value.Value)} {
			got, usable := outcomesOfRecord(t, engine, rendered(same))
			require.True(t, usable, "%s\n%s", name, rendered(same))
			require.Equal(t, want, got, name)
		}
	}
}
