package copper

import (
	"fmt"
	"sync"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	sourceTable5 = "33 CFR 183.425 Table 5, CFR annual edition 2015; read"
	sourceNote1  = "33 CFR 183.425 Table 5 note 1, CFR annual edition 2015; read"
)

var (
	table5 = sync.OnceValue(func() table { return load("table5.csv") })
	note1  = sync.OnceValue(func() table { return load("note1.csv") })

	// table5At is the place of each rating among the columns of Table 5.
	table5At = sync.OnceValue(func() map[float64]int {
		at := map[float64]int{}
		for _, rating := range Table5Columns() {
			at[rating] = table5().column(fmt.Sprintf("c%g", rating))
		}
		return at
	})
)

// Table5Columns lists the insulation temperature ratings in °C that Table 5 and
// its note 1 print, ascending.
func Table5Columns() []float64 { return note1().keys }

// Table5Column returns the printed rating that stands for an insulation rating:
// the same, or the next lower one, since a cooler insulation is allowed less.
//
// Errors: *NoValue below the lowest printed rating, 60 °C.
func Table5Column(insulationC float64) (float64, error) {
	columns := Table5Columns()
	for i := len(columns) - 1; i >= 0; i-- {
		if insulationC >= columns[i] {
			return columns[i], nil
		}
	}
	return 0, noValue(sourceTable5, "Table 5 of 33 CFR 183.425 begins at insulation for %g °C; it has no value for %g °C", columns[0], insulationC)
}

// Table5 returns the allowable amperage in A of a conductor by its AWG gauge and
// the temperature rating of its insulation in °C, outside engine spaces.
//
// Given: a rating between two columns is read in the lower one.
// Errors: *NoValue for sizes that the table does not print (5 and 7 AWG, finer
// than 18, coarser than 4/0), for metric and SAE sizes, and for ratings below
// 60 °C.
// Source: 33 CFR 183.425 Table 5, CFR annual edition 2015; read, all cells.
func Table5(size quantity.WireSize, insulationC float64) (amps float64, err error) {
	column, err := Table5Column(insulationC)
	if err != nil {
		return 0, err
	}
	if err := printedInTable5(size); err != nil {
		return 0, err
	}
	row := table5().rows[float64(size.Gauge)]
	return row[table5At()[column]], nil
}

func printedInTable5(size quantity.WireSize) error {
	no := func(why string) error {
		return noValue(sourceTable5, "Table 5 of 33 CFR 183.425 has no value for %s: %s", size, why)
	}
	switch size.System {
	case "":
		return noValue(sourceTable5, "the conductor has no size")
	case quantity.MM2:
		return no("it lists AWG gauges only, no metric sizes")
	case quantity.SAE:
		return no("it lists AWG gauges only, and an SAE gauge holds less copper than the AWG gauge of its number")
	}
	if _, ok := table5().rows[float64(size.Gauge)]; ok {
		return nil
	}
	switch keys := table5().keys; {
	case float64(size.Gauge) > keys[0]:
		return no("its finest gauge is 18 AWG")
	case float64(size.Gauge) < keys[len(keys)-1]:
		return no("its coarsest gauge is 4/0 AWG")
	}
	return no("that gauge is not listed, and values between gauges are not given")
}

// Table5Figure returns Table5 in A with its working, or the reason why there is
// no value.
func Table5Figure(size quantity.WireSize, insulationC float64) figure.Figure {
	amps, err := Table5(size, insulationC)
	if err != nil {
		return figure.Open(figure.Because(err.Error()))
	}
	return figure.Worked(amps, "A", func() []figure.Step { return []figure.Step{table5Step(size, insulationC, amps)} })
}

func table5Step(size quantity.WireSize, insulationC, amps float64) figure.Step {
	column, _ := Table5Column(insulationC)
	return figure.Step{
		Formula: "allowable amperage: Table 5, row " + size.String() + ", column " + columnWords(insulationC, column),
		Source:  sourceTable5,
		Inputs:  []figure.Input{{Symbol: "insulation rating", Value: insulationC, Unit: "degC", From: "insulation"}},
		Result:  amps, Unit: "A",
	}
}

func columnWords(insulationC, column float64) string {
	if insulationC == column {
		return fmt.Sprintf("%g °C", column)
	}
	return fmt.Sprintf("%g °C (the next below the rating of %g °C)", column, insulationC)
}

// Note1 returns the factor on Table 5 for a conductor in an engine space, by the
// temperature rating of its insulation in °C.
//
// Given: a rating between two columns is read in the lower one, as in Table5.
// Errors: *NoValue below 60 °C.
// Source: 33 CFR 183.425 Table 5 note 1, CFR annual edition 2015; read.
func Note1(insulationC float64) (float64, error) {
	column, err := Table5Column(insulationC)
	if err != nil {
		return 0, err
	}
	return note1().rows[column][0], nil
}
