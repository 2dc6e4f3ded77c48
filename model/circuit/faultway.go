package circuit

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// prospect is a bolted fault between two nodes: its current, and the way that
// one ampere of it takes from the node of return through the batteries to the
// fault.
type prospect struct {
	short
	end     int // of the ranges
	amps    float64
	volts   float64 // between the nodes, without loads
	way     []hop
	rings   []ring
	devices []hop // between the batteries and the fault, once asked for
	gaps    []figure.Gap
	mesh    *mesh
}

// figure returns the current of the fault.
func (p *prospect) figure() figure.Figure {
	if len(p.gaps) > 0 {
		return figure.Open(uniqueGaps(p.gaps)...)
	}
	return figure.Worked(p.amps, "A", p.steps)
}

// short is where a fault is: between a node and a node of return, in one state of
// the switches, with what the way back adds in resistance.
type short struct {
	at, back int
	fam      *family
	extra    float64 // Ω
}

// wayOf returns the way of one ampere to a fault. Where it has no rings, it is the
// same in every mesh of a state.
func (a *analysis) wayOf(m *mesh, forest *forest, f short) ([]hop, []ring) {
	last := &a.lastWay
	if last.way != nil && last.forest == forest && last.at == f.at && last.back == f.back {
		return last.way, nil
	}
	a.legs = forest.way(a.legs[:0], f.back, f.at)
	way, rings := m.unit(forest, a.legs)
	if len(rings) == 0 {
		last.forest, last.at, last.back, last.way = forest, f.at, f.back, way
	}
	return way, rings
}

// bolted returns the current of a bolted fault, all batteries feeding it at once,
// loads and charging sources aside.
//
//	I = U/R
//
// U between the nodes without loads, R of the network between them (Thévenin) and
// of the way back, of which gaps are what is not known.
func (a *analysis) bolted(f short, gaps []figure.Gap, end int) *prospect {
	m, forest := a.faultMesh(f.fam, end)
	p := a.prospects.one()
	*p = prospect{short: f, end: end, gaps: gaps, mesh: m}
	name := a.net.nodes[f.at].name
	if m.island[f.at] != m.island[f.back] || !m.sourced[m.island[f.at]] {
		p.gaps = []figure.Gap{figure.Because("no battery feeds " + name + " in the record")}
		return p
	}
	if fault, bad := m.faults[m.island[f.at]]; bad {
		p.gaps = []figure.Gap{figure.Because(fault.Says)}
		return p
	}
	p.way, p.rings = a.wayOf(m, forest, f)
	for _, h := range p.way {
		b := &a.net.branches[h.branch]
		p.gaps = append(p.gaps, b.ohms.gaps...)
		if b.kind == source {
			p.gaps = append(p.gaps, b.emf[full].gaps...)
		}
	}
	idle := m.atRest()
	ohms := m.ohmsOf(p.way) + f.extra
	p.volts = idle.volts[f.at] - idle.volts[f.back]
	if len(p.gaps) == 0 && ohms <= 0 {
		p.gaps = []figure.Gap{figure.Because("nothing in the record limits a fault at " + name)}
	}
	if len(p.gaps) > 0 {
		return p
	}
	p.amps = math.Abs(p.volts / ohms)
	return p
}

func (p *prospect) steps() []figure.Step { return []figure.Step{p.step()} }

