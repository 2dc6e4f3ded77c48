package plainyaml

import "driploop/model/record/internal/tree"

// anchor is a name that the next node gets, and where it stands.
type anchor struct {
	name         string
	line, column int
}

// anchor reads a name for the node that follows it.
func (s *scanner) anchor() bool {
	line, column := s.line, s.column()
	name := s.name()
	s.pending = anchor{name, line, column}
	return name != "" && s.blankAt(s.at)
}

// name reads what stands behind & or *.
func (s *scanner) name() string {
	s.at++
	from := s.at
	for !s.done() && isName(s.text[s.at]) {
		s.at++
	}
	return s.text[from:s.at]
}

func isName(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c == '-' || c == '_'
}

// alias reads the name of a node that came before, or in which it stands.
func (s *scanner) alias() *tree.Node {
	if s.pending.name != "" {
		return nil
	}
	n := s.node(tree.Alias, tree.None, s.line, s.column()+1)
	n.Value = s.name()
	target := s.anchors[n.Value]
	if target == nil {
		return nil
	}
	s.nodes.SetTarget(n, target)
	s.end(n)
	switch s.peek() {
	case ',', ']', '}':
		return n
	}
	if !s.blankAt(s.at) {
		return nil
	}
	return n
}

// node makes a node that stands at a line and column, from 1, behind the anchor that
// came before it.
func (s *scanner) node(kind tree.Kind, tag tree.Tag, line, column int) *tree.Node {
	n := s.nodes.Node(kind, tag)
	n.At.Line, n.At.Column = int32(line), int32(column)
	s.named(n)
	return n
}

// named gives a node the anchor that came before it, if one did.
func (s *scanner) named(n *tree.Node) {
	if s.pending.name != "" {
		s.nodes.SetAnchor(n, s.pending.name, s.pending.line, s.pending.column+1)
		if s.anchors == nil {
			s.anchors = map[string]*tree.Node{}
		}
		s.anchors[s.pending.name] = n
		s.pending = anchor{}
	}
}

// end has a node end here.
func (s *scanner) end(n *tree.Node) {
	n.At.EndLine, n.At.EndColumn = int32(s.line), int32(s.column()+1)
}

// empty makes the node of a value that is not written.
func (s *scanner) empty(line, column int) *tree.Node {
	n := s.node(tree.Scalar, tree.Null, line, column+1)
	n.At.EndLine, n.At.EndColumn = n.At.Line, n.At.Column
	return n
}

// children gathers the children of a collection.
type children struct {
	of   *tree.Node
	last *tree.Node
}

func (c *children) add(n *tree.Node) {
	if c.last == nil {
		c.of.First = n
	} else {
		c.last.Next = n
	}
	c.last = n
	c.of.Size++
}

// key adds the key of a mapping.
func (c *children) key(n *tree.Node) {
	c.add(n)
	c.of.Merges = c.of.Merges || n.IsMerge()
}

// end returns a block collection, which ends with its last child.
func (c *children) end() *tree.Node {
	c.of.At.EndLine, c.of.At.EndColumn = c.last.At.EndLine, c.last.At.EndColumn
	return c.of
}
