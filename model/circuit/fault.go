package circuit

import (
	"math"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
)

// setDeviceFault bounds the current of a bolted fault at a device's load
// terminal, to the negative terminal of a battery. The greatest is with the
// batteries' least resistance and cold conductors; the least with their greatest
// resistance and conductors at working temperature.
func (a *analysis) setDeviceFault(r *DeviceResult, i int, at *behind) {
	fam := a.solver.family(a.solver.base, full)
	if at != nil {
		fam = at.fam
	}
	r.FaultHighA = a.greatestFault(a.net.branches[i].b, fam, leastOhms).figure()
	r.FaultLowA = a.greatestFault(a.net.branches[i].b, fam, greatestOhms).figure()
}

// behind is how a branch on the way out to a load stands to it: its ends, and
// what the way back of a fault at its far end would add. That is taken as the
// same share of the load's way back as the far end has of the way out, by length:
// the two run side by side. Of several loads the longest such way counts.
type behind struct {
	far, near int
	fam       *family
	back      int // negative terminal of the source
	ohms      float64
	gaps      []figure.Gap
	load      int
}

// findBehind notes, for every branch on the way out to a load, what lies behind.
func (a *analysis) findBehind() map[int]*behind {
	found := map[int]*behind{}
	for _, l := range a.solver.loads {
		for _, t := range a.solver.solveAlone(l) {
			if t.flow.source >= 0 {
				a.noteBehind(found, l, t)
			}
		}
	}
	return found
}

func (a *analysis) noteBehind(found map[int]*behind, l int, t *trial) {
	fam := t.lone.family
	m, _ := a.faultMesh(fam, greatestOhms)
	share := map[int]float64{} // current in each branch, of one ampere
	for _, h := range t.lone.own {
		share[h.branch] = math.Abs(h.amps)
	}
	back := 0.0
	var gaps []figure.Gap
	for _, i := range t.flow.back.branches {
		back += m.values.ohms[i] * share[i] * share[i]
		gaps = append(gaps, a.net.branches[i].ohms.gaps...)
	}
	total := 0.0
	along := make(map[int]float64, len(t.flow.out.branches))
	for _, i := range t.flow.out.branches {
		if b := &a.net.branches[i]; b.kind == wire {
			length, ok := sane(b.cond.Length)
			if !ok {
				gaps = append(gaps, figure.Missing(b.path+".length"))
			}
			total += length * share[i]
		}
		along[i] = total
	}
	for _, e := range t.flow.edges {
		covered, out := along[e.branch]
		if !out {
			continue
		}
		if total > 0 {
			covered /= total
		}
		next := &behind{
			far: e.to, near: e.from, fam: fam, back: a.net.branches[t.flow.source].b,
			ohms: back * min(1, covered), gaps: gaps, load: l,
		}
		if old := found[e.branch]; old == nil || len(gaps) > 0 && len(old.gaps) == 0 || next.ohms > old.ohms && len(old.gaps) == 0 {
			found[e.branch] = next
		}
	}
}

// ends returns the ends of a conductor that feeds no load, in a state in which a
// battery reaches it.
func (a *analysis) ends(i int) *behind {
	b := &a.net.branches[i]
	for _, f := range a.feedings {
		near := f.nearer(b, i)
		if near < 0 || a.net.branches[f.pole.branch].class != batteryClass {
			continue
		}
		at := &behind{far: b.other(near), near: near, fam: a.solver.family(a.solver.base, full), back: -1}
		for _, st := range a.solver.all {
			fam := a.solver.family(st.st, full)
			if m, _ := a.faultMesh(fam, greatestOhms); m.island[at.far] == m.island[f.pole.node] {
				at.fam = fam
				break
			}
		}
		return at
	}
	return nil
}

