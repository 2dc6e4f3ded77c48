package circuit

import (
	"slices"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
)

// formulaDrop sums the standards' formula over the way out and back on which it
// comes out greatest.
func (a *analysis) formulaDrop(t *trial, f *flow) figure.Figure {
	if f.source < 0 {
		return figure.Open(figure.Because("case " + t.name + " has no solution"))
	}
	var gaps []figure.Gap
	if a.drops == nil {
		a.drops = make([]float64, len(a.net.branches))
	}
	f.each(func(i int) {
		if a.net.branches[i].kind == wire {
			drop, missing := a.wireDrop(t, i)
			gaps = append(gaps, missing...)
			a.drops[i] = drop
		}
	})
	if len(gaps) > 0 {
		return figure.Open(uniqueGaps(gaps)...)
	}
	drop := func(i int) float64 { return a.drops[i] }
	out, back := f.out.greatest(drop), f.back.greatest(drop)
	return figure.Worked(out+back, "V", func() []figure.Step { return a.formulaSteps(t) })
}

// dropOf returns the drop of each branch by the standards' formula, which is that
// of its conductor.
func (a *analysis) dropOf(t *trial) func(branch int) float64 {
	return func(i int) float64 {
		if a.net.branches[i].kind != wire {
			return 0
		}
		drop, _ := a.wireDrop(t, i)
		return drop
	}
}

func (a *analysis) formulaSteps(t *trial) []figure.Step {
	out, outWay := t.way.out.worst(a.dropOf(t))
	back, backWay := t.way.back.worst(a.dropOf(t))
	var working []figure.Step
	var inputs []figure.Input
	for _, i := range slices.Concat(outWay, backWay) {
		if b := &a.net.branches[i]; b.kind == wire {
			length, _ := sane(&b.cond.Length)
			drop := copper.Drop(t.amps(i).value, length, b.metal.wire.CircularMils)
			step := drop.Working()[0]
			step.Formula += ", conductor " + b.id
			step.Inputs = placed(step.Inputs, b.path)
			working = append(working, step)
			inputs = append(inputs, figure.Input{Symbol: "E(" + b.id + ")", Value: drop.Value, Unit: "V", From: b.path})
		}
	}
	return append(working, figure.Step{
		Formula: "drop out and back: sum over the conductors", Source: "Kirchhoff's voltage law",
		Inputs: inputs, Result: quantity.Round(out + back), Unit: "V",
	})
}

// placed names the conductor's own entries as the origin of a drop's inputs.
func placed(inputs []figure.Input, path string) []figure.Input {
	out := append([]figure.Input(nil), inputs...)
	for i := range out {
		switch out[i].From {
		case "current":
			out[i].From = path + ", current with the load alone"
		case "length of the conductor":
			out[i].From = path + ".length"
		case "copper area":
			out[i].From = path + ".size"
		}
	}
	return out
}

// wireDrop returns the drop of one conductor by the standards' formula, in V.
func (a *analysis) wireDrop(t *trial, i int) (float64, []figure.Gap) {
	b := &a.net.branches[i]
	var gaps []figure.Gap
	gaps = append(gaps, b.metal.gaps...)
	length, ok := sane(&b.cond.Length)
	if !ok {
		gaps = append(gaps, figure.Missing(b.path+".length"))
	}
	amps := t.amps(i)
	if !amps.known {
		gaps = append(gaps, a.blame(t, i)...)
	}
	if len(gaps) > 0 {
		return 0, gaps
	}
	volts, ok := copper.DropV(amps.value, length, b.metal.wire.CircularMils)
	if !ok {
		return 0, copper.Drop(amps.value, length, b.metal.wire.CircularMils).Gaps
	}
	return quantity.Round(volts), nil
}

func (a *analysis) networkDrop(t *trial, l int, f *flow) figure.Figure {
	if f.source < 0 {
		return figure.Open(figure.Because("case " + t.name + " has no solution"))
	}
	drop := t.lone.family.greatest(func(k int) (float64, bool) {
		u, ok := t.lone.bankVolts(k, f.bank)
		v, fine := t.lone.voltage(k)
		return u - v, ok && fine
	})
	if !drop.known {
		return figure.Open(a.dropGaps(t, l, f)...)
	}
	return figure.Worked(drop.value, "V", func() []figure.Step { return []figure.Step{a.dropStep(t, drop.value)} })
}

// dropGaps names what is not known of the load and of the ways that its current
// takes.
func (a *analysis) dropGaps(t *trial, l int, f *flow) []figure.Gap {
	gaps := append([]figure.Gap(nil), a.net.pullGaps(pull{branch: l})...)
	for _, i := range f.all() {
		gaps = append(gaps, a.net.branches[i].ohms.gaps...)
	}
	if len(gaps) == 0 {
		return t.openWays(a.net)
	}
	return uniqueGaps(gaps)
}
