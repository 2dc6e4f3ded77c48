package circuit

import (
	"slices"
	"strings"

	"driploop/model/figure"
)

// solver solves the operating cases of a network and keeps what they share.
type solver struct {
	net      *network
	base     state
	families map[string]*family
	loads    []int            // branches of loads, in order
	alone    map[int][]*trial // by load: alone, once for each way that it is fed
}

// trial is one case to be solved, and what came of it.
type trial struct {
	name    string
	kind    CaseKind
	load    int // branch, -1 if the case is not about one load
	pulls   []pull
	gaps    []figure.Gap // what keeps its currents from being known
	outcome *outcome
	flow    flow            // of the load alone
	comps   map[string]bool // components whose commands it hangs on
}

func newSolver(n *network) *solver {
	s := &solver{net: n, base: n.defaultState(), families: map[string]*family{}, alone: map[int][]*trial{}}
	for i := range n.branches {
		if n.branches[i].kind == load {
			s.loads = append(s.loads, i)
		}
	}
	return s
}

func (s *solver) family(st state, su supply) *family {
	key := st.key()
	if su == low {
		key += ";low"
	}
	f, ok := s.families[key]
	if !ok {
		f = s.net.newFamily(st, su)
		s.families[key] = f
	}
	return f
}

// states returns the default state and, for each command or position of the
// record, that state with everything in it that knows the word.
func (s *solver) states() []named {
	all := []named{{st: s.base}}
	keys := map[string]bool{s.base.key(): true}
	for _, word := range s.net.words() {
		st := s.net.with(s.base, word)
		if key := st.key(); !keys[key] {
			keys[key] = true
			all = append(all, named{word, st})
		}
	}
	return all
}

// named is a state with the word that tells it from the default.
type named struct {
	word string
	st   state
}

// coils returns the coils that a state energises, of the given components.
func (n *network) coils(st state, of map[string]bool) []pull {
	var pulls []pull
	for i := range n.branches {
		b := &n.branches[i]
		if b.kind != coil || !of[b.id] {
			continue
		}
		if b.when == "" || st.position[b.id] == b.when {
			pulls = append(pulls, pull{branch: i})
		}
	}
	return pulls
}

// solveAlone solves a load by itself in every state in which it is fed another
// way: by other links of a component with commands.
func (s *solver) solveAlone(load int) []*trial {
	if done, ok := s.alone[load]; ok {
		return done
	}
	var trials []*trial
	seen := map[string]bool{}
	b := &s.net.branches[load]
	for _, at := range s.states() {
		f := s.family(at.st, full)
		o := f.solve([]pull{{branch: load}})
		if !o.fed[load] {
			continue
		}
		links, comps := s.commanded(o)
		if seen[links] {
			continue
		}
		seen[links] = true
		if coils := s.net.coils(at.st, comps); len(coils) > 0 {
			o = f.solve(append([]pull{{branch: load}}, coils...))
		}
		t := &trial{name: b.id + " alone", kind: Alone, load: load, pulls: o.pulls, outcome: o, comps: comps, flow: flow{source: -1}}
		if sol := o.first(); sol != nil {
			t.flow = follow(s.net, sol, load)
		}
		t.gaps = s.net.pullGaps(t.pulls)
		if word := s.positions(at.st, comps); word != "" {
			t.name += ", " + word
		}
		trials = append(trials, t)
	}
	s.alone[load] = trials
	return trials
}

// positions words the commands of the components that a case hangs on.
func (s *solver) positions(st state, comps map[string]bool) string {
	var words []string
	for _, c := range s.net.record.Components {
		if c != nil && comps[c.ID] && !slices.Contains(words, st.position[c.ID]) {
			words = append(words, st.position[c.ID])
		}
	}
	return strings.Join(words, ", ")
}

// commanded returns the links by command that carry current in an outcome, as
// text, and their components.
func (s *solver) commanded(o *outcome) (links string, comps map[string]bool) {
	comps = map[string]bool{}
	var text strings.Builder
	sol := o.first()
	if sol == nil {
		return "", comps
	}
	for i := range s.net.branches {
		b := &s.net.branches[i]
		if b.when != "" && b.kind != coil && significant(sol.amps[i]) {
			comps[b.id] = true
			text.WriteString(b.path + "/" + b.when + ";")
		}
	}
	return text.String(), comps
}

// pullGaps returns what keeps the currents of loads from being known.
func (n *network) pullGaps(pulls []pull) []figure.Gap {
	var gaps []figure.Gap
	for _, p := range pulls {
		gaps = append(gaps, n.loadGaps(p)...)
	}
	return uniqueGaps(gaps)
}