// setConductorFault fills in what a bolted fault does to a conductor.
func (a *analysis) setConductorFault(r *ConductorResult, i int, at *behind) {
	b := &a.net.branches[i]
	r.WithstandA2s = withstand(b, r)
	if at == nil {
		at = a.ends(i)
	}
	if r.Ungrounded.Known && !r.Ungrounded.Value || at == nil {
		why := figure.Because("no battery feeds it in the record")
		if r.Ungrounded.Known && !r.Ungrounded.Value {
			why = figure.Because("it is not ungrounded: a fault to ground passes it by")
		}
		open := figure.Open(why)
		r.FaultLowA, r.FaultHighA, r.ClearLeastS, r.ClearS = open, open, open, open
		r.LetThroughLeastA2s, r.LetThroughA2s = open, open
		r.Clears = figure.OpenTruth(why)
		return
	}
	high := a.greatestFault(at.far, at.fam, leastOhms)
	low := a.leastFault(at)
	r.FaultHighA, r.FaultLowA = high.figure(), low.figure()
	a.setCleared(r, low, high)
	a.setLetThrough(r, low, a.greatestFault(at.near, at.fam, leastOhms))
}

// leastFault returns the least fault at the far end of a branch.
func (a *analysis) leastFault(at *behind) *prospect {
	if at.back < 0 {
		return a.greatestFault(at.far, at.fam, greatestOhms)
	}
	return a.bolted(short{at: at.far, back: at.back, fam: at.fam, extra: at.ohms, gaps: at.gaps}, greatestOhms)
}

// setCleared tells whether and when a fault at the far end is cut off: at the
// latest if it is the least one, at the soonest if it is the greatest.
func (a *analysis) setCleared(r *ConductorResult, low, high *prospect) {
	gaps := uniqueGaps(append(append([]figure.Gap(nil), low.gaps...), high.gaps...))
	devices := a.devices(low)
	if len(gaps) == 0 && len(devices) == 0 {
		why := figure.Because("no device lies between the battery and the fault")
		r.Clears, r.ClearS, r.ClearLeastS = figure.False(), figure.Open(why), figure.Open(why)
		return
	}
	if len(gaps) > 0 {
		r.Clears, r.ClearS, r.ClearLeastS = figure.OpenTruth(gaps...), figure.Open(gaps...), figure.Open(gaps...)
		return
	}
	latest := a.clearing(low, low.amps).latest
	soonest := a.clearing(high, high.amps).soonest
	steps := append([]figure.Step{low.step}, a.openingSteps(devices, low.amps)...)
	r.ClearS = a.openFigure(latest, "s", devices, "no device on its way surely opens at "+ampere(low.amps), steps)
	steps = append([]figure.Step{high.step}, a.openingSteps(devices, high.amps)...)
	r.ClearLeastS = a.openFigure(soonest, "s", devices, "no device on its way opens at "+ampere(high.amps), steps)
	switch {
	case !latest.sure():
		r.Clears = figure.OpenTruth(a.releaseGaps(devices)...)
	default:
		r.Clears = truth(!math.IsInf(latest.worst, 1))
	}
}

// openFigure returns a time or an energy that devices decide: open where what is
// not recorded of them matters, or where none opens.
func (a *analysis) openFigure(b bound, unit string, devices []hop, never string, working []figure.Step) figure.Figure {
	switch {
	case !b.sure():
		return figure.Open(a.releaseGaps(devices)...)
	case math.IsInf(b.worst, 1):
		return figure.Open(figure.Because(never))
	}
	return figure.Of(b.worst, unit, working...)
}

func ampere(amps float64) string {
	return quantity.New(quantity.Round(amps), "A").Format(quantity.Metric)
}

// releaseGaps names what is not known of devices.
func (a *analysis) releaseGaps(devices []hop) []figure.Gap {
	if len(devices) > 0 && len(a.gapsOf.devices) == len(devices) && &a.gapsOf.devices[0] == &devices[0] {
		return a.gapsOf.gaps // asked for the same fault again
	}
	var gaps []figure.Gap
	for _, h := range devices {
		gaps = append(gaps, a.releaseOf(h.branch).gaps...)
	}
	a.gapsOf.devices, a.gapsOf.gaps = devices, uniqueGaps(gaps)
	return a.gapsOf.gaps
}

