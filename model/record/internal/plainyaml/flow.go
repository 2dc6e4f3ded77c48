package plainyaml

import "go.yaml.in/yaml/v3"

// flow reads a mapping or list in brackets, which may go over several lines.
func (s *scanner) flow() *yaml.Node {
	if s.depth++; s.depth > maxDepth {
		return nil
	}
	var n *yaml.Node
	closing := byte(']')
	if s.peek() == '{' {
		closing = '}'
		n = s.node(yaml.MappingNode, "!!map", s.line, s.column())
	} else {
		n = s.node(yaml.SequenceNode, "!!seq", s.line, s.column())
	}
	n.Style = yaml.FlowStyle
	base := s.nodes.open()
	for more := true; more; {
		s.at++ // the opening bracket or a comma
		if !s.next() {
			return nil
		}
		if s.peek() == closing {
			break
		}
		if closing == '}' && !s.flowKey() || !s.flowValue() {
			return nil
		}
		if more = s.peek() == ','; !more && s.peek() != closing {
			return nil
		}
	}
	s.at++
	n.Content = s.nodes.close(base)
	s.depth--
	return n
}

// flowKey reads a key with its colon.
func (s *scanner) flowKey() bool {
	key, ok := s.scalar(true)
	if !ok || !s.colon(key) {
		return false
	}
	s.nodes.add(s.leaf(key))
	return s.next()
}

// flowValue reads a value or an item and goes to what follows it.
func (s *scanner) flowValue() bool {
	if s.peek() == '&' {
		line := s.line
		if !s.anchor() || !s.next() || s.line > line {
			return false
		}
	}
	var n *yaml.Node
	switch s.peek() {
	case '*':
		n = s.alias()
	case '{', '[':
		n = s.flow()
	default:
		text, ok := s.scalar(true)
		if !ok {
			return false
		}
		n = s.leaf(text)
	}
	if n == nil {
		return false
	}
	s.nodes.add(n)
	return s.next()
}
