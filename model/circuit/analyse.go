// Package circuit makes of a record the network that it describes, and of that
// what flows, drops, heats and can go wrong: paths from every source, first
// devices, currents and voltages in each operating case, fault currents. Its
// result is the Analysis; every figure in it keeps its working, or names what
// the record lacks.
package circuit

import (
	"sync"

	"driploop/model/figure"
	"driploop/model/record"
)

// analysis is the work on one record.
type analysis struct {
	net      *network
	search   *searcher
	poles    *poles
	feedings []*feeding
	solver   *solver
	peaks    *peaks
	result   *Analysis
	wires    []ConductorResult // those of the result, by branch
	parts    []ComponentResult // the same, by part
	system   figure.Figure     // nominal voltage of the vessel, once asked for
	nominal  []level           // by node, once asked for
	trials   []*trial          // every case solved
	unstated [][]figure.Gap    // surge currents not recorded, by branch
	through  [][]string        // loads whose current passes a device or contact, by branch, once asked for
	warmth   []warmth          // by conductor's branch
	behind   []*behind         // by branch on the way out to a load, the first of a list
	remote   [][]*behind       // by device on such a way: faults at the loads behind it
	releases []*release        // of devices by branch, once asked for
	gapsOf   struct {          // the last answer of releaseGaps
		devices []hop
		gaps    []figure.Gap
	}
	prospects slab[prospect]
	behinds   slab[behind]
	legs      []leg    // of the way last asked for
	lastWay   struct { // the last answer of wayOf
		forest   *forest
		at, back int
		way      []hop
	}
	kinds     map[kindOfDevice]*release // curves by family and rating
	negatives []int                     // of batteries, once asked for
	limits    []tolerance               // of devices by state, once asked for
	joined    tolerance                 // the same with every contact closed
	bars      []bar                     // of the conductor last asked for
	drops     []float64                 // V by conductor's branch, by formula, of the load last asked for
}

// Analyse returns what the circuit of a record is: which sources feed what
// through which devices, the currents and voltages of every operating case, and
// what follows from them. It takes any record; what cannot be computed is open,
// with the entries that are missing.
//
// Conductors are solved at their working temperature under the greatest
// continuous current, as a first solution at insulation rating gives it.
func Analyse(r *record.Record) *Analysis {
	a := prepare(r)
	n := a.net
	a.result.Problems = append(a.result.Problems, a.poles.mismatches()...)
	a.warmth = make([]warmth, n.wires)
	for i := range a.wires {
		b, r := &n.branches[i], &a.wires[i]
		n.setCopper(r, b)
		a.warmth[i] = warmthOf(b, r)
		b.heat(atRating(b))
	}
	a.warm()
	a.solve()
	a.findBehind()
	a.setConductors()
	a.setDevices()
	a.setLoads()
	a.setHeat()
	a.setBatteries()
	a.setComponents()
	a.setContacts()
	a.setTerminals()
	return a.result
}

// prepare builds the network of a record and follows its sources.
func prepare(r *record.Record) *analysis {
	n := build(r)
	a := &analysis{net: n, search: newSearcher(n), releases: make([]*release, len(n.branches)), kinds: map[kindOfDevice]*release{}}
	a.makeResult()
	a.poles = findPoles(n, a.search)
	for _, t := range a.poles.all {
		if a.poles.feeds(t) {
			f := findFeeding(n, a.search, t)
			f.upper = a.feedingOf
			a.feedings = append(a.feedings, f)
		}
	}
	a.solver = newSolver(n, nil)
	return a
}

// feedingOf returns what the positive terminal of a source feeds, nil if it is at
// ground potential.
func (a *analysis) feedingOf(source int) *feeding {
	for _, f := range a.feedings {
		if f.pole.branch == source && f.pole.positive {
			return f
		}
	}
	return nil
}

// makeResult makes room for what the circuit makes of each conductor and component.
func (a *analysis) makeResult() {
	n := a.net
	var devices, loads int
	for k := range n.parts {
		switch n.parts[k].class {
		case deviceClass:
			devices++
		case loadClass:
			loads++
		}
	}
	r := &Analysis{
		Conductors: make(map[string]*ConductorResult, n.wires),
		Devices:    make(map[string]*DeviceResult, devices),
		Loads:      make(map[string]*LoadResult, loads),
		Batteries:  map[string]*BatteryResult{},
		Components: make(map[string]*ComponentResult, len(n.parts)),
		Terminals:  make(map[string]*TerminalResult, len(n.terminals)),
	}
	a.result, a.wires, a.parts = r, make([]ConductorResult, n.wires), make([]ComponentResult, len(n.parts))
	device, load := make([]DeviceResult, devices), make([]LoadResult, loads)
	for i := range a.wires {
		r.Conductors[n.branches[i].id] = &a.wires[i]
	}
	for k := range n.parts {
		p := &n.parts[k]
		r.Components[p.ID] = &a.parts[k]
		switch p.class {
		case deviceClass:
			r.Devices[p.ID], device = &device[0], device[1:]
		case loadClass:
			r.Loads[p.ID], load = &load[0], load[1:]
		case batteryClass:
			r.Batteries[p.ID] = &BatteryResult{}
		}
	}
}

