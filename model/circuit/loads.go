package circuit

import (
	"math"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const sourceNodal = "nodal analysis, Kirchhoff's laws"

// setLoads fills in what each load draws and what voltage reaches it.
func (a *analysis) setLoads() {
	for _, l := range a.solver.loads {
		b := &a.net.branches[l]
		r := a.result.Loads[b.id]
		r.NominalV = a.nominalOver(b)
		trials := a.solver.solveAlone(l)
		if len(trials) == 0 {
			a.setUnfed(r, b)
			continue
		}
		r.Fed = figure.True()
		for k, t := range trials {
			a.setAlone(r, l, t, k == 0)
		}
	}
}

// inSeries returns the devices on the way out of a load's current that carry all of
// it.
func (a *analysis) inSeries(t *trial) []string {
	var whole []int
	for _, i := range t.way.out.branches {
		if a.net.branches[i].kind == device && alike(t.lone.share(i), 1) {
			whole = append(whole, i)
		}
	}
	return a.net.names(whole)
}

func (a *analysis) setUnfed(r *LoadResult, b *branch) {
	gaps := a.unfedGaps(b)
	if p, bad := a.shortedAt(b); bad {
		gaps = []figure.Gap{figure.Because(p.Says)}
	}
	r.Fed = figure.False()
	if len(gaps) > 1 || gaps[0].Field != "" {
		r.Fed = figure.OpenTruth(gaps...)
	}
	open := figure.Open(gaps...)
	r.Current, r.DropFormulaV, r.DropNetworkV, r.VoltageV, r.LowVoltageV = open, open, open, open, open
	if b.draw == constantCurrent && !b.current.open() {
		r.Current = currentFigure(b.current.high, b, "nameplate")
	}
}

// setAlone takes in one way of running a load alone; of several the
// unfavourable figures stay.
func (a *analysis) setAlone(r *LoadResult, l int, t *trial, first bool) {
	b := &a.net.branches[l]
	f := &t.way
	if first {
		r.Out, r.Back = a.net.wireIDs(f.out.branches), a.net.wireIDs(f.back.branches)
		r.Devices = a.net.partIDs(f.out.branches, func(b *branch) bool { return b.kind == device })
		r.InSeries = a.inSeries(t)
		r.Switches = a.net.partIDs(f.out.branches, func(b *branch) bool { return b.kind == contact && b.class == switchClass })
		if f.source >= 0 {
			r.Source = a.net.nodes[a.net.branches[f.source].a].name
		}
	}
	problem, bad := t.fault(b.a)
	set := func(to *figure.Figure, next figure.Figure, worse func(a, b float64) bool) {
		if bad {
			next = figure.Open(figure.Because(problem.Says))
		}
		if first || to.Known && (!next.Known || worse(next.Value, to.Value)) {
			*to = next
		}
	}
	greater := func(a, b float64) bool { return a > b }
	smaller := func(a, b float64) bool { return a < b }
	set(&r.Current, a.aloneCurrent(t, l), greater)
	set(&r.DropFormulaV, a.formulaDrop(t, f), greater)
	set(&r.DropNetworkV, a.networkDrop(t, l, f), greater)
	set(&r.VoltageV, a.voltage(t, t.lone), smaller)
	lowest := a.solver.family(t.lone.family.state, low).aloneLike(t.lone)
	if len(t.pulls) > 1 && lowest != nil {
		lowest = lowest.again(t.pulls[1:])
	}
	if lowest == nil {
		set(&r.LowVoltageV, figure.Open(figure.Because("case "+t.name+" has no solution")), smaller)
		return
	}
	if lowest.problem != nil && !bad {
		set(&r.LowVoltageV, figure.Open(figure.Because(lowest.problem.Says)), smaller)
		return
	}
	set(&r.LowVoltageV, a.voltage(t, lowest), smaller)
}

func currentFigure(amps float64, b *branch, from string) figure.Figure {
	return figure.Worked(amps, "A", func() []figure.Step {
		field := b.path + ".current"
		if !b.comp.Current.Is() {
			field = b.path + ".power"
		}
		var steps []figure.Step
		if b.current.working != nil {
			steps = b.current.working()
		}
		return append(steps, figure.Step{
			Formula: "current of the load: I, " + from, Source: sourceNodal,
			Inputs: []figure.Input{{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: field}}, Result: quantity.Round(amps), Unit: "A",
		})
	})
}

func (a *analysis) aloneCurrent(t *trial, l int) figure.Figure {
	b := &a.net.branches[l]
	own := a.net.pullGaps(pull{branch: l})
	amps := t.amps(l)
	switch {
	case len(own) > 0:
		return figure.Open(own...)
	case !amps.known:
		return figure.Open(a.blame(t, l)...)
	}
	return currentFigure(amps.value, b, t.name)
}

func (a *analysis) voltage(t *trial, l *lone) figure.Figure {
	v := l.family.least(l.voltage)
	if !v.known {
		gaps := append([]figure.Gap(nil), a.net.pullGaps(pull{branch: l.load})...)
		at := &trial{name: t.name, pulls: t.pulls, solved: l}
		return figure.Open(uniqueGaps(append(gaps, at.openWays(a.net)...))...)
	}
	return figure.Worked(v.value, "V", func() []figure.Step { return []figure.Step{a.voltageStep(t, l, v.value)} })
}

// nominalOver returns the nominal voltage between two nodes: that of the
// batteries on the way from one to the other, those in series added.
func (a *analysis) nominalOver(b *branch) figure.Figure {
	return a.nominalBetween(b.a, b.b)
}

func (a *analysis) nominalBetween(from, to int) figure.Figure {
	levels := a.levels()
	va, vb := levels[from], levels[to]
	if va.island != vb.island || va.island < 0 || math.Abs(va.volts-vb.volts) < tiny {
		return a.systemVolts()
	}
	if va.open || vb.open {
		return figure.Open(figure.Missing(a.net.vesselPath("system")))
	}
	return nominalFigure(math.Abs(va.volts-vb.volts), func() string {
		return "batteries between " + a.net.nodes[from].name + " and " + a.net.nodes[to].name
	})
}

// systemVolts returns the vessel's recorded system voltage.
func (a *analysis) systemVolts() figure.Figure {
	if a.system.Known || len(a.system.Gaps) > 0 {
		return a.system
	}
	a.system = a.findSystemVolts()
	return a.system
}

func (a *analysis) findSystemVolts() figure.Figure {
	if v, ok := sane(&a.net.record.Vessel.System); ok {
		return nominalFigure(v, func() string { return a.net.vesselPath("system") })
	}
	return figure.Open(figure.Missing(a.net.vesselPath("system")))
}

func nominalFigure(v float64, from func() string) figure.Figure {
	return figure.Worked(v, "V", func() []figure.Step {
		return []figure.Step{{
			Formula: "nominal voltage of the circuit", Source: "the record; batteries in series add",
			Inputs: []figure.Input{{Symbol: "U", Value: v, Unit: "V", From: from()}}, Result: v, Unit: "V",
		}}
	})
}
