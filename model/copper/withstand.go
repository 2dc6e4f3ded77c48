package copper

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// kCopper is the constant of IEC 60949 for copper: √(3.45e−3 × 254.5 /
	// 17.241e−6) = 225.7, printed as 226; secondary.
	kCopper = 226

	// AdiabaticLimitS is the longest fault in s that the adiabatic rule is stated
	// for. Beyond it the rule errs on the safe side: heat leaves the conductor.
	//
	// Source: IEC 60364-4-43 clause 434.5.2; secondary.
	AdiabaticLimitS = 5

	sourceK    = "IEC 60949: k = 226·√(ln((234.5 + θf)/(234.5 + θi))), copper; secondary"
	sourceIEC4 = "IEC 60364-4-43 table 43.1"
	sourceI2t  = "IEC 60364-4-43 clause 434.5.2: t = (k·S/I)²; secondary"
)

// Withstood is what a conductor's insulation stands in a short circuit.
type Withstood struct {
	K      float64 // A·s^½/mm²; the least that fits
	StartC float64 // temperature at the start of the fault
	EndC   float64 // greatest temperature that K stands for
	// KHigh is the greatest that fits. It differs from K where the compound is
	// not recorded, or where standards leave more than one end temperature.
	KHigh float64

	compound string
	row      *kRow // nil: by formula
}

// Working returns the working of K.
func (w Withstood) Working() figure.Step {
	if w.row != nil {
		return figure.Step{
			Formula: fmt.Sprintf("withstand constant: row %s, %g °C", w.compound, w.StartC),
			Source:  sourceIEC4 + "; " + w.row.trust,
			Inputs:  []figure.Input{{Symbol: "insulation rating", Value: w.StartC, Unit: "degC", From: "insulation"}},
			Result:  w.K,
		}
	}
	return figure.Step{
		Formula: "withstand constant: k = 226·√(ln((234.5 + θf)/(234.5 + θi)))", Source: sourceK,
		Inputs: []figure.Input{
			{Symbol: "θi", Value: w.StartC, Unit: "degC", From: "temperature at the start of the fault"},
			{Symbol: "θf", Value: w.EndC, Unit: "degC", From: "end temperature of " + w.compound},
		},
		Result: quantity.Round(w.K),
	}
}

// ends are the greatest temperatures of a compound in a fault, least and
// greatest of the standards.
//
// Source: thermoplastic 150 °C ICEA P-32-382 (from memory, unverified), 160 °C
// IEC 60364-4-43 (secondary); cross-linked and EPR 250 °C both (secondary);
// rubber 200 °C and silicone 350 °C IEC 60364-4-43 (from memory, unverified).
var ends = map[string][2]float64{
	"pvc": {150, 160}, "xlpe": {250, 250}, "epr": {250, 250}, "rubber": {200, 220}, "silicone": {350, 350},
}

// Withstand returns the withstand constant of a loaded conductor, which starts a
// fault at the rated temperature of its insulation.
//
// Given: compound pvc, xlpe, epr, rubber or silicone; "" where it is not
// recorded, which leaves the range from pvc to xlpe. ratingC temperature rating
// of the insulation [°C].
// Table 43.1 of IEC 60364-4-43 is used where it prints the rating; else the
// formula of IEC 60949 with the least end temperature of the compound.
// Errors: *NoValue for other compounds, and where the rating is not below the
// end temperature.
func Withstand(compound string, ratingC float64) (Withstood, error) {
	if compound == "" {
		return withstandOpen(ratingC)
	}
	if row, ok := kTable()[kKey{compound, ratingC}]; ok {
		return Withstood{K: row.k, KHigh: row.k, StartC: ratingC, EndC: row.endC, compound: compound, row: row}, nil
	}
	return WithstandFrom(compound, ratingC)
}

// withstandOpen is the range of a conductor whose compound is not recorded.
func withstandOpen(ratingC float64) (Withstood, error) {
	least, err := WithstandFrom("pvc", ratingC)
	if err != nil {
		return Withstood{}, noValue(sourceK, "the insulation compound is not recorded, and no thermoplastic starts a fault at %g °C", ratingC)
	}
	greatest, err := Withstand("xlpe", ratingC)
	if err != nil {
		return Withstood{}, err
	}
	least.KHigh = greatest.KHigh
	return least, nil
}

