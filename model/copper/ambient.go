package copper

import (
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// Table5AmbientC is the air temperature that Table 5 holds for: 30 °C (86 °F).
	//
	// Source: Coast Guard boatbuilder guideline to 33 CFR 183.425(b) and (c);
	// secondary. The regulation itself names neither.
	Table5AmbientC = 30
	// EngineSpaceC is the air temperature that note 1 corrects to: 50 °C (122 °F).
	// Source: as for Table5AmbientC.
	EngineSpaceC = 50

	sourceAmbient = "steady heat balance from the 30 °C of Table 5 (Coast Guard guideline to 33 CFR 183.425, secondary); computed, not printed"
	sourceNote2   = "33 CFR 183.425 Table 5 note 2, CFR annual edition 2015; numbers read; there for 50 V and more, use below 50 V from memory, unverified"
)

// AmbientFactor returns the factor on an amperage given for 30 °C air, for a
// conductor in other air that may reach the same temperature. It is never above
// 1: cooler air earns nothing.
//
//	f = sqrt((Tr − Ta) / (Tr − 30))
//
// Given: insulationC rating Tr [°C]; ambientC air Ta [°C].
// Errors: *NoValue where the air is as hot as the rating or hotter, or the
// rating is not above 30 °C.
// Accuracy: within 1 % of note 1 to Table 5 at 50 °C for ratings of 60 to 125 °C;
// 6 % below it at 200 °C.
// Source: I² ∝ Tr − Ta, common physics; computed.
func AmbientFactor(insulationC, ambientC float64) (float64, error) {
	if math.IsNaN(insulationC) || math.IsNaN(ambientC) || insulationC <= Table5AmbientC {
		return 0, noValue(sourceAmbient, "an insulation rating of %g °C leaves no rise above the 30 °C that amperages are given for", insulationC)
	}
	if ambientC >= insulationC {
		return 0, noValue(sourceAmbient, "the air at %g °C is not cooler than the %g °C that the insulation stands", ambientC, insulationC)
	}
	return min(1, math.Sqrt((insulationC-ambientC)/(insulationC-Table5AmbientC))), nil
}

// BundleFactor returns the factor on an allowable amperage for conductors that
// run together, by the number of those that carry current.
//
// Errors: *NoValue for a count below 1.
// Source: 33 CFR 183.425 Table 5 note 2, CFR annual edition 2015: 3: 0.70; 4 to
// 6: 0.60; 7 to 24: 0.50; 25 and more: 0.40; read. By 183.435(b) it binds
// conductors of 50 V and more; its use below 50 V is from memory, unverified.
func BundleFactor(count int) (float64, error) {
	switch {
	case count < 1:
		return 0, noValue(sourceNote2, "%d current-carrying conductors are no bundle", count)
	case count <= 2:
		return 1, nil
	case count == 3:
		return 0.70, nil
	case count <= 6:
		return 0.60, nil
	case count <= 24:
		return 0.50, nil
	}
	return 0.40, nil
}

// Allowable returns the allowable amperage in A of a conductor where it runs,
// with its working: Table 5 times the correction for the space.
//
// Given: ambientC is the recorded air temperature of the space, nil if there is
// none; then Table 5 stands for 30 °C, and in an engine space note 1 for 50 °C.
// In an engine space note 1 governs; if its air is recorded hotter than 50 °C,
// the lower of note 1 and the computed factor. Elsewhere air above 30 °C takes
// the computed factor. Both factors use the column of Table 5 that was read.
// The figure is open, with the reason, where any of them has no value.
func Allowable(size quantity.WireSize, insulationC float64, engineSpace bool, ambientC *float64) figure.Figure {
	base, err := Table5(size, insulationC)
	if err != nil {
		return figure.Open(figure.Because(err.Error()))
	}
	column, _ := Table5Column(insulationC)
	a := allowed{size: size, insulationC: insulationC, column: column, base: base, engine: 1, ambient: 1}
	threshold := float64(Table5AmbientC)
	if engineSpace {
		a.engineSpace = true
		a.engine, _ = Note1(insulationC)
		threshold = EngineSpaceC
	}
	if ambientC != nil && !(*ambientC <= threshold) {
		a.hot, a.ambientC = true, *ambientC
		if a.ambient, err = AmbientFactor(column, *ambientC); err != nil {
			return figure.Open(figure.Because(err.Error()))
		}
	}
	return figure.Worked(base*a.factor(), "A", a.steps)
}

