package record

import (
	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// YAML is a YAML file that is no record, such as one of settings, read with the
// same bounds and the same messages as a record.
type YAML struct {
	Root *yaml.Node // a mapping
	src  *source
}

// ParseYAML parses a file that holds one mapping.
func ParseYAML(name string, text []byte) (YAML, Faults) {
	root, src, faults := parse(name, text)
	return YAML{Root: root, src: src}, faults
}

// RangeOf returns the range of a node as it is written.
func (y YAML) RangeOf(n *yaml.Node) verdict.Range { return y.src.rangeOf(n) }

// Choices says what would be right instead of a word: the nearest of those
// allowed, or all of them.
func Choices(written string, words []string, lead string) string {
	return choices(written, words, lead)
}

// PracticeSets lists the practice sets that a record may be judged by.
func PracticeSets() []string { return practiceSets() }

// JobKinds lists the kinds of job that a record may name.
func JobKinds() []string {
	f, _ := jobTable().find("kind", -1)
	return append([]string(nil), f.words...)
}
