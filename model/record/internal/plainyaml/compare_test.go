package plainyaml

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
)

// reference returns what yaml.v3 makes of a text that holds one document.
func reference(text []byte) (doc *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			doc, err = nil, fmt.Errorf("panic: %v", p)
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var first, second yaml.Node
	if err := decoder.Decode(&first); err != nil {
		return nil, err
	}
	if err := decoder.Decode(&second); !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("a second document, or: %w", err)
	}
	return &first, nil
}

// isTaken reports whether a text is not handed on.
func isTaken(text []byte) bool { return Parse(string(text), &tree.Arena{}) != nil }

// differs says what is different between what Parse and yaml.v3 make of a text;
// "" if nothing is, or if Parse hands the text on.
func differs(text []byte) string {
	var arena tree.Arena
	got := Parse(string(text), &arena)
	if got == nil {
		return ""
	}
	doc, err := reference(text)
	if err != nil {
		return "taken, and yaml.v3 says: " + err.Error()
	}
	want := doc.Content[0]
	if says := compare(text, got, want); says != "" {
		return says
	}
	arena.Forget()
	if says := compare(text, Parse(string(text), &arena), want); says != "" {
		return "with nodes used again: " + says
	}
	return ""
}

// compare says how a tree differs from that of yaml.v3. Where a node ends, which
// yaml.v3 does not tell, is held to what is read from the text along its nodes.
func compare(text []byte, got *tree.Node, want *yaml.Node) string {
	var arena tree.Arena
	c := comparison{src: tree.NewSource(text), met: map[*tree.Node]*yaml.Node{}}
	c.compare("", got, arena.Read(want), want)
	return c.says
}

type comparison struct {
	says string
	src  *tree.Source
	met  map[*tree.Node]*yaml.Node // of aliases: by a node of ours that of yaml.v3
}

// told is what a node tells of itself alone.
type told struct {
	Kind         yaml.Kind
	Style        yaml.Style
	Tag          string
	Value        string
	Anchor       string
	Line, Column int
	Children     int
	Merges       bool
}

func tell(n *tree.Node) told {
	kind := map[tree.Kind]yaml.Kind{tree.Scalar: yaml.ScalarNode, tree.Mapping: yaml.MappingNode, tree.List: yaml.SequenceNode, tree.Alias: yaml.AliasNode}[n.Kind]
	return told{
		kind, yaml.Style(n.Style), n.TagName(), n.Value, n.Anchor(), n.Begin().Line, n.Begin().Column, int(n.Size), n.Merges,
	}
}

func tellYAML(n *yaml.Node) told {
	merges := false
	for i := 0; n.Kind == yaml.MappingNode && i < len(n.Content); i += 2 {
		merges = merges || n.Content[i].Tag == "!!merge"
	}
	return told{n.Kind, n.Style, n.Tag, n.Value, n.Anchor, n.Line, n.Column, len(n.Content), merges}
}

func (c *comparison) compare(path string, got, read *tree.Node, want *yaml.Node) {
	c.met[got] = want
	if ours, theirs := tell(got), tellYAML(want); ours != theirs {
		c.say(path, ours, theirs)
	}
	if again := tell(read); again != tell(got) {
		c.say(path, tell(got), again)
	}
	if ends := c.src.RangeOf(read); got.At != tree.Of(ends) {
		c.say(path, got.At, ends)
	}
	if (got.Kind == tree.Alias) != (want.Alias != nil) || got.Kind == tree.Alias && c.met[got.Aimed()] != want.Alias {
		c.say(path, "alias of another node", "")
	}
	ours, theirs := got.First, read.First
	for i, child := range want.Content {
		if ours == nil || theirs == nil {
			c.say(path, "fewer children", len(want.Content))
			return
		}
		c.compare(fmt.Sprintf("%s/%d", path, i), ours, theirs, child)
		ours, theirs = ours.Next, theirs.Next
	}
	if ours != nil || theirs != nil {
		c.say(path, "more children", len(want.Content))
	}
}

func (c *comparison) say(path string, got, want any) {
	if c.says == "" {
		c.says = fmt.Sprintf("%s: %+v, and yaml.v3: %+v", path, got, want)
	}
}
