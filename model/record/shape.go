package record

import (
	"bytes"
	"errors"
	"maps"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Shape lays a record out in the one usual way: two blanks a level, one behind a
// colon, two before a comment, at most one empty line in a row, none at the end.
// No value, comment or order of entries changes; what cannot be laid out without
// that is an error, and a mapping in brackets over several lines keeps its own
// layout. Shaping twice is shaping once.
func Shape(name string, text []byte) ([]byte, error) {
	body := bytes.TrimPrefix(text, []byte("\ufeff"))
	body = bytes.ReplaceAll(bytes.ReplaceAll(body, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	root, src, faults := parse(name, body)
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
	src   *source
	lines []string // of the old text
	out   strings.Builder
	last  int // line of the old text that was printed last, from 1
}

const step = 2 // blanks a level

// mapping prints a block mapping at an indentation.
func (s *shaper) mapping(m *yaml.Node, indent int) {
	for i := 0; i+1 < len(m.Content); i += 2 {
		key, value := m.Content[i], m.Content[i+1]
		s.above(key.Line, indent)
		s.out.WriteString(strings.Repeat(" ", indent) + s.text(key) + ":")
		s.last = key.Line
		s.value(value, s.src.end(key), indent)
	}
}

// value prints what stands behind a key that ends at an offset, or a dash, and
// ends the line.
func (s *shaper) value(n *yaml.Node, key, indent int) {
	if n.Anchor != "" && n.Kind != yaml.AliasNode {
		s.out.WriteString(" &" + n.Anchor)
	}
	block := n.Style&yaml.FlowStyle == 0 && len(n.Content) > 0
	if !block {
		if text := s.text(n); text != "" {
			s.out.WriteString(" " + s.shifted(text, n, indent))
		}
		s.endLine(max(s.src.end(n), key))
		return
	}
	s.endLine(key)
	if n.Kind == yaml.MappingNode {
		s.mapping(n, indent+step)
		return
	}
	for _, item := range n.Content {
		s.item(item, indent+step)
	}
}

// item prints an item of a block list.
func (s *shaper) item(n *yaml.Node, indent int) {
	at := n
	if n.Kind == yaml.MappingNode && n.Style&yaml.FlowStyle == 0 && len(n.Content) > 0 {
		at = n.Content[0]
	}
	s.above(at.Line, indent)
	s.out.WriteString(strings.Repeat(" ", indent) + "-")
	s.last = at.Line
	if at == n {
		s.value(n, s.src.offset(s.src.rangeOf(n).Start), indent)
		return
	}
	if n.Anchor != "" {
		s.out.WriteString(" &" + n.Anchor + "\n")
		s.last = max(n.Line, s.last)
		s.mapping(n, indent+step)
		return
	}
	// The first key stands behind the dash.
	var rest shaper
	rest.src, rest.lines, rest.last = s.src, s.lines, at.Line-1
	rest.mapping(n, indent+step)
	s.out.WriteString(" " + strings.TrimLeft(rest.out.String(), " "))
	s.last = rest.last
}

// text is a node as written, on one line if it was.
func (s *shaper) text(n *yaml.Node) string {
	r := s.src.rangeOf(n)
	text := string(s.src.text[s.src.offset(r.Start):s.src.offset(r.End)])
	if n.Kind != yaml.ScalarNode && n.Kind != yaml.AliasNode && !strings.ContainsAny(text, "\n#\"'&*!") {
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
func (s *shaper) shifted(text string, n *yaml.Node, indent int) string {
	first, rest, several := strings.Cut(text, "\n")
	if !several {
		return text
	}
	old := len(s.lines[n.Line-1]) - len(strings.TrimLeft(s.lines[n.Line-1], " "))
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
	line := s.src.position(max(at-1, 0)).Line
	if rest := string(s.src.text[at:max(at, s.src.lineEnd(line))]); strings.Contains(rest, "#") {
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
