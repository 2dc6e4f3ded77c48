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
	in    *yaml.Node
	at    int // of the value among what holds it
}

// tree reads a record and lists its leaves, aliases and merge keys written out.
func tree(t testing.TB, text string) (*yaml.Node, []leaf) {
	t.Helper()
	var document yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(text), &document))
	flatten(&document)
	return &document, leavesOf(document.Content[0], "", nil)
}

func leavesOf(node *yaml.Node, path string, all []leaf) []leaf {
	visit := func(value *yaml.Node, at int, path string) {
		if value.Kind == yaml.ScalarNode {
			all = append(all, leaf{path, value, node, at})
			return
		}
		all = leavesOf(value, path, all)
	}
	switch node.Kind {
	case yaml.MappingNode:
		for i := 1; i < len(node.Content); i += 2 {
			visit(node.Content[i], i, strings.TrimPrefix(path+"."+node.Content[i-1].Value, "."))
		}
	case yaml.SequenceNode:
		for i, item := range node.Content {
			visit(item, i, fmt.Sprintf("%s[%d]", path, i))
		}
	}
	return all
}

// without calls f while the leaf, with its key, is taken away.
func (l leaf) without(f func()) {
	whole := l.in.Content
	l.remove()
	f()
	l.in.Content = whole
}

// reading calls f while the leaf reads otherwise.
func (l leaf) reading(text string, f func()) {
	was := *l.value
	*l.value = leafNode(text)
	f()
	*l.value = was
}

func leafNode(text string) yaml.Node { return yaml.Node{Kind: yaml.ScalarNode, Value: text} }

// remove takes the leaf, with its key, away.
func (l leaf) remove() {
	from := l.at
	if l.in.Kind == yaml.MappingNode {
		from--
	}
	l.in.Content = slices.Concat(l.in.Content[:from], l.in.Content[l.at+1:])
}

// withoutEachLeaf returns the record once without each of its values, and once
// with each written "unknown".
func withoutEachLeaf(t testing.TB, text string) []change {
	t.Helper()
	document, leaves := tree(t, text)
	var changes []change
	changed := map[[2]int]bool{} // by line and column
	for _, l := range leaves {
		if strings.HasPrefix(l.path, "practice[") || l.path == "sign_off.digest" {
			continue
		}
		place := [2]int{l.value.Line, l.value.Column}
		add := func(how string) {
			changes = append(changes, change{name: how + " " + l.path, path: l.path, text: rendered(document), again: changed[place]})
		}
		l.without(func() { add("without") })
		if l.in.Kind == yaml.MappingNode {
			l.reading("unknown", func() { add("unknown") })
		}
		changed[place] = true
	}
	return changes
}

// rendered writes a tree in flow style, an entry a line. The library's own writer
// takes a hundred times longer.
func rendered(document *yaml.Node) string {
	var out strings.Builder
	render(&out, document.Content[0])
	return out.String()
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

func render(out *strings.Builder, node *yaml.Node) {
	switch {
	case node.Kind == yaml.MappingNode:
		out.WriteString("{\n")
		for i := 0; i < len(node.Content); i += 2 {
			render(out, node.Content[i])
			out.WriteString(": ")
			render(out, node.Content[i+1])
			out.WriteString(",\n")
		}
		out.WriteString("}")
	case node.Kind == yaml.SequenceNode:
		out.WriteString("[\n")
		for _, item := range node.Content {
			render(out, item)
			out.WriteString(",\n")
		}
		out.WriteString("]")
	case node.Style == 0 && bare(node.Value):
		out.WriteString(node.Value)
	default:
		out.WriteString(strconv.Quote(node.Value))
	}
}

// TestWrittenRecordsAreJudgedAlike holds the writer of changed records to what
// it writes: all outcomes stay as they are, only places change.
func TestWrittenRecordsAreJudgedAlike(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	for name, text := range demos(t) {
		document, leaves := tree(t, text)
		require.NotEmpty(t, leaves)
		want, usable := outcomesOfRecord(t, engine, text)
		require.True(t, usable, name)
		got, usable := outcomesOfRecord(t, engine, rendered(document))
		require.True(t, usable, name)
		require.Equal(t, want, got, name)
	}
}

// flatten writes out aliases and merge keys, so that a value taken away does not
// lay bare the one that it stood for.
func flatten(node *yaml.Node) {
	for node.Kind == yaml.AliasNode {
		*node = *node.Alias
	}
	node.Anchor = ""
	children := make([]*yaml.Node, len(node.Content))
	for i, child := range node.Content {
		own := *child
		flatten(&own)
		children[i] = &own
	}
	node.Content = children
	if node.Kind != yaml.MappingNode {
		return
	}
	var plain, merged []*yaml.Node
	has := map[string]bool{}
	for i := 0; i+1 < len(children); i += 2 {
		if children[i].Tag == "!!merge" {
			merged = append(merged, children[i+1])
			continue
		}
		has[children[i].Value] = true
		plain = append(plain, children[i], children[i+1])
	}
	for _, from := range merged {
		for i := 0; i+1 < len(from.Content); i += 2 {
			if !has[from.Content[i].Value] {
				has[from.Content[i].Value] = true
				plain = append(plain, from.Content[i], from.Content[i+1])
			}
		}
	}
	node.Content = plain
}
