package circuit

import (
	"slices"
	"strings"
)

// surges solves a motor starting and stalled on top of the continuous loads, in
// each state in which it is fed another way.
func (s *solver) surges(l int, background []pull, visit func(*trial)) {
	c := s.net.branches[l].comp
	for _, surge := range []struct {
		is   bool
		kind CaseKind
		mode mode
	}{{c.Starting.Is(), Starting, starting}, {c.Stall.Is(), Stalled, stalled}} {
		if !surge.is {
			continue
		}
		for _, alone := range s.solveAlone(l) {
			t := s.surge(alone, surge.mode, background)
			t.kind = surge.kind
			t.name = strings.Replace(alone.name, " alone", " "+string(surge.kind), 1)
			visit(t)
		}
	}
}

// surge solves one load starting or stalled on top of the continuous loads. The
// way of the load is enough where the others draw constant currents; else all
// are solved together.
func (s *solver) surge(alone *trial, how mode, background []pull) *trial {
	st := alone.lone.family.state
	base := s.ground(st, background)
	linear, runs := true, false
	for _, p := range background {
		if p.branch == alone.load {
			runs = true
		} else {
			linear = linear && s.net.isConstant(p)
		}
	}
	if own := (pull{branch: alone.load}); linear && (s.net.isConstant(own) || !runs) && len(base.faults) == 0 {
		var coils []pull
		for _, c := range s.net.coils(st, alone.comps) {
			if !slices.Contains(base.pulls, c) {
				coils = append(coils, c)
			}
		}
		l := alone.lone.onTop(base, how, coils)
		pulls := withOthers(l.pulls, background, alone.load)
		return &trial{load: alone.load, pulls: pulls, gaps: s.net.gapsOf(pulls), solved: l, lone: l, base: base, way: alone.way}
	}
	t := s.together("", Starting, st, full, withOthers([]pull{{alone.load, how}}, background, alone.load))
	t.load, t.way = alone.load, alone.way
	return t
}

// withOthers returns the pulls of a load with all of the background but its own.
func withOthers(own, background []pull, load int) []pull {
	pulls := append(make([]pull, 0, len(own)+len(background)), own...)
	for _, p := range background {
		if p.branch != load {
			pulls = append(pulls, p)
		}
	}
	return pulls
}

// ground returns the continuous loads in a state.
func (s *solver) ground(st state, background []pull) *outcome {
	key := st.key()
	if s.grounds[key] == nil {
		s.grounds[key] = s.together("", Continuous, st, full, background).solved.(*outcome)
	}
	return s.grounds[key]
}
