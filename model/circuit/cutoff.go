package circuit

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// setCleared tells whether and when a fault at the far end is cut off: at the
// latest if it is the least one, which least says, at the soonest if it is the
// greatest.
func (a *analysis) setCleared(f *faulted, low, high *prospect, least cleared) {
	gaps := uniqueGaps(slices.Concat(low.gaps, high.gaps))
	devices := a.devices(low)
	if len(gaps) == 0 && len(devices) == 0 {
		why := figure.Because("no device lies between the battery and the fault")
		f.clears, f.latest, f.by, f.soonest = figure.False(), figure.Open(why), figure.Open(why), figure.Open(why)
		return
	}
	if len(gaps) > 0 {
		f.clears, f.latest, f.by, f.soonest = figure.OpenTruth(gaps...), figure.Open(gaps...), figure.Open(gaps...), figure.Open(gaps...)
		return
	}
	latest := least.latest
	soonest := a.clearing(high, high.amps).soonest
	never := func() string { return "no device on its way surely opens at " + ampere(low.amps) }
	working := func() []figure.Step { return a.openingSteps(low.steps(), devices, low.amps) }
	f.latest = a.openFigure(latest, "s", devices, never, working)
	f.by = a.openFigure(latest.ceiling(), "s", devices, never, working)
	f.soonest = a.openFigure(soonest, "s", devices,
		func() string { return "no device on its way opens at " + ampere(high.amps) },
		func() []figure.Step { return a.openingSteps(high.steps(), devices, high.amps) })
	f.clears = a.surelyOpens(latest, devices)
}

// surelyOpens tells whether one of the devices does, whatever the others do of
// which not all is known.
func (a *analysis) surelyOpens(latest bound, devices []hop) figure.Truth {
	if b := latest.ceiling(); !b.sure() {
		return figure.OpenTruth(a.releaseGaps(devices)...)
	}
	return truth(!math.IsInf(latest.worst, 1))
}

// openFigure returns a time or an energy that devices decide: open where what is
// not recorded of them matters, or where none opens: never says so then.
func (a *analysis) openFigure(b bound, unit string, devices []hop, never func() string, working func() []figure.Step) figure.Figure {
	switch {
	case !b.sure():
		return figure.Open(a.releaseGaps(devices)...)
	case math.IsInf(b.worst, 1):
		return figure.Open(figure.Because(never()))
	}
	return figure.Worked(b.worst, unit, working)
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

// openingSteps adds the working of the opening times of devices at a current.
func (a *analysis) openingSteps(steps []figure.Step, devices []hop, amps float64) []figure.Step {
	for _, h := range devices {
		rel := a.releaseOf(h.branch)
		if len(rel.gaps) > 0 {
			continue
		}
		o, err := rel.curve.OpeningTime(amps * math.Abs(h.amps))
		if err != nil {
			continue
		}
		for _, step := range o.Steps() {
			step.Formula += ", " + a.net.branches[h.branch].id
			steps = append(steps, step)
		}
	}
	return steps
}

// setLetThrough finds the greatest energy let through at any fault along the
// conductor: between the current at its far end and that at its near end, and at
// the gates of the devices in between, since the energy runs from gate to gate
// without a peak. The same with the devices as quick as they can be is what they
// let through in any case. atLow says how the current at the far end is cut off.
func (a *analysis) setLetThrough(f *faulted, low, high *prospect, atLow cleared) {
	gaps := uniqueGaps(slices.Concat(low.gaps, high.gaps))
	devices := a.devices(low)
	if len(gaps) == 0 && len(devices) == 0 {
		gaps = []figure.Gap{figure.Because("no device lies between the battery and the fault")}
	}
	if len(gaps) > 0 {
		f.most, f.upTo, f.least = figure.Open(gaps...), figure.Open(gaps...), figure.Open(gaps...)
		return
	}
	var room [32]float64
	currents := append(room[:0], low.amps, max(low.amps, high.amps))
	for _, h := range devices {
		currents = a.releaseOf(h.branch).gateAmps(currents, math.Abs(h.amps), low.amps, high.amps)
	}
	var most, least bound
	at := 0.0
	for k, amps := range currents {
		c := atLow
		if k > 0 && amps != low.amps {
			c = a.clearing(low, amps)
		}
		if c.most.worst > most.worst {
			at = amps
		}
		most, least = most.greatest(c.most), least.greatest(c.least)
	}
	never := func() string { return "no device on its way surely opens at every fault along it" }
	working := func() []figure.Step {
		steps := a.openingSteps([]figure.Step{low.step(), high.step()}, devices, at)
		return append(steps, energyStep("greatest", at, most.worst))
	}
	f.most = a.openFigure(most, "A2s", devices, never, working)
	f.upTo = a.openFigure(most.ceiling(), "A2s", devices, never, working)
	if !most.sure() {
		f.most = figure.Open(a.energyGaps(devices, max(low.amps, high.amps))...)
		if !f.upTo.Known {
			f.upTo = f.most
		}
	}
	f.least = a.openFigure(least, "A2s", devices, never, func() []figure.Step {
		return []figure.Step{low.step(), high.step(), energyStep("least", at, least.worst)}
	})
}

// energyGaps names what leaves open the energy that devices let through.
func (a *analysis) energyGaps(devices []hop, amps float64) []figure.Gap {
	gaps := append([]figure.Gap(nil), a.releaseGaps(devices)...)
	for _, h := range devices {
		if r := a.releaseOf(h.branch); len(r.gaps) == 0 {
			_, greatest := r.curve.LetThrough(amps * math.Abs(h.amps))
			for _, g := range greatest.Gaps {
				g.Field = a.net.branches[h.branch].comp.Path + ".curve_points"
				gaps = append(gaps, g)
			}
		}
	}
	return uniqueGaps(gaps)
}

func energyStep(end string, amps, energy float64) figure.Step {
	return figure.Step{
		Formula: end + " energy let through along the conductor: I²·t of the device that opens first", Source: "common physics",
		Inputs: []figure.Input{{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: "the unfavourable fault between both ends"}},
		Result: quantity.Round(energy), Unit: "A2s",
	}
}