func (n *network) loadGaps(p pull) []figure.Gap {
	b := &n.branches[p.branch]
	switch {
	case b.kind == coil || p.mode != running:
		return n.pullAmps(p).gaps
	case b.draw == resistive:
		return b.ohms.gaps
	case b.draw == constantPower:
		return b.watts.gaps
	}
	return b.current.gaps
}

// first returns the solution at the unfavourable end, or nil.
func (o *outcome) first() *solution { return o.solutions[endHigh][0] }

// negligible is the current below which a branch counts as carrying none, A:
// what rounding leaves.
const negligible = 1e-9

func significant(amps float64) bool { return amps > negligible || amps < -negligible }

// together solves loads at work at the same time, with the coils that hold in
// what feeds them.
func (s *solver) together(name string, kind CaseKind, at state, su supply, pulls []pull) *trial {
	comps := map[string]bool{}
	for _, p := range pulls {
		for _, t := range s.solveAlone(p.branch) {
			for id := range t.comps {
				comps[id] = true
			}
		}
	}
	pulls = append(slices.Clone(pulls), s.net.coils(at, comps)...)
	o := s.family(at, su).solve(pulls)
	t := &trial{name: name, kind: kind, load: -1, pulls: pulls, outcome: o}
	t.gaps = s.net.pullGaps(pulls)
	return t
}

// all returns every load as running.
func (s *solver) all() []pull {
	var pulls []pull
	for _, l := range s.loads {
		pulls = append(pulls, pull{branch: l})
	}
	return pulls
}

// continuous returns the loads that run without pause. A load counts unless the
// record says that it pauses: by a run time, by "continuously", or by a purpose
// that is short by nature.
func (s *solver) continuous() []pull {
	var pulls []pull
	for _, l := range s.loads {
		if !pauses(s.net.branches[l].comp.Continuously.Get) && !s.short(l) {
			pulls = append(pulls, pull{branch: l})
		}
	}
	return pulls
}

func pauses(get func() (bool, bool)) bool {
	v, ok := get()
	return ok && !v
}

func (s *solver) short(l int) bool {
	c := s.net.branches[l].comp
	if v, ok := c.Continuously.Get(); ok {
		return !v
	}
	if c.RunTime.Is() {
		return true
	}
	switch c.Purpose.V {
	case "windlass", "thruster", "cranking", "winch", "horn":
		return true
	}
	return false
}

// run solves every case of the record in a fixed order and hands each to visit.
func (s *solver) run(visit func(*trial)) {
	for _, l := range s.loads {
		for _, t := range s.solveAlone(l) {
			visit(t)
		}
	}
	for _, at := range s.states() {
		visit(s.together(caseName("all loads", at.word), All, at.st, full, s.all()))
	}
	background := s.continuous()
	visit(s.together("continuous loads", Continuous, s.base, full, background))
	for _, l := range s.loads {
		s.surges(l, background, visit)
	}
	visit(s.together("continuous loads, battery low", Low, s.base, low, background))
	s.charging(background, visit)
	s.declared(visit)
}

// charging solves all charging sources at work into low batteries, without loads
// and with the continuous ones.
func (s *solver) charging(background []pull, visit func(*trial)) {
	if !slices.ContainsFunc(s.net.branches, func(b branch) bool { return b.kind == source && b.class == chargeClass }) {
		return
	}
	st := s.base.clone()
	st.charging = true
	visit(s.together("charging", Charging, st, low, nil))
	visit(s.together("charging, continuous loads", Charging, st, low, background))
}

func caseName(name, word string) string {
	if word == "" {
		return name
	}
	return name + ", " + word
}

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
			pulls := []pull{{branch: l, mode: surge.mode}}
			for _, p := range background {
				if p.branch != l {
					pulls = append(pulls, p)
				}
			}
			name := strings.Replace(alone.name, " alone", " "+string(surge.kind), 1)
			t := s.together(name, surge.kind, alone.outcome.family.state, full, pulls)
			t.load = l
			visit(t)
		}
	}
}

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
		how := running
		switch c.State.V {
		case "starting":
			how = starting
		case "stalled":
			how = stalled
		}
		var pulls []pull
		for _, l := range s.loads {
			if slices.Contains(c.Loads.V, s.net.branches[l].id) {
				p := pull{branch: l, mode: running}
				if how == starting && s.net.branches[l].comp.Starting.Is() || how == stalled && s.net.branches[l].comp.Stall.Is() {
					p.mode = how
				}
				pulls = append(pulls, p)
			}
		}
		kind := Declared
		visit(s.together(c.ID, kind, st, su, pulls))
	}
}
