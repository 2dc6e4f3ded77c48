package facts

import (
	"driploop/model/circuit"
	"driploop/model/record"
)

// toDisconnect names the conductors on the shortest ways from a battery to its
// disconnect switch, through the fuses, breakers and bars between.
func toDisconnect(r *record.Record, a *circuit.Analysis) map[string]bool {
	landed := map[string][]*record.Conductor{}
	for _, c := range r.Conductors {
		landed[c.From.Component] = append(landed[c.From.Component], c)
		if c.To.Component != c.From.Component {
			landed[c.To.Component] = append(landed[c.To.Component], c)
		}
	}
	before := map[string]bool{}
	for _, c := range r.Components {
		battery := a.Batteries[c.ID]
		if battery == nil || battery.Disconnect == "" {
			continue
		}
		steps := stepsTo(r, landed, battery.Disconnect, c.ID)
		seen := map[string]bool{}
		for next := []string{c.ID}; len(next) > 0; next = next[1:] {
			at := next[0]
			if seen[at] {
				continue
			}
			seen[at] = true
			for _, cable := range landed[at] {
				to := otherEnd(cable, at)
				if n, leads := steps[to]; leads && n < steps[at] {
					before[cable.ID] = true
					next = append(next, to)
				}
			}
		}
	}
	return before
}

// stepsTo counts the conductors from each component to a switch, as far as a way
// leads there through devices and bars. The battery is the far end.
func stepsTo(r *record.Record, landed map[string][]*record.Conductor, target, battery string) map[string]int {
	steps := map[string]int{target: 0}
	for next := []string{target}; len(next) > 0; next = next[1:] {
		for _, c := range landed[next[0]] {
			to := otherEnd(c, next[0])
			if _, seen := steps[to]; seen || to != battery && !leadsOn(r, to) {
				continue
			}
			steps[to] = steps[next[0]] + 1
			if to != battery {
				next = append(next, to)
			}
		}
	}
	return steps
}

func otherEnd(c *record.Conductor, from string) string {
	if c.To.Component == from {
		return c.From.Component
	}
	return c.To.Component
}

// leadsOn tells whether a way to a switch may lead through a component.
func leadsOn(r *record.Record, component string) bool {
	c := r.Component(component)
	if c == nil {
		return false
	}
	kind := record.KindOf(c.Kind.V)
	return kind.Protective || kind.OneNode
}
