package plainyaml

import "driploop/model/record/internal/tree"

// flow reads a mapping or list in brackets, which may go over several lines.
func (s *scanner) flow() *tree.Node {
	if s.depth++; s.depth > maxDepth {
		return nil
	}
	kind, tag, closing := tree.List, tree.Seq, byte(']')
	if s.peek() == '{' {
		kind, tag, closing = tree.Mapping, tree.Map, '}'
	}
	n := s.node(kind, tag, s.line, s.column()+1)
	n.Style = tree.Flow
	all := children{of: n}
	for more := true; more; {
		s.at++ // the opening bracket or a comma
		if !s.next() {
			return nil
		}
		if s.peek() == closing {
			break
		}
		if kind == tree.Mapping && !s.flowKey(&all) || !s.flowValue(&all) {
			return nil
		}
		if more = s.peek() == ','; !more && s.peek() != closing {
			return nil
		}
	}
	s.at++
	s.end(n)
	s.depth--
	return n
}

// flowKey reads a key with its colon.
func (s *scanner) flowKey(all *children) bool {
	from := s.at
	key := s.scalar(true)
	if key == nil || !s.colon(from) {
		return false
	}
	all.key(key)
	return s.next()
}

// flowValue reads a value or an item and goes to what follows it.
func (s *scanner) flowValue(all *children) bool {
	if s.peek() == '&' {
		line := s.line
		if !s.anchor() || !s.next() || s.line > line {
			return false
		}
	}
	var n *tree.Node
	switch s.peek() {
	case '*':
		n = s.alias()
	case '{', '[':
		n = s.flow()
	default:
		if n = s.scalar(true); n != nil {
			s.named(n)
		}
	}
	if n == nil {
		return false
	}
	all.add(n)
	return s.next()
}
