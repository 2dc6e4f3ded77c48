package circuit

import (
	"slices"
	"strings"

	"driploop/model/figure"
)

// trial is one operating case, solved.
type trial struct {
	name  string
	kind  CaseKind
	load  int // branch of the load that it is about, -1 for none
	pulls []pull
	gaps  []figure.Gap // what the loads in it lack
	solved

	lone  *lone           // of a case about one load
	base  *outcome        // that it stands on: what the branches off its way carry
	way   flow            // of that load, alone
	comps map[string]bool // components whose commands it hangs on
}

// solved is what a case tells of the network.
type solved interface {
	amps(branch int) amount
	flow(mesh, branch int) (float64, bool) // A from a to b
	carries(branch int) bool
	carrying() []int // every branch that can carry current
	fault(node int) (Problem, bool)
	in() *family
}

// solver solves the operating cases of a network and keeps what they share.
type solver struct {
	net      *network
	base     state
	all      []named
	families map[string]*family
	alike    map[string]*family  // of the same state, to copy what does not depend on resistances
	grounds  map[string]*outcome // continuous loads by state
	loads    []int               // branches of loads, in order
	alone    [][]*trial          // by load: alone, once for each way that it is fed; nil until asked for
	through  map[int][]pull      // loads without a current by branch, once asked for
}

// newSolver prepares the cases of a network; before is the solver of the same
// network at other temperatures, nil for none.
func newSolver(n *network, before *solver) *solver {
	s := &solver{
		net: n, base: n.defaultState(), families: map[string]*family{}, alike: map[string]*family{},
		grounds: map[string]*outcome{}, alone: make([][]*trial, len(n.branches)),
	}
	if before != nil {
		s.alike = before.alike
	}
	for i := range n.branches {
		if n.branches[i].kind == load {
			s.loads = append(s.loads, i)
		}
	}
	s.all = s.states()
	return s
}

func (s *solver) family(st state, su supply) *family {
	key := st.key()
	full := key
	if su == low {
		full += ";low"
	}
	f, ok := s.families[full]
	if !ok {
		f = s.net.newFamily(st, su, s.alike[key])
		s.families[full], s.alike[key] = f, f
	}
	return f
}

// named is a state with the word that tells it from the default.
type named struct {
	word string
	st   state
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

// coils returns the coils that a state energises, of the given components.
func (n *network) coils(st state, of map[string]bool) []pull {
	if len(of) == 0 {
		return nil
	}
	var pulls []pull
	for _, i := range n.coilBranches {
		if b := &n.branches[i]; of[b.id] && (b.when == "" || st.position[b.id] == b.when) {
			pulls = append(pulls, pull{branch: i})
		}
	}
	return pulls
}

// solveAlone solves a load by itself in every state in which it is fed another
// way: by other links of a component with commands.
func (s *solver) solveAlone(load int) []*trial {
	if done := s.alone[load]; done != nil {
		return done
	}
	trials := make([]*trial, 0, 1)
	var seen []string // links by command that a way hangs on
	for _, at := range s.all {
		l := s.family(at.st, full).alone(load)
		if l == nil {
			continue
		}
		links, comps := s.commanded(l)
		if slices.Contains(seen, links) {
			continue
		}
		seen = append(seen, links)
		if coils := s.net.coils(at.st, comps); len(coils) > 0 {
			l = l.again(coils)
		}
		t := &trial{
			name: s.net.branches[load].id + " alone", kind: Alone, load: load, pulls: l.pulls, gaps: s.net.gapsOf(l.pulls),
			solved: l, lone: l, comps: comps, way: follow(s.net, l),
		}
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
	if len(comps) == 0 {
		return ""
	}
	var words []string
	for _, c := range s.net.record.Components {
		if c != nil && comps[c.ID] && !slices.Contains(words, st.position[c.ID]) {
			words = append(words, st.position[c.ID])
		}
	}
	return strings.Join(words, ", ")
}

// commanded returns the links by command on a load's way, as text, and their
// components.
func (s *solver) commanded(l *lone) (links string, comps map[string]bool) {
	var text []string
	for _, h := range l.own {
		if b := &s.net.branches[h.branch]; b.when != "" {
			if comps == nil {
				comps = map[string]bool{}
			}
			comps[b.id] = true
			text = append(text, b.path+"/"+b.when)
		}
	}
	slices.Sort(text)
	return strings.Join(text, ";"), comps
}

// gapsOf returns what keeps the currents of loads from being known.
func (n *network) gapsOf(pulls []pull) []figure.Gap {
	var gaps []figure.Gap
	for _, p := range pulls {
		gaps = append(gaps, n.pullGaps(p)...)
	}
	return uniqueGaps(gaps)
}

// together solves loads at work at the same time, with the coils that hold in
// what feeds them.
func (s *solver) together(name string, kind CaseKind, at state, su supply, pulls []pull) *trial {
	comps := s.commandedBy(pulls)
	pulls = append(slices.Clone(pulls), s.net.coils(at, comps)...)
	o := s.family(at, su).solve(pulls)
	return &trial{name: name, kind: kind, load: -1, pulls: pulls, gaps: s.net.gapsOf(pulls), solved: o, comps: comps}
}

// commandedBy returns the components whose commands any of the loads hangs on, as
// far as they have coils.
func (s *solver) commandedBy(pulls []pull) map[string]bool {
	comps := map[string]bool{}
	if len(s.net.coilBranches) == 0 {
		return comps
	}
	for _, p := range pulls {
		for _, t := range s.solveAlone(p.branch) {
			for id := range t.comps {
				comps[id] = true
			}
		}
	}
	return comps
}

// every returns every load as running.
func (s *solver) every() []pull {
	pulls := make([]pull, len(s.loads))
	for k, l := range s.loads {
		pulls[k].branch = l
	}
	return pulls
}

// continuous returns the loads that run without pause. A load counts unless the
// record says that it pauses: by "continuously", else by a purpose that is short
// by nature.
func (s *solver) continuous() []pull {
	var pulls []pull
	for _, l := range s.loads {
		if !s.pauses(l) {
			pulls = append(pulls, pull{branch: l})
		}
	}
	return pulls
}

func (s *solver) pauses(l int) bool {
	c := s.net.branches[l].comp
	if v, ok := c.Continuously.Get(); ok {
		return !v
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
	for _, at := range s.all {
		visit(s.together(caseName("all loads", at.word), All, at.st, full, s.every()))
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

func caseName(name, word string) string {
	if word == "" {
		return name
	}
	return name + ", " + word
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