// step is the working of a bolted fault: every resistance in its way, in a ring
// the part that counts for the whole.
func (p *prospect) step() figure.Step {
	n, m := p.mesh.net, p.mesh
	what := "greatest: batteries at their least internal resistance, conductors at 20 °C"
	if p.end == greatestOhms {
		what = "least: batteries at their greatest internal resistance, conductors at working temperature"
	}
	inputs := make([]figure.Input, 0, len(p.way)+2)
	inputs = append(inputs, figure.Input{Symbol: "U", Value: quantity.Round(math.Abs(p.volts)), Unit: "V", From: "between " + n.nodes[p.at].name + " and " + n.nodes[p.back].name + ", without loads"})
	for _, h := range p.way {
		inputs = append(inputs, n.resistanceInput(h, m.values.ohms[h.branch]))
	}
	if p.extra > 0 {
		inputs = append(inputs, figure.Input{Symbol: "R(way back)", Value: quantity.Round(1000 * p.extra), Unit: "mohm", From: "of the load's return, as far as it runs beside"})
	}
	return figure.Step{
		Formula: "prospective current of a bolted fault at " + n.nodes[p.at].name + ": I = U/(R + R + …), " + what,
		Source:  "Thévenin's theorem; " + sourceNodal, Inputs: inputs, Result: quantity.Round(p.amps), Unit: "A",
	}
}

// resistanceInput is a resistance in the way of a current as working shows it. In a
// ring it counts by the square of its share, so that the sum is that of the whole.
func (n *network) resistanceInput(h hop, ohms float64) figure.Input {
	b := &n.branches[h.branch]
	in := figure.Input{Symbol: "R(" + b.id + ")", Value: quantity.Round(1000 * ohms * h.amps * h.amps), Unit: "mohm", From: b.path}
	if !alike(math.Abs(h.amps), 1) {
		in.Symbol = "k²·" + in.Symbol + ", k its share"
	}
	if ohms == 0 && (b.kind == device || b.kind == contact) {
		in.From = b.path + ".resistance, not recorded: taken as none"
	}
	return in
}

// greatestFault returns the fault at a node, to the negative terminal of a battery
// to which it is greatest.
func (a *analysis) greatestFault(at int, fam *family, end int) *prospect {
	if fam.greatestAt[end] == nil {
		fam.greatestAt[end] = make([]*prospect, len(a.net.nodes))
	}
	p := &fam.greatestAt[end][at]
	if *p == nil {
		*p = a.findGreatest(at, fam, end)
	}
	return *p
}

func (a *analysis) findGreatest(at int, fam *family, end int) *prospect {
	var best, open *prospect
	for _, back := range a.outerNegatives() {
		p := a.bolted(short{at: at, back: back, fam: fam}, nil, end)
		if len(p.way) == 0 {
			continue // not joined to this battery
		}
		if len(p.gaps) > 0 { // how much flows there is not known; what stands on its way is
			if open != nil {
				p.gaps = slices.Concat(open.gaps, p.gaps)
			}
			open = &prospect{way: p.way, rings: p.rings, gaps: p.gaps}
		} else if best == nil || p.amps > best.amps {
			best = p
		}
	}
	m, _ := a.faultMesh(fam, end)
	switch fault, bad := m.faults[m.island[at]]; {
	case open != nil:
		return open
	case best != nil:
		return best
	case bad:
		return &prospect{gaps: []figure.Gap{figure.Because(fault.Says)}}
	}
	return &prospect{gaps: []figure.Gap{figure.Because("no battery feeds " + a.net.nodes[at].name + " in the record")}}
}

// outerNegatives returns the negative terminals of the batteries that stand at
// the foot of their chain.
func (a *analysis) outerNegatives() []int {
	if a.negatives != nil {
		return a.negatives
	}
	nodes := []int{}
	for _, t := range a.poles.all {
		if a.net.branches[t.branch].class == batteryClass && !t.positive && t.outer {
			nodes = append(nodes, t.node)
		}
	}
	a.negatives = nodes
	return nodes
}

// faultMesh returns the network without loads in a state, at one end of the
// ranges.
func (a *analysis) faultMesh(fam *family, end int) (*mesh, *forest) {
	if fam.faults[end] == nil {
		v := a.net.fill(fam.closed, full, end, 0)
		if end == leastOhms {
			for _, i := range fam.closed {
				if b := &a.net.branches[i]; b.kind == wire && !b.ohms.open() {
					v.ohms[i] = b.metal.cold.low
				}
			}
		}
		fam.faults[end] = newMesh(a.net, fam.closed, v, 0, fam.meshes[0])
	}
	return fam.faults[end], fam.forest
}
