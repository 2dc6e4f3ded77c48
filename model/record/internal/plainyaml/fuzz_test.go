package plainyaml

import (
	"bytes"
	"testing"

	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
)

// FuzzParse: whatever is taken, yaml.v3 takes and reads as the same nodes.
func FuzzParse(f *testing.F) {
	for _, text := range records(f) {
		for _, part := range bytes.Split(text, []byte("\n---\n")) {
			f.Add(part)
		}
	}
	for _, c := range tricks() {
		f.Add([]byte(c.text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<16 {
			t.Skip()
		}
		if says := differs(text); says != "" {
			t.Fatalf("%q: %s", text, says)
		}
	})
}

// FuzzTag: a text without quotation marks has the tag that yaml.v3 gives it.
func FuzzTag(f *testing.F) {
	for _, value := range words() {
		f.Add(value)
	}
	f.Fuzz(func(t *testing.T, value string) {
		if got, want := tagOf(value), tagByYAML(value); got != want {
			t.Fatalf("%q: %d, and yaml.v3: %d", value, got, want)
		}
	})
}

// tagByYAML is the tag of a text without quotation marks by yaml.v3.
func tagByYAML(value string) tree.Tag {
	if value == "<<" {
		return tree.Merge // told by its parser, before it resolves the others
	}
	return tree.TagOf((&yaml.Node{Kind: yaml.ScalarNode, Value: value}).ShortTag())
}