// allowed is an amperage of Table 5 with what corrects it.
type allowed struct {
	size                quantity.WireSize
	insulationC, column float64
	base                float64 // A, of Table 5
	engineSpace, hot    bool    // which corrections there are
	engine, ambient     float64 // the factors, 1 for none
	ambientC            float64
}

func (a allowed) factor() float64 { return min(a.engine, a.ambient) }

func (a allowed) steps() []figure.Step {
	working := []figure.Step{table5Step(a.size, a.insulationC, a.base)}
	if a.engineSpace {
		working = append(working, figure.Step{
			Formula: "engine-space factor: note 1, column " + columnWords(a.insulationC, a.column), Source: sourceNote1,
			Inputs: []figure.Input{{Symbol: "insulation rating", Value: a.insulationC, Unit: "degC", From: "insulation"}},
			Result: a.engine,
		})
	}
	if a.hot {
		working = append(working, ambientStep(a.column, a.ambientC, a.ambient))
	}
	if len(working) == 1 {
		return working
	}
	return append(working, figure.Step{
		Formula: "corrected amperage: I = I5 · f, with the least factor", Source: "33 CFR 183.425(b), (c), CFR annual edition 2015; read",
		Inputs: []figure.Input{
			{Symbol: "I5", Value: a.base, Unit: "A", From: "Table 5"},
			{Symbol: "f", Value: quantity.Round(a.factor()), From: "the factors above"},
		},
		Result: quantity.Round(a.base * a.factor()), Unit: "A",
	})
}

func ambientStep(ratingC, ambientC, factor float64) figure.Step {
	return figure.Step{
		Formula: "ambient factor: f = √((Tr − Ta)/(Tr − 30 °C)), at most 1", Source: sourceAmbient,
		Inputs: []figure.Input{
			{Symbol: "Tr", Value: ratingC, Unit: "degC", From: "insulation rating, column of Table 5"},
			{Symbol: "Ta", Value: ambientC, Unit: "degC", From: "ambient of the space"},
		},
		Result: quantity.Round(factor),
	}
}

// Bundled returns an allowable amperage corrected for a bundle of count
// current-carrying conductors, its working added to that of the amperage.
func Bundled(allowable figure.Figure, count int) figure.Figure {
	if !allowable.Known {
		return allowable
	}
	factor, err := BundleFactor(count)
	if err != nil {
		return figure.Open(figure.Because(err.Error()))
	}
	result := allowable.Value * factor
	return figure.Worked(result, "A", func() []figure.Step {
		return append(slices.Clone(allowable.Working()), figure.Step{
			Formula: "in a bundle: I' = I·f, " + bundleWords(count), Source: sourceNote2,
			Inputs: []figure.Input{
				{Symbol: "I", Value: allowable.Value, Unit: "A", From: "corrected amperage"},
				{Symbol: "n", Value: float64(count), From: "current-carrying conductors together"},
				{Symbol: "f", Value: factor, From: sourceNote2},
			},
			Result: quantity.Round(result), Unit: "A",
		})
	})
}

func bundleWords(count int) string {
	switch {
	case count <= 2:
		return "no correction for 1 or 2"
	case count == 3:
		return "row 3"
	case count <= 6:
		return "row 4 to 6"
	case count <= 24:
		return "row 7 to 24"
	}
	return "row 25 and above"
}
