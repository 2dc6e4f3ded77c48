package record

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// FuzzDecode: no text makes decoding panic; every range lies in the file; the
// same text gives the same record; and what decodes fits the schema.
func FuzzDecode(f *testing.F) {
	sample, err := os.ReadFile(filepath.Join("testdata", "bow.yaml"))
	require.NoError(f, err)
	f.Add(sample)
	f.Add(recordOf(2))
	f.Add([]byte(head + world))
	for _, faults := range [][]faulty{valueFaults(), nameFaults(), fileFaults()} {
		for _, c := range faults {
			f.Add([]byte(c.text))
		}
	}
	for _, text := range []string{
		"a: &a [*a]", "? ? ? a", "{<<: {<<: {}}}", "- - - x", "a: |\n", "a: >2\n  b\n", "%YAML 1.2\n---\ndriploop: 1\n...\n", "\ufeff", "&a !!map {}",
		head + "bundles: {é: {note: \"\\u00e9\\\n  x\"}}\n", head + "bundles:\n  B:\n    note: 'a\r\n\r\n      b'\r\n", "\r\r\r", "a:\n  - {b: [c, {d: }]}\n",
	} {
		f.Add([]byte(text))
	}
	schema := compiled(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<16 {
			t.Skip()
		}
		r, faults := Decode("f", text)
		again, same := Decode("f", text)
		if !reflect.DeepEqual(faults, same) || !reflect.DeepEqual(r, again) {
			t.Fatal("decoding twice gives two results")
		}
		src := tree.NewSource(trimMark(text))
		end := src.Position(len(src.Text))
		for i, fault := range faults {
			inFile(t, src, end, fault.At, fault.Says)
			if i > 0 && compare(faults[i-1].At.Start, fault.At.Start) > 0 {
				t.Fatal("faults are out of order")
			}
		}
		for path, at := range r.Places.All() {
			inFile(t, src, end, at, path)
		}
		for _, v := range values(r) {
			if v.state != Absent && v.at.Start.Line > 0 {
				inFile(t, src, end, v.at, v.path)
			}
		}
		if len(faults) == 0 {
			if err := schema.Validate(instance(t, text)); err != nil {
				t.Fatalf("decodes and does not fit the schema: %v", err)
			}
		}
	})
}

func trimMark(text []byte) []byte {
	if len(text) >= 3 && string(text[:3]) == "\ufeff" {
		return text[3:]
	}
	return text
}

func inFile(t *testing.T, src *tree.Source, end verdict.Position, at verdict.Range, what string) {
	t.Helper()
	if at.Start.Line < 1 || at.Start.Column < 1 || compare(at.Start, at.End) > 0 || compare(at.End, end) > 0 {
		t.Fatalf("%s: the range %v is not in the file, which ends at %v", what, at, end)
	}
	for _, p := range []verdict.Position{at.Start, at.End} {
		if back := src.Position(src.Offset(p)); back != p {
			t.Fatalf("%s: %v is no position of the file; nearest is %v", what, p, back)
		}
	}
}

// Every scalar's range holds a text that the YAML parser reads as that scalar.
func FuzzRangeOfScalar(f *testing.F) {
	for _, text := range []string{"one two", "'it''s'", `"a \" b"`, "one\n  two", "\"a\n  b\"", "é ñ", "x#y", "'a\n\n  b'"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, value string) {
		text := []byte("- " + value + "\n- z\n")
		if _, says := stray(text); says != "" {
			t.Skip()
		}
		doc, second, err := documents(bytes.NewReader(text))
		if err != nil || doc == nil || second != nil || doc.Content[0].Kind != yaml.SequenceNode || len(doc.Content[0].Content) != 2 {
			t.Skip()
		}
		n := doc.Content[0].Content[0]
		if n.Kind != yaml.ScalarNode || n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || n.Value == "" {
			t.Skip()
		}
		src := tree.NewSource(text)
		var nodes tree.Arena
		at := src.RangeOf(nodes.Read(n))
		part := src.Text[src.Offset(at.Start):src.Offset(at.End)]
		again, _, err := documents(bytes.NewReader(append([]byte("- "), part...)))
		if err != nil || again == nil || len(again.Content[0].Content) != 1 || again.Content[0].Content[0].Value != n.Value {
			t.Fatalf("%q: the range holds %q, which is not %q", text, part, n.Value)
		}
	})
}
