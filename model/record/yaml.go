package record

import (
	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// YAML is a YAML file that is no record, such as one of settings, read with the
// same bounds and the same messages as a record.
type YAML struct {
	Root *Node // a mapping
	src  *tree.Source
}

// Node is a node of a YAML file.
type Node = tree.Node

// The kinds of node that are no aliases.
const (
	ScalarNode  = tree.Scalar
	MappingNode = tree.Mapping
	ListNode    = tree.List
)

// ParseYAML parses a file that holds one mapping.
func ParseYAML(name string, text []byte) (YAML, Faults) {
	root, src, faults := parse(name, text, &tree.Arena{})
	return YAML{Root: root, src: src}, faults
}

// RangeOf returns the range of a node as it is written.
func (y YAML) RangeOf(n *Node) verdict.Range { return y.src.RangeOf(n) }

// Choices says what would be right instead of a word: the nearest of those
// allowed, or all of them.
func Choices(written string, words []string, lead string) string {
	return choices(written, words, lead)
}

// PracticeSets lists the practice sets that a record may be judged by.
func PracticeSets() []string { return practiceSets() }

// JobKinds lists the kinds of job that a record may name.
func JobKinds() []string {
	f := jobTable().named("kind", -1)
	return append([]string(nil), f.words...)
}
