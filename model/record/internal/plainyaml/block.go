package plainyaml

import "driploop/model/record/internal/tree"

// mapping reads a block mapping from behind the colon of its first key.
func (s *scanner) mapping(key *tree.Node) *tree.Node {
	if s.depth++; s.depth > maxDepth {
		return nil
	}
	all := children{of: s.node(tree.Mapping, tree.Map, int(key.At.Line), int(key.At.Column))}
	column := int(key.At.Column - 1)
	for {
		all.key(key)
		value := s.entry(column, false)
		if value == nil {
			return nil
		}
		all.add(value)
		switch indent := s.indent(); {
		case indent > column:
			return nil
		case indent < column:
			s.depth--
			return all.end()
		}
		from := s.at
		if key = s.scalar(false); key == nil || !s.colon(from) {
			return nil
		}
	}
}

// colon goes behind the colon of a key that ends here and began at an offset.
func (s *scanner) colon(from int) bool {
	if s.peek() != ':' || !s.blankAt(s.at+1) || s.at-from > maxKey {
		return false
	}
	s.at++
	return true
}

// sequence reads a block list whose dashes stand at a column. One that is not
// indented against the mapping that it stands in may end with a key of that.
func (s *scanner) sequence(column int, indented bool) *tree.Node {
	if s.depth++; s.depth > maxDepth {
		return nil
	}
	all := children{of: s.node(tree.List, tree.Seq, s.line, s.column()+1)}
	for {
		s.at++
		item := s.entry(column, true)
		if item == nil {
			return nil
		}
		all.add(item)
		indent := s.indent()
		switch {
		case indent == column && s.dash():
			continue
		case indent > column, indent == column && indented:
			return nil
		}
		s.depth--
		return all.end()
	}
}

// dash reports whether an item of a block list begins here.
func (s *scanner) dash() bool { return s.peek() == '-' && s.blankAt(s.at+1) }

// entry reads what belongs to a colon or a dash of a collection at a column, and
// goes to the next line that does not.
func (s *scanner) entry(column int, item bool) *tree.Node {
	line, behind := s.line, s.column()
	if !s.next() {
		return nil
	}
	anchored := false
	if s.line == line && s.peek() == '&' {
		if anchored = true; !s.anchor() || !s.next() {
			return nil
		}
	}
	indent := s.indent()
	switch {
	case s.line == line && !s.done():
		// A key behind an anchor would take the anchor for itself.
		return s.content(item && !anchored)
	case indent > column:
		return s.content(true)
	case indent == column && !item && s.dash():
		return s.sequence(column, false)
	case anchored:
		return nil
	}
	return s.empty(line, behind)
}

// content reads a node that begins here. Where a block collection may begin is
// told.
func (s *scanner) content(block bool) *tree.Node {
	var n *tree.Node
	switch c := s.peek(); {
	case block && s.dash():
		return s.sequence(s.column(), true)
	case c == '*':
		n = s.alias()
	case c == '{', c == '[':
		n = s.flow()
	default:
		from := s.at
		if n = s.scalar(false); n == nil {
			return nil
		}
		if block && s.colon(from) {
			return s.mapping(n)
		}
		s.named(n)
	}
	if n == nil || !s.endLine() {
		return nil
	}
	return n
}
