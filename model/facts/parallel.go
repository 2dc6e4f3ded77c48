package facts

// parallels notes, at each device, the others that have their line terminal and
// their load terminal in common with it, by conductors and busbars alone: what a
// switch or device lies between is apart.
func (b *Builder) parallels() {
	j := b.apart()
	for i := range b.wires {
		j.join(b.wires[i].fromNode, b.wires[i].toNode)
	}
	between := map[[2]int][]string{}
	for i := range b.parts {
		on := &b.parts[i]
		line, load := b.at(on.ID, "line"), b.at(on.ID, "load")
		if b.doc.Devices[on.ID] == nil || line < 0 || load < 0 {
			continue
		}
		ends := pairOf(j.top(line), j.top(load))
		if ends[0] != ends[1] {
			between[ends] = append(between[ends], on.ID)
		}
	}
	for _, ids := range between {
		if len(ids) == 1 {
			continue
		}
		for _, id := range ids {
			b.doc.Devices[id].Parallel = joinOthers(ids, id)
		}
	}
}

// pairOf returns two nodes, the lower first.
func pairOf(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

// joinOthers lists names but one for a sentence.
func joinOthers(names []string, but string) string {
	var others []string
	for _, name := range names {
		if name != but {
			others = append(others, name)
		}
	}
	return join(others)
}
