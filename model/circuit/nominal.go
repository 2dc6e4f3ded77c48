package circuit

// level is the nominal voltage of a node above the negative pole of its island.
type level struct {
	island int // -1 if no battery is there
	volts  float64
	open   bool // a battery on the way has no nominal voltage
}

// levels returns the nominal voltage of every node with everything closed, in
// the default state, and every conductor without a drop.
func (a *analysis) levels() []level {
	if a.nominal != nil {
		return a.nominal
	}
	n := a.net
	out := make([]level, len(n.nodes))
	for i := range out {
		out[i].island = -1
	}
	closed := make([]bool, len(n.branches))
	for _, i := range n.closed(a.solver.base) {
		closed[i] = true
	}
	island := 0
	for i := range n.branches {
		b := &n.branches[i]
		if b.kind != source || b.class != batteryClass || out[b.b].island >= 0 {
			continue
		}
		n.spreadLevels(out, closed, b.b, island)
		island++
	}
	a.nominal = out
	return out
}

func (n *network) spreadLevels(out []level, closed []bool, start, island int) {
	out[start] = level{island: island}
	queue := []int{start}
	var members []int
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		members = append(members, node)
		for _, i := range n.at[node] {
			b := &n.branches[i]
			next := b.other(node)
			if !closed[i] || out[next].island >= 0 || b.kind == source && b.class != batteryClass {
				continue
			}
			to := out[node]
			if b.kind == source {
				v, ok := n.ratedVolts(b.comp)
				if node == b.a {
					v = -v
				}
				to.volts += v
				to.open = to.open || !ok
			}
			out[next] = to
			queue = append(queue, next)
		}
	}
	least := 0.0
	for _, node := range members {
		least = min(least, out[node].volts)
	}
	for _, node := range members {
		out[node].volts -= least
	}
}
