package copper

import (
	"fmt"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// Working names the table and row, or the formula: area, greatest and least
// resistance.
func (w Wire) Working() []figure.Step {
	return []figure.Step{w.AreaStep(), w.R20Step(), w.r20LowStep()}
}

// AreaStep returns the working of the area.
func (w Wire) AreaStep() figure.Step {
	from := "size " + w.spec.Size.String()
	step := figure.Step{Result: quantity.Round(w.AreaMM2), Unit: "mm2"}
	switch w.spec.Size.System {
	case quantity.MM2:
		step.Formula, step.Source = "copper area: nominal area of a metric size", sourceIEC
		step.Inputs = []figure.Input{{Symbol: "A", Value: w.AreaMM2, Unit: "mm2", From: from}}
		step.Result = w.AreaMM2
	case quantity.SAE:
		step.Formula, step.Source = "copper area: the least of an SAE gauge, row "+w.spec.Size.String(), sourceSAE
		step.Inputs = []figure.Input{{Symbol: "CM (circular mil)", Value: quantity.Round(w.CircularMils), From: from}}
	default:
		step.Formula, step.Source = "copper area: A = π/4·d², d = 0.127 mm × 92^((36 − n)/39)", sourceAWG
		step.Inputs = []figure.Input{{Symbol: "n", Value: float64(w.spec.Size.Gauge), From: from}}
	}
	return step
}

// R20Step returns the working of R20.
func (w Wire) R20Step() figure.Step {
	size := w.spec.Size
	if size.System != quantity.MM2 {
		return w.gaugeStep("greatest", w.AreaMM2, layOf(w.spec.Class).greatest, tinOf(w.spec.Tinned).greatest, w.R20)
	}
	return figure.Step{
		Formula: fmt.Sprintf("greatest resistance at 20 °C: IEC 60228, row %s, %s", size, w.column), Source: sourceIEC,
		Inputs: []figure.Input{{Symbol: "size", Value: size.MM2, Unit: "mm2", From: "size " + size.String()}},
		Result: quantity.Round(1000 * w.R20), Unit: "ohm/km",
	}
}

// r20LowStep returns the working of R20Low.
func (w Wire) r20LowStep() figure.Step {
	size := w.spec.Size
	if size.System != quantity.MM2 {
		_, greatest, _ := area(size)
		return w.gaugeStep("least", greatest, layOf(w.spec.Class).least, tinOf(w.spec.Tinned).least, w.R20Low)
	}
	return figure.Step{
		Formula: "least resistance at 20 °C: r = ρ / A, solid copper of the nominal area", Source: sourceIACS,
		Inputs: []figure.Input{
			{Symbol: "ρ (Ω·mm²/km)", Value: quantity.Round(1000 * Resistivity), From: sourceIACS},
			{Symbol: "A", Value: size.MM2, Unit: "mm2", From: "size " + size.String()},
		},
		Result: quantity.Round(1000 * w.R20Low), Unit: "ohm/km",
	}
}

func (w Wire) gaugeStep(end string, a, f, t, r float64) figure.Step {
	lay, tin := layOf(w.spec.Class), tinOf(w.spec.Tinned)
	return figure.Step{
		Formula: end + " resistance at 20 °C: r = ρ·f·t / A",
		Source:  sourceIACS + "; f: " + lay.source + "; t: " + tin.source,
		Inputs: []figure.Input{
			{Symbol: "ρ (Ω·mm²/km)", Value: quantity.Round(1000 * Resistivity), From: sourceIACS},
			{Symbol: "f (stranding)", Value: f, From: lay.source},
			{Symbol: "t (tin)", Value: t, From: tin.source},
			{Symbol: "A", Value: quantity.Round(a), Unit: "mm2", From: "size " + w.spec.Size.String()},
		},
		Result: quantity.Round(1000 * r), Unit: "ohm/km",
	}
}