// WithstandFrom returns the withstand constant for a conductor that is at startC
// when the fault begins, by formula: an idle one starts at the air's temperature.
//
//	k = 226 · √(ln((234.5 + θf)/(234.5 + θi)))
//
// Errors: *NoValue for an unknown compound, and where startC is not between
// −60 °C and the end temperature.
// Source: IEC 60949; secondary.
func WithstandFrom(compound string, startC float64) (Withstood, error) {
	end, ok := ends[compound]
	if !ok {
		return Withstood{}, noValue(sourceK, "no end temperature is held for insulation of %q; there are pvc, xlpe, epr, rubber and silicone", compound)
	}
	if !(startC < end[0]) || startC < coldest {
		return Withstood{}, noValue(sourceK, "a fault that starts at %g °C leaves no rise to the %g °C that %s stands", startC, end[0], compound)
	}
	return Withstood{K: K(startC, end[0]), KHigh: K(startC, end[1]), StartC: startC, EndC: end[0], compound: compound}, nil
}

// K returns the withstand constant of copper in A·s^½/mm² between two
// temperatures in °C; 0 where endC is not above startC.
//
// Source: IEC 60949; secondary.
func K(startC, endC float64) float64 {
	if !(endC > startC) || startC <= -234.5 {
		return 0
	}
	return kCopper * math.Sqrt(math.Log((234.5+endC)/(234.5+startC)))
}

// WithstandEnergy returns the let-through energy k²S² in A²s that a conductor
// stands, with its working.
//
// Given: k [A·s^½/mm²]; areaMM2 copper area.
// Source: IEC 60364-4-43 clause 434.5.2; secondary.
func WithstandEnergy(k, areaMM2 float64) figure.Figure {
	return figure.Worked(k*k*areaMM2*areaMM2, "A2s", func() []figure.Step {
		return []figure.Step{{
			Formula: "energy withstood: k²·S²", Source: sourceI2t,
			Inputs: []figure.Input{
				{Symbol: "k", Value: quantity.Round(k), From: "withstand constant"},
				{Symbol: "S", Value: quantity.Round(areaMM2), Unit: "mm2", From: "copper area"},
			},
			Result: quantity.Round(k * k * areaMM2 * areaMM2), Unit: "A2s",
		}}
	})
}

// AdiabaticTime returns the time in s that a conductor stands a current, no heat
// leaving it: t = (k·S/I)². Above AdiabaticLimitS it is too short, never too
// long. Source: IEC 60364-4-43 clause 434.5.2; secondary.
func AdiabaticTime(k, areaMM2, amps float64) float64 {
	t := k * areaMM2 / amps
	return t * t
}

// ICEAEnergy returns the energy in A²s that a copper conductor stands between
// two temperatures in °C by the American rule; it agrees with k²S² within about
// 1.5 percent.
//
// Given: circularMils copper area.
// Source: ICEA P-32-382; secondary, two sources.
func ICEAEnergy(circularMils, startC, endC float64) float64 {
	return circularMils * circularMils * 0.0297 * math.Log10((endC+234)/(startC+234))
}

type kKey struct {
	compound string
	ratingC  float64
}

type kRow struct {
	endC, k float64
	trust   string
}

// kTable is table 43.1; unlike the others it is keyed by words as well.
var kTable = sync.OnceValue(func() map[kKey]*kRow {
	text, err := files.ReadFile("data/withstand.csv")
	if err != nil {
		panic(err)
	}
	reader := csv.NewReader(strings.NewReader(string(text)))
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		panic(err)
	}
	rows := map[kKey]*kRow{}
	for _, line := range lines[1:] {
		var v [3]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(line[i+1], 64); err != nil {
				panic(err)
			}
		}
		rows[kKey{line[0], v[0]}] = &kRow{endC: v[1], k: v[2], trust: line[4]}
	}
	return rows
})
