package circuit

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// setBatteries fills in what each battery gives and how it can be cut off.
func (a *analysis) setBatteries() {
	for i := range a.net.branches {
		b := &a.net.branches[i]
		if b.kind != source || b.class != batteryClass {
			continue
		}
		r := a.result.Batteries[b.id]
		volts := b.emf[full]
		r.OpenV = figure.Open(volts.gaps...)
		if !volts.open() {
			r.OpenV = figure.Worked(volts.high, "V", volts.working)
		}
		r.ResistanceLow, r.ResistanceHigh = figure.Open(b.ohms.gaps...), figure.Open(b.ohms.gaps...)
		if !b.ohms.open() {
			working := b.ohms.working
			r.ResistanceLow = figure.Worked(1000*b.ohms.low, "mohm", func() []figure.Step { return working()[:1] })
			r.ResistanceHigh = figure.Worked(1000*b.ohms.high, "mohm", func() []figure.Step { steps := working(); return steps[len(steps)-1:] })
		}
		a.setDisconnect(r, i)
	}
}

// setDisconnect finds the switch of each ungrounded terminal. In an insulated
// system both poles need one; the longer way counts.
func (a *analysis) setDisconnect(r *BatteryResult, i int) {
	b := &a.net.branches[i]
	nodes := []int{b.a}
	switch a.poles.earth {
	case earthPositive:
		nodes = []int{b.b}
	case earthNone:
		nodes = []int{b.a, b.b}
	}
	for k, node := range nodes {
		cut := a.cutOff(a.bankEnd(i, node))
		for _, id := range cut.bypass {
			if !slices.Contains(r.Bypass, id) {
				r.Bypass = append(r.Bypass, id)
			}
		}
		if k == 0 {
			r.Switched = cut.switched
		} else {
			r.Switched = both(r.Switched, cut.switched)
		}
		switch {
		case k == 0:
			r.Disconnect, r.SwitchLength = cut.by, cut.length
		case cut.by == "" || r.Disconnect == "":
			r.Disconnect, r.SwitchLength = "", cut.length
		case !cut.length.Known || r.SwitchLength.Known && cut.length.Value > r.SwitchLength.Value:
			r.SwitchLength = cut.length
		}
	}
}

// bankEnd returns the terminal at which the current of a battery leaves its
// bank: through the batteries in series with it.
func (a *analysis) bankEnd(i, node int) int {
	seen := map[int]bool{i: true}
	for {
		next := -1
		for _, t := range a.poles.all {
			o := &a.net.branches[t.branch]
			if o.class != batteryClass || seen[t.branch] || !t.reaches[node] {
				continue
			}
			if up := node == a.net.branches[i].a; up && t.node == o.b || !up && t.node == o.a {
				next = t.branch
				break
			}
		}
		if next < 0 {
			return node
		}
		seen[next] = true
		if node == a.net.branches[i].a {
			node = a.net.branches[next].a
		} else {
			node = a.net.branches[next].b
		}
		i = next
	}
}

// cut is how a battery terminal can be cut off.
type cut struct {
	by       string
	switched figure.Truth
	bypass   []string
	length   figure.Figure
}

// cutOff follows the ways from a battery terminal up to the first switch on
// each. The disconnect is the switch recorded as such, else a main or selector
// switch, else the only one that is reached. Behind a relay that joins two
// batteries stands the switch of the other one.
func (a *analysis) cutOff(start int) cut {
	n := a.net
	parent := map[int]step{}
	var switches []int // branches, in the order reached
	var ends []int     // nodes from which current flows on unswitched
	w := pastNoSwitch
	a.search.run(start, w, func(at, node int) {
		if over, ok := a.search.reached(at); ok {
			if _, known := parent[node]; !known && node != start {
				parent[node] = over
			}
		}
		for _, j := range n.at[node] {
			b := &n.branches[j]
			switch {
			case b.kind == contact && b.class == switchClass, b.kind == device && isolates(b):
				if !slices.Contains(switches, j) {
					switches = append(switches, j)
				}
			case isDraw(b), b.kind == source && node != start:
				ends = append(ends, node)
			}
		}
	})
	switches = slices.DeleteFunc(switches, func(j int) bool { return a.ofAnother(parent, start, &n.branches[j]) })
	chosen := a.pickSwitch(switches)
	switched := a.cuts(chosen, switches)
	trunk := map[int]bool{start: true}
	c := cut{switched: switched, length: figure.Open(figure.Because("no switch stands in its ungrounded conductors"))}
	if chosen >= 0 {
		b := &n.branches[chosen]
		c.by = b.id
		node := nearEnd(parent, start, b)
		c.length = a.wayLength(parent, start, node, c.by)
		for at := node; at != start; at = parent[at].node {
			trunk[at] = true
		}
	}
	for _, end := range ends {
		last := -1
		for at := end; !trunk[at]; at = parent[at].node {
			if n.branches[parent[at].branch].kind == wire {
				last = parent[at].branch
			}
		}
		if last >= 0 && !slices.Contains(c.bypass, n.branches[last].id) {
			c.bypass = append(c.bypass, n.branches[last].id)
		}
	}
	return c
}

