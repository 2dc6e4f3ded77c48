package facts

import (
	"cmp"
	"slices"
	"strings"
)

// negativeGroups parts the negative terminals of batteries, charging sources
// and loads by which of them the negative conductors join, largest group first.
// Bonding conductors do not count as a return.
func (b *Builder) negativeGroups() [][]string {
	j := b.apart()
	negative := make([]bool, len(j))
	for i := range b.wires {
		if w := &b.wires[i]; w.Role.V == "negative" {
			j.join(w.fromNode, w.toNode)
			negative[w.fromNode], negative[w.toNode] = true, true
		}
	}
	// What is not a source or a load passes the return on from one of its terminals
	// to the other.
	first := make([]int, len(b.parts)) // a node of each component, counted from 1
	for node, on := range b.owners {
		if on == nil || !negative[node] || on.kind.Source || on.kind.Load {
			continue
		}
		if first[on.number] == 0 {
			first[on.number] = node + 1
		}
		j.join(first[on.number]-1, node)
	}

	var groups [][]string
	of := make([]int, len(j)) // the group of a node on top, counted from 1
	for i := range b.parts {
		on := &b.parts[i]
		if !on.kind.Source && !on.kind.Load || len(on.wires) == 0 {
			continue
		}
		number := len(groups)
		if node := b.at(on.ID, "neg"); node >= 0 {
			top := j.top(node)
			if of[top] == 0 {
				of[top] = number + 1
			}
			number = of[top] - 1
		}
		if number == len(groups) {
			groups = append(groups, nil)
		}
		groups[number] = append(groups[number], on.ID+".neg")
	}
	slices.SortFunc(groups, func(a, b []string) int {
		return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a[0], b[0]))
	})
	return groups
}

// owner returns the component part of a terminal's name.
func owner(terminal string) string {
	component, _, _ := strings.Cut(terminal, ".")
	return component
}
