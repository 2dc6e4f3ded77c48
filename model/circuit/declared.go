package circuit

import (
	"slices"
)

// declared solves the cases that the record itself names.
func (s *solver) declared(visit func(*trial)) {
	for _, c := range s.net.record.Cases {
		if c == nil {
			continue
		}
		st := s.base.clone()
		for _, word := range c.When.V {
			st = s.net.with(st, word)
		}
		for _, id := range c.Open.V {
			st.open[id] = true
		}
		su := full
		switch c.Source.V {
		case "low":
			su = low
		case "charging":
			st.charging, su = true, low
		}
		visit(s.together(c.ID, Declared, st, su, s.declaredPulls(c.Loads.V, c.State.V)))
	}
}

// declaredPulls returns the loads of a declared case. One without a recorded
// starting or stall current runs.
func (s *solver) declaredPulls(ids []string, how string) []pull {
	var pulls []pull
	for _, l := range s.loads {
		c := s.net.branches[l].comp
		if !slices.Contains(ids, c.ID) {
			continue
		}
		p := pull{branch: l}
		switch {
		case how == "starting" && c.Starting.Is():
			p.mode = starting
		case how == "stalled" && c.Stall.Is():
			p.mode = stalled
		}
		pulls = append(pulls, p)
	}
	return pulls
}