// nearEnd returns the end of a branch that a way from start has reached.
func nearEnd(parent map[int]step, start int, b *branch) int {
	if _, reached := parent[b.a]; !reached && b.a != start {
		return b.b
	}
	return b.a
}

// ofAnother tells whether the way from a battery to a switch leads over a relay
// and then over the terminal of another battery: the relay opens by itself and
// leaves this battery to what stands on its own side. Batteries wired together
// are one bank, and one switch serves them.
func (a *analysis) ofAnother(parent map[int]step, start int, sw *branch) bool {
	other := false
	for at := nearEnd(parent, start, sw); at != start; at = parent[at].node {
		other = other || slices.ContainsFunc(a.net.at[at], func(j int) bool { return a.net.branches[j].class == batteryClass })
		over := &a.net.branches[parent[at].branch]
		if other && over.kind == contact && over.class == relayClass {
			return true
		}
	}
	return false
}

func (a *analysis) wayLength(parent map[int]step, start, node int, by string) figure.Figure {
	var way []int
	for at := node; at != start; at = parent[at].node {
		if i := parent[at].branch; a.net.branches[i].kind == wire {
			way = append(way, i)
		}
	}
	slices.Reverse(way)
	if len(way) == 0 {
		return figure.Worked(0, "mm", func() []figure.Step {
			return []figure.Step{{Formula: "length to " + by + ": none, it stands on the battery terminal", Result: 0, Unit: "mm"}}
		})
	}
	return lengthFigure(a.net, way, a.net.nodes[start].name, by)
}

// pickSwitch chooses the disconnect among the first switches on the ways from a
// battery.
func (a *analysis) pickSwitch(switches []int) int {
	for _, duties := range [][]string{{"battery-disconnect"}, {"battery-selector", "main"}} {
		for _, i := range switches {
			if slices.Contains(duties, a.net.branches[i].comp.Duty.V) {
				return i
			}
		}
	}
	only := -1
	for _, i := range switches {
		b := &a.net.branches[i]
		if b.comp.Duty.Is() {
			continue
		}
		if only >= 0 && a.net.branches[only].id != b.id {
			return -1
		}
		only = i
	}
	return only
}

// cuts tells whether the chosen switch is the battery's disconnect, or whether
// there is none. A switch whose duty is not recorded may be one or not.
func (a *analysis) cuts(chosen int, switches []int) figure.Truth {
	if chosen >= 0 && a.net.branches[chosen].comp.Duty.Is() {
		return figure.True()
	}
	var gaps []figure.Gap
	for _, i := range switches {
		c := a.net.branches[i].comp
		gap := figure.Missing(c.Path + ".duty")
		if !c.Duty.Is() && !slices.Contains(gaps, gap) {
			gaps = append(gaps, gap)
		}
	}
	if len(gaps) > 0 {
		return figure.OpenTruth(gaps...)
	}
	return figure.False()
}

// setComponents fills in what flows through each component.
func (a *analysis) setComponents() {
	for k := range a.net.parts {
		p := &a.net.parts[k]
		r := &a.parts[k]
		var running, surge peak
		for i := p.start; i < p.end; i++ {
			if a.net.branches[i].kind != coil {
				surge.gaps = append(surge.gaps, a.unstated[i]...)
				running.join(&a.peaks.running[i])
				surge.join(&a.peaks.surge[i])
			}
		}
		if p.class.oneNode() && p.first >= 0 {
			node := a.net.terminals[p.first].node
			if bus := a.peaks.bus[node]; bus != nil {
				for _, i := range a.net.at[node] {
					surge.gaps = append(surge.gaps, a.unstated[i]...)
				}
				running.join(&bus.running)
				surge.join(&bus.surge)
			}
		}
		r.Through, _ = running.figure("greatest current through it, starting and stall aside")
		r.Surge, _ = surge.figure("greatest current through it while starting or stalled")
		r.NominalV = a.componentNominal(p)
	}
}

// componentNominal returns the nominal voltage of the circuit that a component
// stands in: between its poles, or of its node above the negative pole.
func (a *analysis) componentNominal(p *part) figure.Figure {
	for i := p.start; i < p.end; i++ {
		b := &a.net.branches[i]
		switch {
		case b.kind == load || b.kind == source && p.class != batteryClass:
			return a.nominalOver(b)
		case b.kind == source:
			if v, ok := a.net.ratedVolts(b.comp); ok {
				return nominalFigure(quantity.Round(v), func() string { return a.net.ratedFrom(b.comp) })
			}
			return figure.Open(figure.Missing(b.path + ".nominal"))
		case b.kind == device || b.kind == contact:
			return a.deviceNominal(b)
		}
	}
	return a.systemVolts()
}
