package facts

import (
	"driploop/model/record"
)

// joined is which terminals of a record are one electrical node, by conductors
// and busbars alone: what a switch or device lies between is apart.
type joined struct{ parent map[string]string }

func joinedBy(r *record.Record) *joined {
	j := &joined{parent: map[string]string{}}
	for _, c := range r.Conductors {
		j.parent[j.root(nodeOf(r, c.From))] = j.root(nodeOf(r, c.To))
	}
	return j
}

func (j *joined) root(node string) string {
	p, ok := j.parent[node]
	if !ok || p == node {
		j.parent[node] = node
		return node
	}
	top := j.root(p)
	j.parent[node] = top
	return top
}

// parallels notes, at each device, the others that have their line terminal and
// their load terminal in common with it.
func parallels(r *record.Record, devices map[string]*Device) {
	j := joinedBy(r)
	between := map[[2]string][]string{}
	for _, c := range r.Components {
		if devices[c.ID] == nil {
			continue
		}
		ends := [2]string{j.root(c.ID + ".line"), j.root(c.ID + ".load")}
		if ends[0] > ends[1] {
			ends[0], ends[1] = ends[1], ends[0]
		}
		if ends[0] != ends[1] {
			between[ends] = append(between[ends], c.ID)
		}
	}
	for _, ids := range between {
		for _, id := range ids {
			var others []string
			for _, other := range ids {
				if other != id {
					others = append(others, other)
				}
			}
			devices[id].Parallel = join(others)
		}
	}
}
