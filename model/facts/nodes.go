package facts

// nodes are the electrical nodes that conductors land on, numbered: each terminal
// is one, all studs of a busbar or ground point are one together.
type nodes struct {
	owners []*part // by number; nil where the record has none such
	byID   map[string]int
}

// node returns the number of the node that a terminal belongs to.
func (n *nodes) node(on *part, id string) int {
	if on == nil || !on.kind.OneNode {
		return n.numbered(on, id)
	}
	if on.node < 0 {
		on.node = n.add(on)
	}
	return on.node
}

func (n *nodes) numbered(on *part, id string) int {
	number, known := n.byID[id]
	if !known {
		number = n.add(on)
		n.byID[id] = number
	}
	return number
}

func (n *nodes) add(on *part) int {
	n.owners = append(n.owners, on)
	return len(n.owners) - 1
}

// at returns the number of the node of a terminal, or -1 where no conductor lands
// on it.
func (n *nodes) at(component, terminal string) int {
	if number, known := n.byID[component+"."+terminal]; known {
		return number
	}
	return -1
}

// joined is which nodes are one: for each, one that it is joined to, itself at
// the top.
type joined []int

// apart returns the nodes with none joined.
func (n *nodes) apart() joined {
	j := make(joined, len(n.owners))
	for i := range j {
		j[i] = i
	}
	return j
}

func (j joined) join(a, b int) { j[j.top(a)] = j.top(b) }

// top returns the node that stands for all that are joined to one.
func (j joined) top(node int) int {
	for j[node] != node {
		j[node] = j[j[node]]
		node = j[node]
	}
	return node
}
