// Package tree holds YAML as nodes, with all that yaml.v3's nodes tell but
// comments, and where each ends. Nodes are small and made many at a time, so that
// reading a record leaves nothing of them behind.
package tree

import (
	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// Kind is what a node is.
type Kind uint8

// The kinds of node.
const (
	Scalar Kind = iota + 1
	Mapping
	List
	Alias
)

// Style is how a node is written, as bits; those of yaml.v3.
type Style uint8

// The styles of a node. Without any it is a plain text, or a block.
const (
	Tagged       = Style(yaml.TaggedStyle)
	DoubleQuoted = Style(yaml.DoubleQuotedStyle)
	SingleQuoted = Style(yaml.SingleQuotedStyle)
	Literal      = Style(yaml.LiteralStyle)
	Folded       = Style(yaml.FoldedStyle)
	Flow         = Style(yaml.FlowStyle)
)

// Tag is the tag of a node, in its short form.
type Tag uint8

// The tags of YAML. That of an alias is None, one of somebody's own is Other.
const (
	None Tag = iota
	Str
	Null
	Bool
	Int
	Float
	Timestamp
	Binary
	Merge
	Map
	Seq
	Other
)

// names are the tags as they are written.
var names = [Other]string{"", "!!str", "!!null", "!!bool", "!!int", "!!float", "!!timestamp", "!!binary", "!!merge", "!!map", "!!seq"}

// TagOf returns the tag with a name.
func TagOf(name string) Tag {
	for tag, n := range names {
		if n == name {
			return Tag(tag)
		}
	}
	return Other
}

// Node is a text, a mapping, a list, or an alias of one.
type Node struct {
	Value string // of a text as it is meant; of an alias its name
	// First is the first child, from which Next leads to the others. The children of
	// a mapping are a key and its value in turn.
	First, Next *Node
	more        *more // nil for most

	At    Extent // as written, without anchor and tag; zero if Source.RangeOf has to find it
	Size  int32  // number of children
	Kind  Kind
	Style Style
	Tag   Tag
	// Merges: a key of the mapping merges others into it.
	Merges bool
}

// more is what few nodes have.
type more struct {
	anchor       string
	tag          string // if it is Other
	target       *Node  // of an alias
	line, column int32  // of an anchor or tag before the node
}

// Extent is a range of a file in little room: no file is so long.
type Extent struct{ Line, Column, EndLine, EndColumn int32 }

// Of returns the extent of a range.
func Of(at verdict.Range) Extent {
	return Extent{int32(at.Start.Line), int32(at.Start.Column), int32(at.End.Line), int32(at.End.Column)}
}

// Range returns the range of an extent.
func (e Extent) Range() verdict.Range {
	return verdict.Range{
		Start: verdict.Position{Line: int(e.Line), Column: int(e.Column)},
		End:   verdict.Position{Line: int(e.EndLine), Column: int(e.EndColumn)},
	}
}

// Aimed returns the node that an alias stands for, or the node itself.
func (n *Node) Aimed() *Node {
	if n.Kind == Alias {
		return n.more.target
	}
	return n
}

// Anchor returns the name that aliases call the node by; "" if it has none.
func (n *Node) Anchor() string {
	if n.more == nil {
		return ""
	}
	return n.more.anchor
}

// TagName returns the tag as it is written.
func (n *Node) TagName() string {
	if n.Tag == Other {
		return n.more.tag
	}
	return names[n.Tag]
}

// Begin returns where the node begins, its anchor or tag included.
func (n *Node) Begin() verdict.Position {
	if n.more != nil && n.more.line > 0 {
		return verdict.Position{Line: int(n.more.line), Column: int(n.more.column)}
	}
	return verdict.Position{Line: int(n.At.Line), Column: int(n.At.Column)}
}

// Child returns the child with a number, from 0; nil if there is none.
func (n *Node) Child(number int) *Node {
	if number < 0 {
		return nil
	}
	c := n.First
	for ; number > 0 && c != nil; number-- {
		c = c.Next
	}
	return c
}

// Last returns the last child, which a list or mapping that is not empty has.
func (n *Node) Last() *Node {
	_, last := n.lastTwo()
	return last
}

// lastTwo returns the last child and the one before it, if there is one.
func (n *Node) lastTwo() (before, last *Node) {
	for c := n.First; c != nil; c = c.Next {
		before, last = last, c
	}
	return before, last
}

// Located reports whether the range of a node is known.
func (n *Node) Located() bool { return n.At.Line > 0 }

// IsNull reports whether a node is no value.
func (n *Node) IsNull() bool { return n.Kind == Scalar && n.Tag == Null }

// IsBool reports whether a node is true or false.
func (n *Node) IsBool() bool { return n.Kind == Scalar && n.Tag == Bool }

// IsTagged reports whether a node has a tag in the text.
func (n *Node) IsTagged() bool { return n.Style&Tagged != 0 }

// IsMerge reports whether a node is a key that merges other mappings.
func (n *Node) IsMerge() bool { return n.Tag == Merge && n.Value == "<<" }