// openingSteps returns the working of the opening times of devices at a current.
func (a *analysis) openingSteps(devices []hop, amps float64) []figure.Step {
	var steps []figure.Step
	for _, h := range devices {
		rel := a.releaseOf(h.branch)
		if len(rel.gaps) > 0 {
			continue
		}
		o, err := rel.curve.OpeningTime(amps * math.Abs(h.amps))
		if err != nil {
			continue
		}
		for _, f := range []figure.Figure{o.Least(), o.Greatest()} {
			if f.Known {
				step := f.Working[0]
				step.Formula += ", " + a.net.branches[h.branch].id
				steps = append(steps, step)
			}
		}
	}
	return steps
}

// setLetThrough finds the greatest energy let through at any fault along the
// conductor: between the current at its far end and that at its near end, and at
// the gates of the devices in between, since the energy runs from gate to gate
// without a peak. The same with the devices as quick as they can be is what they
// let through in any case.
func (a *analysis) setLetThrough(r *ConductorResult, low, high *prospect) {
	gaps := uniqueGaps(append(append([]figure.Gap(nil), low.gaps...), high.gaps...))
	devices := a.devices(low)
	if len(gaps) == 0 && len(devices) == 0 {
		gaps = []figure.Gap{figure.Because("no device lies between the battery and the fault")}
	}
	if len(gaps) > 0 {
		r.LetThroughA2s, r.LetThroughLeastA2s = figure.Open(gaps...), figure.Open(gaps...)
		return
	}
	currents := []float64{low.amps, max(low.amps, high.amps)}
	for _, h := range devices {
		share := math.Abs(h.amps)
		for _, v := range a.releaseOf(h.branch).gateAmps(low.amps*share, high.amps*share) {
			currents = append(currents, v/share)
		}
	}
	var most, least bound
	at := 0.0
	for _, amps := range currents {
		c := a.clearing(low, amps)
		if c.most.worst > most.worst {
			at = amps
		}
		most, least = most.greatest(c.most), least.greatest(c.least)
	}
	const never = "no device on its way surely opens at every fault along it"
	steps := append([]figure.Step{low.step, high.step}, a.openingSteps(devices, at)...)
	if !math.IsInf(most.worst, 1) {
		steps = append(steps, energyStep("greatest", at, most.worst))
	}
	r.LetThroughA2s = a.openFigure(most, "A2s", devices, never, steps)
	r.LetThroughLeastA2s = a.openFigure(least, "A2s", devices, never, []figure.Step{low.step, high.step, energyStep("least", at, least.worst)})
}

func energyStep(end string, amps, energy float64) figure.Step {
	return figure.Step{
		Formula: end + " energy let through along the conductor: I²·t of the device that opens first", Source: "common physics",
		Inputs: []figure.Input{{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: "the unfavourable fault between both ends"}},
		Result: quantity.Round(energy), Unit: "A2s",
	}
}

// withstand returns what the insulation of a conductor stands.
func withstand(b *branch, r *ConductorResult) figure.Figure {
	rating, ok := number(b.cond.Insulation)
	gaps := append([]figure.Gap(nil), r.AreaMM2.Gaps...)
	if !ok {
		gaps = append(gaps, figure.Missing(b.path+".insulation"))
	}
	if len(gaps) > 0 {
		return figure.Open(gaps...)
	}
	w, err := copper.Withstand(b.cond.Compound.V, rating)
	if err != nil {
		return figure.Open(figure.Because(b.path + ": " + err.Error()))
	}
	f := copper.WithstandEnergy(w.K, r.AreaMM2.Value)
	f.Working = append([]figure.Step{w.Working}, f.Working...)
	return f
}
