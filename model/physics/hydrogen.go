package physics

import (
	"math"
	"slices"
	"strconv"
	"sync"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const (
	// hydrogenFactor is v·q·s of the standard: dilution 24, hydrogen 0.42e−3 m³/Ah
	// and safety 5, 0.0504, rounded by it to 0.05 m³/Ah.
	hydrogenFactor = 0.05

	// openingPerFlow is the opening in cm² for each m³/h, inlet and outlet each, for
	// air that moves at 0.1 m/s at least.
	openingPerFlow = 28

	sourceHydrogen = "IEC 62485-2 (EN 50272-2) clause 7: Q = 0.05·n·Igas·Crt·10⁻³; secondary, three sources"
	sourceOpening  = "IEC 62485-2 (EN 50272-2) clause 7: A = 28·Q, inlet and outlet each; secondary"
)

// GasCell is how a battery gives off hydrogen.
type GasCell string

// The cells that the standard gives a gassing current for.
const (
	VentedLead      GasCell = "vented-lead"
	ValveLead       GasCell = "valve-regulated-lead"
	VentedNickelCad GasCell = "vented-nickel-cadmium"
)

var gassing = sync.OnceValue(func() map[[2]string]float64 {
	rows := map[[2]string]float64{}
	for _, line := range load("hydrogen.csv") {
		v, err := strconv.ParseFloat(line[2], 64)
		if err != nil {
			panic(err)
		}
		rows[[2]string{line[0], line[1]}] = v
	}
	return rows
})

// HydrogenFlow returns the air flow in m³/h that keeps the hydrogen of a
// charging battery under its explosive limit.
//
//	Q = 0.05 · n · Igas · Crt · 10⁻³
//
// Given: n cells in series; capacityAh of one string, at 10 h for lead (a 20 h
// capacity is larger and errs on the safe side); boost: charged above float.
// Where strings stand in parallel, add their capacities.
// The figure is open for other cells and for values out of range.
// Valid: to about 40 °C, with a charger that keeps its voltage.
// Source: IEC 62485-2 clause 7; secondary.
func HydrogenFlow(cell GasCell, n int, capacityAh float64, boost bool) figure.Figure {
	charge := "float"
	if boost {
		charge = "boost"
	}
	gas, ok := gassing()[[2]string{string(cell), charge}]
	if !ok {
		return figure.Open(figure.Because("the standard for battery ventilation gives no gassing current for cells of " + strconv.Quote(string(cell))))
	}
	if n < 1 || !(capacityAh > 0) || math.IsInf(capacityAh, 0) {
		return figure.Open(figure.Because("a hydrogen flow needs a number of cells and a capacity above 0 Ah"))
	}
	flow := hydrogenFactor * float64(n) * gas * capacityAh / 1000
	return figure.Worked(flow, "m3/h", func() []figure.Step {
		return []figure.Step{{
			Formula: "air flow against hydrogen: Q = 0.05·n·Igas·Crt·10⁻³", Source: sourceHydrogen,
			Inputs: []figure.Input{
				{Symbol: "n", Value: float64(n), From: "cells in series"},
				{Symbol: "Igas (mA/Ah)", Value: gas, From: string(cell) + ", " + charge + " charge, table of IEC 62485-2 clause 7"},
				{Symbol: "Crt", Value: capacityAh, Unit: "Ah", From: "capacity"},
			},
			Result: quantity.Round(flow), Unit: "m3/h",
		}}
	})
}

// HydrogenFlowAt returns the same for a known charging current of which all
// makes gas, such as that of a charger that has lost its regulation.
//
//	Q = 0.05 · n · I
//
// Source: IEC 62485-2 clause 7, with I for Igas·Crt·10⁻³; secondary.
func HydrogenFlowAt(n int, amps float64) figure.Figure {
	if n < 1 || !(amps >= 0) || math.IsInf(amps, 0) {
		return figure.Open(figure.Because("a hydrogen flow needs a number of cells and a current of 0 A or more"))
	}
	flow := hydrogenFactor * float64(n) * amps
	return figure.Worked(flow, "m3/h", func() []figure.Step {
		return []figure.Step{{
			Formula: "air flow against hydrogen: Q = 0.05·n·I, all of the current making gas", Source: sourceHydrogen,
			Inputs: []figure.Input{
				{Symbol: "n", Value: float64(n), From: "cells in series"},
				{Symbol: "I", Value: amps, Unit: "A", From: "charging current"},
			},
			Result: quantity.Round(flow), Unit: "m3/h",
		}}
	})
}

// VentOpening returns the free area in cm² of the inlet, and of the outlet, that
// lets a flow in m³/h through by itself.
//
//	A = 28 · Q
//
// Valid: air at 0.1 m/s or more. Source: IEC 62485-2 clause 7; secondary.
func VentOpening(flow figure.Figure) figure.Figure {
	if !flow.Known {
		return flow
	}
	area := openingPerFlow * flow.Value
	return figure.Worked(quantity.New(area, "cm2").Base, "mm2", func() []figure.Step {
		return append(slices.Clone(flow.Working()), figure.Step{
			Formula: "opening for natural ventilation, inlet and outlet each: A = 28·Q", Source: sourceOpening,
			Inputs: []figure.Input{{Symbol: "Q", Value: flow.Value, Unit: "m3/h", From: "air flow against hydrogen"}},
			Result: quantity.Round(area), Unit: "cm2",
		})
	})
}
