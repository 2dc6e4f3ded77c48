// Package copper holds what is known of a conductor by itself: copper area,
// resistance, allowable amperage, voltage drop, outside diameter, temperature
// and the heat it withstands. It knows no circuit and no limit of a standard:
// tables here are data that a rule may compare with.
//
// Symbols: A area [mm²]; r resistance per length [Ω/m]; T temperature [°C]; I
// current [A]; L length; k withstand constant [A·s^½/mm²]. Functions take and
// return the unit that their doc comment names.
package copper

import (
	"fmt"
	"math"
	"slices"

	"driploop/model/quantity"
)

// Spec is what a record tells of a conductor's metal. Only Size is needed; what
// is left out widens the range of the result.
type Spec struct {
	Size     quantity.WireSize
	Class    string // "", solid, class-2, class-5, class-6, type-2, type-3
	Tinned   *bool  // nil: not recorded
	Material string // "" or copper; there are no data of other metals
}

// Wire is what a Spec makes of a conductor.
type Wire struct {
	// AreaMM2 is the copper area that formulas use: computed for a gauge,
	// nominal for a metric size, the least that fits for an SAE gauge.
	AreaMM2      float64
	CircularMils float64 // the same area
	// R20 is the resistance at 20 °C in Ω/m: the greatest that fits the Spec,
	// which is the unfavourable one for drop and heat.
	R20 float64
	// R20Low is the least that fits, unfavourable for fault currents. It differs
	// from R20 where stranding or tin is open, and by what the sources leave.
	R20Low float64

	spec   Spec
	column string // of IEC 60228, in words
}

// Resistivity of annealed copper at 20 °C, 100 % IACS, in Ω·mm²/m: 1/58.
// Source: IEC 60028 and NBS Handbook 100 (1966); secondary.
const Resistivity = 1.0 / 58

const sourceIACS = "IEC 60028, NBS Handbook 100 (1966): annealed copper 1/58 ohm mm2/m; secondary"

// classes lists what Spec.Class can be.
var classes = []string{"", "solid", "class-2", "class-5", "class-6", "type-2", "type-3"}

// Of returns the copper area and the resistance of a conductor.
//
// A metric size takes the row of IEC 60228 for its class; a gauge takes the
// solid wire of ASTM B258 with an allowance for stranding and tin.
//
// Errors: *NoValue for a metal without data, a size that IEC 60228 does not
// print, or a word that is no class.
func Of(spec Spec) (Wire, error) {
	if spec.Material != "" && spec.Material != "copper" {
		return Wire{}, noValue("", "there are no conductor data for %s, only for copper", spec.Material)
	}
	if !slices.Contains(classes, spec.Class) {
		return Wire{}, noValue("", "%q is no class of stranding known here", spec.Class)
	}
	switch spec.Size.System {
	case quantity.MM2:
		return metric(spec)
	case quantity.AWG, quantity.SAE:
		return gauged(spec)
	}
	return Wire{}, noValue("", "the conductor has no size")
}

// gauged is a conductor of an AWG or SAE gauge.
//
//	r = ρ·f·t / A
//
// f is the allowance for stranding, t that for tin.
func gauged(spec Spec) (Wire, error) {
	least, greatest, err := area(spec.Size)
	if err != nil {
		return Wire{}, err
	}
	w := Wire{AreaMM2: least, CircularMils: least / CircularMilMM2, spec: spec}
	lay, tin := layOf(spec.Class), tinOf(spec.Tinned)
	w.R20 = Resistivity * lay.greatest * tin.greatest / least
	w.R20Low = Resistivity * lay.least * tin.least / greatest
	return w, nil
}

// metric is a conductor of a nominal area. The table gives the greatest
// resistance allowed; the least that can be is that of solid annealed copper
// with the whole nominal area, which lies below every row.
func metric(spec Spec) (Wire, error) {
	row, ok := iec60228().rows[spec.Size.MM2]
	if !ok {
		return Wire{}, noValue(sourceIEC, "IEC 60228 as held here lists no %s; %s", spec.Size, neighbours(iec60228().keys, spec.Size.MM2))
	}
	var most float64
	var from string
	for _, column := range iecColumns(spec.Class, spec.Tinned) {
		if v := row[iec60228().column(column)]; v > most {
			most, from = v, iecNames[column]
		}
	}
	if most == 0 {
		return Wire{}, noValue(sourceIEC, "IEC 60228 as held here prints no %s as %s", spec.Size, specWords(spec))
	}
	a := spec.Size.MM2
	return Wire{AreaMM2: a, CircularMils: a / CircularMilMM2, R20: most / 1000, R20Low: Resistivity / a, spec: spec, column: from}, nil
}

// specWords says what of a conductor chose the columns.
func specWords(spec Spec) string {
	words := spec.Class
	if words == "" {
		words = "any class"
	}
	switch {
	case spec.Tinned == nil:
		return words
	case *spec.Tinned:
		return words + ", tinned"
	}
	return words + ", plain"
}

// neighbours names the printed sizes next to one that is not printed.
func neighbours(keys []float64, v float64) string {
	below, above := math.Inf(-1), math.Inf(1)
	for _, k := range keys {
		if k < v {
			below = max(below, k)
		} else {
			above = min(above, k)
		}
	}
	switch {
	case math.IsInf(below, -1):
		return fmt.Sprintf("the least is %g mm2", above)
	case math.IsInf(above, 1):
		return fmt.Sprintf("the greatest is %g mm2", below)
	}
	return fmt.Sprintf("its neighbours are %g and %g mm2", below, above)
}
