package record

import (
	"bytes"
	"slices"
	"strings"

	"driploop/model/record/internal/plainyaml"
	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// seam is a place in a text where an entry of the record or of a section begins, and
// before which there is nothing wrong. To tell what is wrong behind it, a few lines
// do for all before it: they leave the parser in the same mappings, begun in the
// same lines, and with the same anchors.
type seam struct {
	at      int // byte offset of the line
	line    int // of it; lines count from 0
	root    int // line of the first entry of the record
	section int // line of the section that the entry is in; -1 if it is one itself
	first   int // line of the first entry of that section
	indent  int // blanks before an entry of it
	anchors []string
}

// instead returns what stands for the text before the seam.
func (s *seam) instead() []byte {
	if s.at == 0 {
		return nil
	}
	var b bytes.Buffer
	for line := range s.line {
		switch {
		case line == s.section:
			b.WriteString("_:")
		case line == s.first && s.section >= 0:
			b.WriteString(strings.Repeat(" ", s.indent))
			s.anchored(&b)
		case line == s.root && s.section >= 0:
			b.WriteString("_: _")
		case line == s.root:
			s.anchored(&b)
		}
		b.WriteByte('\n')
	}
	return b.Bytes()
}

// anchored writes an entry that has all anchors.
func (s *seam) anchored(b *bytes.Buffer) {
	b.WriteString("_: [")
	for _, name := range s.anchors {
		b.WriteString("&" + name + " _, ")
	}
	b.WriteByte(']')
}

// seamsOf finds the seams of a text in their order.
func seamsOf(text []byte) []seam {
	likely := entriesOf(text)
	// Beyond what is wrong nothing can be read: go back until something can.
	for step := 1; len(likely) > 0; step *= 2 {
		last := likely[len(likely)-1]
		if root := plainyaml.Parse(string(text[:last]), &tree.Arena{}); root != nil {
			f := seamFinder{src: tree.NewSource(text), root: line(root)}
			f.record(root, last)
			return f.seams
		}
		likely = likely[:max(len(likely)-step, 0)]
	}
	return nil
}

// seamFinder finds the seams in what was read of a text.
type seamFinder struct {
	src     *tree.Source
	root    int
	seams   []seam
	anchors []string
}

// line is the line of a node, from 0.
func line(n *tree.Node) int { return n.Begin().Line - 1 }

// record finds the seams of a record that was read up to an offset, the start of a
// line.
func (f *seamFinder) record(root *tree.Node, end int) {
	last := f.src.Position(end)
	indent := f.src.Position(f.src.SkipBlank(end)).Column - 1
	for key := root.First; key != nil; key = key.Next.Next {
		if key != root.First {
			f.add(seam{line: line(key), section: -1})
		}
		section := key.Next
		if section.Kind != tree.Mapping || section.Style&tree.Flow != 0 {
			f.named(section)
			continue
		}
		in := seam{section: line(key), first: line(section.First), indent: section.First.Begin().Column - 1}
		for entry := section.First; entry != nil; entry = entry.Next.Next {
			if entry != section.First {
				in.line = line(entry)
				f.add(in)
			}
			f.named(entry.Next)
		}
		if section.Anchor() != "" {
			f.anchors = append(f.anchors, section.Anchor())
		}
		if key.Next.Next == nil && indent == in.indent {
			in.line = last.Line - 1
			f.add(in)
		}
	}
	if indent == 0 {
		f.add(seam{line: last.Line - 1, section: -1})
	}
}

// add adds a seam at the start of its line.
func (f *seamFinder) add(s seam) {
	s.at = f.src.Offset(verdict.Position{Line: s.line + 1, Column: 1})
	s.root, s.anchors = f.root, slices.Clip(f.anchors)
	f.seams = append(f.seams, s)
}

// named gathers the anchors of a node and below it.
func (f *seamFinder) named(n *tree.Node) {
	if name := n.Anchor(); name != "" {
		f.anchors = append(f.anchors, name)
	}
	for c := n.First; c != nil; c = c.Next {
		f.named(c)
	}
}

// entriesOf finds where an entry of the record or of a section seems to begin: at the
// lines that are indented like the first one of their section.
func entriesOf(text []byte) []int {
	var all []int
	at, usual := 0, 0
	for each := range bytes.Lines(text) {
		indent := len(each) - len(bytes.TrimLeft(each, " "))
		if indent < len(each) && beginsEntry(each[indent]) {
			switch {
			case indent == 0:
				usual = 0
			case usual == 0:
				usual = indent
			}
			if indent == 0 || indent == usual {
				all = append(all, at)
			}
		}
		at += len(each)
	}
	return all
}

func beginsEntry(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9'
}
