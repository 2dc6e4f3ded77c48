package plainyaml

import "go.yaml.in/yaml/v3"

// nodes makes nodes and lists of them many at a time.
type nodes struct {
	made  []yaml.Node
	used  int // of them
	refs  []*yaml.Node
	stack []*yaml.Node // children of the collections that are open
}

// As many as fit into the largest small allocation of the runtime, 32 KB.
const (
	nodesAtOnce = 200
	refsAtOnce  = 2048
)

func (n *nodes) take() *yaml.Node {
	if n.used == len(n.made) {
		n.made, n.used = make([]yaml.Node, nodesAtOnce), 0
	}
	n.used++
	return &n.made[n.used-1]
}

// open begins a collection, add gives it a child, close returns its children.
func (n *nodes) open() int { return len(n.stack) }

func (n *nodes) add(child *yaml.Node) { n.stack = append(n.stack, child) }

func (n *nodes) close(base int) []*yaml.Node {
	children := n.stack[base:]
	size := len(children)
	if size == 0 {
		return nil
	}
	if size > len(n.refs) {
		n.refs = make([]*yaml.Node, max(size, refsAtOnce))
	}
	kept := n.refs[:size:size]
	n.refs = n.refs[size:]
	copy(kept, children)
	n.stack = n.stack[:base]
	return kept
}

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
func (s *scanner) alias() *yaml.Node {
	if s.pending.name != "" {
		return nil
	}
	n := s.node(yaml.AliasNode, "", s.line, s.column())
	n.Value = s.name()
	if n.Alias = s.anchors[n.Value]; n.Alias == nil {
		return nil
	}
	switch s.peek() {
	case ',', ']', '}':
		return n
	}
	if !s.blankAt(s.at) {
		return nil
	}
	return n
}

// node makes a node at a place, or at that of the anchor before it.
func (s *scanner) node(kind yaml.Kind, tag string, line, column int) *yaml.Node {
	n := s.nodes.take()
	n.Kind, n.Tag, n.Line, n.Column = kind, tag, line, column+1
	if s.pending.name != "" {
		n.Anchor, n.Line, n.Column = s.pending.name, s.pending.line, s.pending.column+1
		if s.anchors == nil {
			s.anchors = map[string]*yaml.Node{}
		}
		s.anchors[n.Anchor] = n
		s.pending = anchor{}
	}
	return n
}

// leaf makes the node of a text.
func (s *scanner) leaf(t scalar) *yaml.Node {
	tag := text
	if t.style == 0 {
		tag = tagOf(t.value)
	}
	n := s.node(yaml.ScalarNode, tag, t.line, t.column)
	n.Value, n.Style = t.value, t.style
	return n
}

// empty makes the node of a value that is not written.
func (s *scanner) empty(line, column int) *yaml.Node {
	return s.node(yaml.ScalarNode, "!!null", line, column)
}
