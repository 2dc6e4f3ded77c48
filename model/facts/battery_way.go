package facts

// toDisconnect tells, by the number of the conductor, which lie on the shortest
// ways from a battery to its disconnect switch, through the fuses, breakers and
// bars between.
func (b *Builder) toDisconnect() []bool {
	before := make([]bool, len(b.wires))
	for i := range b.parts {
		from := &b.parts[i]
		battery := b.solved.Batteries[from.ID]
		if battery == nil || battery.Disconnect == "" {
			continue
		}
		steps := b.stepsTo(b.part(battery.Disconnect), from)
		seen := make([]bool, len(b.parts))
		for next := []*part{from}; len(next) > 0; next = next[1:] {
			at := next[0]
			if seen[at.number] {
				continue
			}
			seen[at.number] = true
			for _, cable := range at.wires {
				if to := cable.other(at); to != nil && steps[to.number] >= 0 && steps[to.number] < steps[at.number] {
					before[cable.number] = true
					next = append(next, to)
				}
			}
		}
	}
	return before
}

// stepsTo counts, by the number of the component, the conductors from it to a
// switch, as far as a way leads there through devices and bars; -1 where none
// does. The battery is the far end.
func (b *Builder) stepsTo(target, battery *part) []int {
	steps := make([]int, len(b.parts))
	for i := range steps {
		steps[i] = -1
	}
	if target == nil {
		return steps
	}
	steps[target.number] = 0
	for next := []*part{target}; len(next) > 0; next = next[1:] {
		at := next[0]
		for _, w := range at.wires {
			to := w.other(at)
			if to == nil || steps[to.number] >= 0 || to != battery && !to.leadsOn() {
				continue
			}
			steps[to.number] = steps[at.number] + 1
			if to != battery {
				next = append(next, to)
			}
		}
	}
	return steps
}

// leadsOn tells whether a way to a switch may lead through a component.
func (p *part) leadsOn() bool { return p.kind.Protective || p.kind.OneNode }
