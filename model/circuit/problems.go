package circuit

import "driploop/model/verdict"

// problem places a fault of the network at a branch.
func (n *network) problem(kind ProblemKind, b *branch, says string) Problem {
	p := Problem{Kind: kind, Path: b.path, Says: says, Nodes: []string{n.nodes[b.a].name, n.nodes[b.b].name}}
	switch {
	case b.cond != nil:
		p.At = b.cond.At
	case b.comp != nil:
		p.At = b.comp.At
	}
	return p
}

// nodePath returns the record path of what a node belongs to.
func (n *network) nodePath(node int) string {
	if c := n.part(n.nodes[node].comp); c != nil {
		return c.Path
	}
	return "components." + n.nodes[node].comp
}

// nodeAt returns where that stands in the file.
func (n *network) nodeAt(node int) verdict.Range {
	if c := n.part(n.nodes[node].comp); c != nil {
		return c.At
	}
	return verdict.Range{}
}
