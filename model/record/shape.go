package record

import (
	"bytes"
	"errors"
	"maps"
	"slices"
	"strings"

	"driploop/model/record/internal/tree"
)

// Shape lays a record out in the one usual way: two blanks a level, one behind a
// colon, two before a comment, at most one empty line in a row, none at the end.
// No value, comment or order of entries changes; what cannot be laid out without
// that is an error, and a mapping in brackets over several lines keeps its own
// layout. Shaping twice is shaping once.
func Shape(name string, text []byte) ([]byte, error) {
	body := bytes.TrimPrefix(text, []byte("\ufeff"))
	body = bytes.ReplaceAll(bytes.ReplaceAll(body, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	var nodes tree.Arena
	root, src, faults := parse(name, body, &nodes)
	if len(faults) > 0 {
		return nil, faults
	}
	s := &shaper{src: src, lines: strings.Split(string(body), "\n")}
	s.mapping(root, 0)
	s.comment(s.tail(), 0)
	out := []byte(strings.TrimRight(s.out.String(), "\n") + "\n")
	if err := unchanged(name, body, out); err != nil {
		return nil, err
	}
	return out, nil
}

// unchanged makes sure that two texts say the same, comments included.
func unchanged(name string, before, after []byte) error {
	was, err := Leaves(name, before)
	if err != nil {
		return err
	}
	is, err := Leaves(name, after)
	if err != nil || !maps.Equal(was, is) || !slices.Equal(comments(before), comments(after)) {
		return errors.New(name + ": this layout cannot be put in order without a change of what it says; it is left as it is")
	}
	return nil
}

// comments lists what looks like a comment in each line, sorted.
func comments(text []byte) []string {
	var all []string
	for _, line := range strings.Split(string(text), "\n") {
		if _, c, ok := strings.Cut(" "+strings.TrimSpace(line), " #"); ok {
			all = append(all, strings.Join(strings.Fields(c), " "))
		}
	}
	slices.Sort(all)
	return all
}

// shaper prints a tree of nodes.
type shaper struct {
	src   *tree.Source
	lines []string // of the old text
	out   strings.Builder
	last  int // line of the old text that was printed last, from 1
}

const step = 2 // blanks a level

// mapping prints a block mapping at an indentation.
func (s *shaper) mapping(m *tree.Node, indent int) {
	for key := m.First; key != nil; key = key.Next.Next {
		s.above(key.Begin().Line, indent)
		s.out.WriteString(strings.Repeat(" ", indent) + s.text(key) + ":")
		s.last = key.Begin().Line
		s.value(key.Next, s.src.End(key), indent)
	}
}

// value prints what stands behind a key that ends at an offset, or a dash, and
// ends the line.
func (s *shaper) value(n *tree.Node, key, indent int) {
	if n.Anchor() != "" && n.Kind != tree.Alias {
		s.out.WriteString(" &" + n.Anchor())
	}
	block := n.Style&tree.Flow == 0 && n.First != nil
	if !block {
		if text := s.text(n); text != "" {
			s.out.WriteString(" " + s.shifted(text, n, indent))
		}
		s.endLine(max(s.src.End(n), key))
		return
	}
	s.endLine(key)
	if n.Kind == tree.Mapping {
		s.mapping(n, indent+step)
		return
	}
	for item := n.First; item != nil; item = item.Next {
		s.item(item, indent+step)
	}
}

// item prints an item of a block list.
func (s *shaper) item(n *tree.Node, indent int) {
	at := n
	if n.Kind == tree.Mapping && n.Style&tree.Flow == 0 && n.First != nil {
		at = n.First
	}
	s.above(at.Begin().Line, indent)
	s.out.WriteString(strings.Repeat(" ", indent) + "-")
	s.last = at.Begin().Line
	if at == n {
		s.value(n, s.src.Offset(s.src.RangeOf(n).Start), indent)
		return
	}
	if n.Anchor() != "" {
		s.out.WriteString(" &" + n.Anchor() + "\n")
		s.last = max(n.Begin().Line, s.last)
		s.mapping(n, indent+step)
		return
	}
	// The first key stands behind the dash.
	var rest shaper
	rest.src, rest.lines, rest.last = s.src, s.lines, at.Begin().Line-1
	rest.mapping(n, indent+step)
	s.out.WriteString(" " + strings.TrimLeft(rest.out.String(), " "))
	s.last = rest.last
}

// text is a node as written, on one line if it was.
func (s *shaper) text(n *tree.Node) string {
	r := s.src.RangeOf(n)
	text := string(s.src.Text[s.src.Offset(r.Start):s.src.Offset(r.End)])
	if n.Kind != tree.Scalar && n.Kind != tree.Alias && !strings.ContainsAny(text, "\n#\"'&*!") {
		return oneSpace(text)
	}
	return text
}

// oneSpace puts a bracketed text without quotes in order.
func oneSpace(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	for _, pair := range [][2]string{{"{ ", "{"}, {" }", "}"}, {"[ ", "["}, {" ]", "]"}, {" ,", ","}} {
		text = strings.ReplaceAll(text, pair[0], pair[1])
	}
	return text
}

// shifted moves the further lines of a text with the level that it stands on.
func (s *shaper) shifted(text string, n *tree.Node, indent int) string {
	first, rest, several := strings.Cut(text, "\n")
	if !several {
		return text
	}
	old := len(s.lines[n.Begin().Line-1]) - len(strings.TrimLeft(s.lines[n.Begin().Line-1], " "))
	lines := strings.Split(rest, "\n")
	for i, line := range lines {
		bare := strings.TrimLeft(line, " ")
		width := len(line) - len(bare) + indent - old
		if lines[i] = strings.TrimRight(strings.Repeat(" ", max(width, indent+1))+bare, " "); bare == "" {
			lines[i] = ""
		}
	}
	return first + "\n" + strings.Join(lines, "\n")
}

// endLine prints the comment behind an offset of the old text, and ends the new
// line.
func (s *shaper) endLine(at int) {
	line := s.src.Position(max(at-1, 0)).Line
	if rest := string(s.src.Text[at:max(at, s.src.LineEnd(line))]); strings.Contains(rest, "#") {
		s.out.WriteString("  " + strings.TrimRight(rest[strings.IndexByte(rest, '#'):], " \t"))
	}
	s.out.WriteString("\n")
	s.last = line
}

// above prints the comments and empty lines that stand before a line.
func (s *shaper) above(line, indent int) {
	if s.last < line {
		s.comment(s.lines[s.last:line-1], indent)
	}
}

// tail are the lines behind the last node.
func (s *shaper) tail() []string { return s.lines[min(s.last, len(s.lines)):] }

// comment prints comments and empty lines, the latter one in a row at most.
func (s *shaper) comment(lines []string, indent int) {
	for _, line := range lines {
		bare := strings.TrimSpace(line)
		switch {
		case bare == "":
			if out := s.out.String(); out != "" && !strings.HasSuffix(out, "\n\n") {
				s.out.WriteString("\n")
			}
		case strings.HasPrefix(bare, "#"):
			s.out.WriteString(strings.Repeat(" ", indent) + bare + "\n")
		}
	}
}
