package tree

import "go.yaml.in/yaml/v3"

// Arena makes nodes many at a time, and makes them again when all that it made are
// done with.
type Arena struct {
	nodes pool[Node]
	mores pool[more]
}

// Forget ends the use of all nodes that were made.
func (a *Arena) Forget() {
	a.nodes.forget()
	a.mores.forget()
}

// Node makes a node.
func (a *Arena) Node(kind Kind, tag Tag) *Node {
	n := a.nodes.take()
	n.Kind, n.Tag = kind, tag
	return n
}

func (a *Arena) more(n *Node) *more {
	if n.more == nil {
		n.more = a.mores.take()
	}
	return n.more
}

// SetAnchor gives a node its name, which stands at a line and column.
func (a *Arena) SetAnchor(n *Node, name string, line, column int) {
	m := a.more(n)
	m.anchor, m.line, m.column = name, int32(line), int32(column)
}

// SetTarget has an alias stand for a node.
func (a *Arena) SetTarget(alias, target *Node) { a.more(alias).target = target }

// pool hands out zero values of a type from chunks.
type pool[T any] struct {
	chunks [][]T
	begun  int // chunks that values were handed out from
	free   []T // of the last of these
}

const (
	atOnce = 256 // values in a chunk
	// kept is how many chunks are used again: those of a large record. What a hostile
	// file took beyond it is given back.
	kept = 256
)

func (p *pool[T]) take() *T {
	if len(p.free) == 0 {
		p.begin()
	}
	v := &p.free[0]
	p.free = p.free[1:]
	return v
}

// begin hands out from the next chunk.
func (p *pool[T]) begin() {
	if p.begun == len(p.chunks) {
		p.chunks = append(p.chunks, make([]T, atOnce))
	}
	p.free = p.chunks[p.begun]
	p.begun++
}

func (p *pool[T]) forget() {
	for i, chunk := range p.chunks[:p.begun] {
		if i == p.begun-1 {
			chunk = chunk[:len(chunk)-len(p.free)]
		}
		clear(chunk)
	}
	if len(p.chunks) > kept {
		clear(p.chunks[kept:])
		p.chunks = p.chunks[:kept]
	}
	p.begun, p.free = 0, nil
}

// Read makes the nodes of a tree of yaml.v3; where they end is found when it is
// asked for. Aliases within the tree stand for nodes of it.
func (a *Arena) Read(root *yaml.Node) *Node {
	r := reading{arena: a, met: map[*yaml.Node]*Node{}}
	return r.node(root)
}

// reading makes nodes of those of yaml.v3.
type reading struct {
	arena *Arena
	met   map[*yaml.Node]*Node // that have an anchor
}

func (r *reading) node(from *yaml.Node) *Node {
	n := r.arena.Node(kindOf(from.Kind), TagOf(from.Tag))
	n.Value, n.Style = from.Value, Style(from.Style)
	m := r.arena.more(n)
	m.anchor, m.line, m.column = from.Anchor, int32(from.Line), int32(from.Column)
	if n.Tag == Other {
		m.tag = from.Tag
	}
	if from.Anchor != "" {
		r.met[from] = n // before its children: one of them may stand for it
	}
	if n.Kind == Alias {
		m.target = r.met[from.Alias]
	}
	n.Size = int32(len(from.Content))
	link := &n.First
	for i, c := range from.Content {
		child := r.node(c)
		*link, link = child, &child.Next
		n.Merges = n.Merges || n.Kind == Mapping && i%2 == 0 && child.IsMerge()
	}
	return n
}

func kindOf(kind yaml.Kind) Kind {
	switch kind {
	case yaml.MappingNode:
		return Mapping
	case yaml.SequenceNode:
		return List
	case yaml.AliasNode:
		return Alias
	}
	return Scalar
}