// warm sets each conductor's temperature from the currents with all loads on.
func (a *analysis) warm() {
	s := a.solver
	p := newPeaks(a)
	for _, at := range s.all {
		p.take(s.together("all loads", All, at.st, full, s.every()))
	}
	for i := range a.wires {
		b := &a.net.branches[i]
		t := a.warmth[i].working(b, p.running[i].amount())
		b.heat(t)
		a.wires[i].RHot = hotOhms(b, &a.wires[i], t)
	}
}

// solve runs every operating case and keeps the greatest currents.
func (a *analysis) solve() {
	a.solver = newSolver(a.net, a.solver)
	a.peaks = newPeaks(a).ofEveryKind()
	reported := map[string]bool{}
	based := map[*outcome]bool{}
	a.solver.run(func(t *trial) {
		if t.base != nil && !based[t.base] {
			based[t.base] = true
			a.peaks.take(&trial{name: t.name, kind: t.kind, load: -1, pulls: t.base.pulls, solved: t.base})
		}
		a.peaks.take(t)
		a.trials = append(a.trials, t)
		if p := t.problem(); p != nil {
			if key := string(p.Kind) + p.Path; !reported[key] {
				reported[key] = true
				a.result.Problems = append(a.result.Problems, *p)
			}
		}
	})
	a.result.Cases = sync.OnceValue(a.caseResults)
	a.islands()
	a.unstated = a.surgeGaps()
}

// islands notes each load that no state feeds, and opens the currents of what
// it could draw through.
func (a *analysis) islands() {
	for _, l := range a.solver.loads {
		if len(a.solver.solveAlone(l)) > 0 {
			continue
		}
		b := &a.net.branches[l]
		gaps := a.unfedGaps(b)
		if p, bad := a.shortedAt(b); bad {
			gaps = []figure.Gap{figure.Because(p.Says)}
		} else {
			a.result.Problems = append(a.result.Problems, a.net.problem(Island, b, gaps[0].Why))
		}
		a.openAround([]int{b.a, b.b}, gaps)
		for _, id := range a.opaque() {
			a.openAround(a.nodesOf(id), gaps)
		}
	}
}

// openAround leaves the current of every conductor open that can be joined to
// the nodes.
func (a *analysis) openAround(nodes []int, gaps []figure.Gap) {
	for _, node := range nodes {
		a.search.run(node, everywhere, func(_, at int) {
			for _, i := range a.net.at[at] {
				a.peaks.running[i].gaps = append(a.peaks.running[i].gaps, gaps...)
			}
		})
	}
}

// opaque returns the relays and controllers in use that do not tell what they
// join.
func (a *analysis) opaque() []string {
	var ids []string
	for k := range a.net.parts {
		if p := &a.net.parts[k]; p.class == relayClass && len(p.Links) == 0 && p.first >= 0 {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

// nodesOf returns the nodes of a component's terminals, in the order met.
func (a *analysis) nodesOf(comp string) []int {
	var nodes []int
	for t := a.net.part(comp).first; t >= 0; t = a.net.terminals[t].next {
		nodes = append(nodes, a.net.terminals[t].node)
	}
	return nodes
}

// unfedGaps says why a load is not fed: a way that is not there, and the relays
// and controllers that do not tell what they join.
func (a *analysis) unfedGaps(b *branch) []figure.Gap {
	gaps := []figure.Gap{figure.Because("no way leads from a source through " + branchPlace(b) + " and back")}
	for _, id := range a.opaque() {
		gaps = append(gaps, figure.Missing(a.net.part(id).Path+".links"))
	}
	return gaps
}

// shortedAt returns the problem that keeps the surroundings of a load from being
// solved, if any.
func (a *analysis) shortedAt(b *branch) (Problem, bool) {
	m := a.solver.family(a.solver.base, full).meshes[0]
	for _, node := range []int{b.a, b.b} {
		if p, bad := m.faults[m.island[node]]; bad {
			return p, true
		}
	}
	return Problem{}, false
}
