package facts

import (
	"cmp"
	"slices"

	"driploop/model/record"
)

// negativeGroups parts the negative terminals of batteries, charging sources
// and loads by which of them the negative conductors join, largest group first.
// Bonding conductors do not count as a return.
func negativeGroups(r *record.Record) [][]string {
	parent := map[string]string{}
	var root func(string) string
	root = func(node string) string {
		if p, ok := parent[node]; ok && p != node {
			parent[node] = root(p)
			return parent[node]
		}
		if _, ok := parent[node]; !ok {
			parent[node] = node
		}
		return parent[node]
	}
	join := func(a, b string) { parent[root(a)] = root(b) }

	for _, c := range r.Conductors {
		if c.Role.V == "negative" {
			join(nodeOf(r, c.From), nodeOf(r, c.To))
		}
	}
	for _, c := range r.Components {
		// What is not a source or a load passes the return on from one of its
		// terminals to the other.
		kind := record.KindOf(c.Kind.V)
		if kind.Source || kind.Load {
			continue
		}
		var seen []string
		for node := range parent {
			if owner(node) == c.ID {
				seen = append(seen, node)
			}
		}
		for i := 1; i < len(seen); i++ {
			join(seen[0], seen[i])
		}
	}

	members := map[string][]string{}
	for _, c := range r.Components {
		kind := record.KindOf(c.Kind.V)
		if !kind.Source && !kind.Load || !wired(r, c.ID) {
			continue
		}
		node := c.ID + ".neg"
		members[root(node)] = append(members[root(node)], node)
	}
	groups := make([][]string, 0, len(members))
	for _, group := range members {
		groups = append(groups, group)
	}
	slices.SortFunc(groups, func(a, b []string) int {
		return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a[0], b[0]))
	})
	return groups
}

// wired tells whether any conductor lands on the component.
func wired(r *record.Record, id string) bool {
	return slices.ContainsFunc(r.Conductors, func(c *record.Conductor) bool {
		return c.From.Component == id || c.To.Component == id
	})
}

// nodeOf returns the name of the electrical node that a terminal belongs to:
// all studs of a busbar or ground point are one.
func nodeOf(r *record.Record, t record.Terminal) string {
	if c := r.Component(t.Component); c != nil && record.KindOf(c.Kind.V).OneNode {
		return c.ID + ".*"
	}
	return t.String()
}

// owner returns the component part of a node's name.
func owner(node string) string {
	for i := range len(node) {
		if node[i] == '.' {
			return node[:i]
		}
	}
	return node
}
