package circuit

import (
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Cell voltages, V. A lead cell at rest: full 2.10 (12.6 V of a 12 V battery, as
// in the worked examples for SAE J537), low 1.95 (about a fifth of the charge
// left); lithium iron phosphate: full 3.35, low 3.10. From memory, unverified,
// but for the 12.6 V.
// Charging: lead 2.40 V a cell, boost voltage of IEC 62485-2 (secondary); lithium
// iron phosphate 3.55 (from memory, unverified).
const (
	leadCell, leadLow, leadCharge = 2.10, 1.95, 2.40
	lithiumCell, lithiumLow       = 3.35, 3.10
	leadNominal, lithiumNominal   = 2.0, 3.0 // of 12 V: six and four cells
)

// Short-circuit current as a multiple of a rating. Cold: a battery of SAE J537
// still holds 1.2 V a cell at -18 °C while it gives its cranking current. Warm:
// up to 5 times the cranking current. By capacity: 5 to 60 times the number of
// ampere-hours for lead, to 100 for lithium. Estimates, from memory, unverified.
const (
	crankingCell    = 1.2
	crankingGreat   = 5.0
	capacityLeast   = 5.0
	capacityLead    = 60.0
	capacityLithium = 100.0
	sourceCranking  = "SAE J537: 1.2 V a cell at -18 °C after 30 s, from memory, unverified; warm: up to 5 times the cranking current, estimate, unverified"
	sourceCapacity  = "short-circuit current of 5 to 60 (lithium: 100) times the ampere-hours: estimate, from memory, unverified"
	sourceCells     = "lead 2.10 V a cell full, 1.95 low; lithium iron phosphate 3.35 and 3.10: from memory, unverified"
)

// cells returns the number of cells by nominal voltage, and the voltages of one.
func cells(c *record.Component, nominal float64) (count, full, low float64) {
	if c.Chemistry.V == "lithium" {
		return nominal / lithiumNominal, lithiumCell, lithiumLow
	}
	return nominal / leadNominal, leadCell, leadLow
}

// openVolts returns the open-circuit voltage of a battery, full or low.
func (n *network) openVolts(c *record.Component, low bool) span {
	nominal, ok := n.ratedVolts(c)
	if !ok {
		return span{low: guessVolt, high: guessVolt, gaps: []figure.Gap{figure.Missing(c.Path + ".nominal")}}
	}
	count, full, empty := cells(c, nominal)
	per, state := full, "full"
	if low {
		per, state = empty, "low"
	}
	return exactly(count * per).by(func() figure.Step {
		return figure.Step{
			Formula: "open-circuit voltage, battery " + state + ": E = cells × volts a cell", Source: sourceCells,
			Inputs: []figure.Input{
				{Symbol: "nominal voltage", Value: nominal, Unit: "V", From: n.ratedFrom(c)},
				{Symbol: "cells", Value: quantity.Round(count), From: "nominal voltage, " + c.Chemistry.Or("lead assumed")},
				{Symbol: "volts a cell", Value: per, Unit: "V", From: sourceCells},
			},
			Result: quantity.Round(count * per), Unit: "V",
		}
	})
}

// regulatedVolts returns the voltage that a charging source holds.
func (n *network) regulatedVolts(c *record.Component) span {
	if v, ok := sane(&c.Voltage); ok {
		return exactly(v)
	}
	nominal, ok := n.ratedVolts(c)
	if !ok {
		return span{low: guessVolt, high: guessVolt, gaps: []figure.Gap{figure.Missing(c.Path + ".voltage")}}
	}
	return exactly(nominal / leadNominal * leadCharge).by(func() figure.Step {
		return figure.Step{
			Formula: "charging voltage: lead cells at 2.40 V", Source: "IEC 62485-2: boost 2.40 V a cell; secondary",
			Inputs: []figure.Input{{Symbol: "nominal voltage", Value: nominal, Unit: "V", From: n.ratedFrom(c)}},
			Result: quantity.Round(nominal / leadNominal * leadCharge), Unit: "V",
		}
	})
}

// batteryOhms returns the internal resistance of a battery in Ω: recorded, else
// a range from its cranking current, else from its capacity. A figure recorded
// for a bank is that of the whole bank.
func (n *network) batteryOhms(c *record.Component) span {
	if r, ok := sane(&c.Resistance); ok {
		return exactly(r / 1000).by(func() figure.Step {
			return figure.Step{
				Formula: "internal resistance as recorded", Source: "the record",
				Inputs: []figure.Input{{Symbol: "R", Value: r, Unit: "mohm", From: c.Path + ".internal_resistance"}},
				Result: r, Unit: "mohm",
			}
		})
	}
	nominal, hasVolts := n.ratedVolts(c)
	if !hasVolts {
		return n.unknownOhms(figure.Missing(c.Path + ".nominal"))
	}
	count, full, _ := cells(c, nominal)
	emf := count * full
	if cca, ok := sane(&c.Cranking); ok && c.Chemistry.V != "lithium" {
		s := span{low: emf / (crankingGreat * cca), high: (emf - count*crankingCell) / cca}
		least, greatest := s.low, s.high
		s.working = func() []figure.Step {
			return []figure.Step{
				rangeStep("least internal resistance: R = E/(5·I)", sourceCranking, emf, cca, "A", c.Path+".cranking", least),
				rangeStep("greatest internal resistance, at -18 °C: R = (E − U)/I with U = 1.2 V a cell", sourceCranking, emf, cca, "A", c.Path+".cranking", greatest),
			}
		}
		return s
	}
	if ah, ok := sane(&c.Capacity); ok {
		most := capacityLead
		if c.Chemistry.V == "lithium" || !c.Chemistry.Is() {
			most = capacityLithium
		}
		s := span{low: emf / (most * ah), high: emf / (capacityLeast * ah)}
		least, greatest := s.low, s.high
		s.working = func() []figure.Step {
			return []figure.Step{
				rangeStep("least internal resistance: R = E/(k·C)", sourceCapacity, emf, ah, "Ah", c.Path+".capacity", least),
				rangeStep("greatest internal resistance: R = E/(k·C)", sourceCapacity, emf, ah, "Ah", c.Path+".capacity", greatest),
			}
		}
		return s
	}
	return n.unknownOhms(figure.Missing(c.Path+".cranking"), figure.Missing(c.Path+".internal_resistance"))
}

func (n *network) unknownOhms(gaps ...figure.Gap) span {
	return span{low: guessOhms, high: guessOhms, gaps: gaps}
}

func rangeStep(formula, from string, emf, rating float64, unit, path string, ohms float64) figure.Step {
	symbol := "I"
	if unit == "Ah" {
		symbol = "C"
	}
	return figure.Step{
		Formula: formula, Source: from,
		Inputs: []figure.Input{
			{Symbol: "E", Value: quantity.Round(emf), Unit: "V", From: "open-circuit voltage, full"},
			{Symbol: symbol, Value: rating, Unit: unit, From: path},
		},
		Result: quantity.Round(1000 * ohms), Unit: "mohm",
	}
}

// sourceOhms returns the internal resistance of a source in Ω.
func (n *network) sourceOhms(c *record.Component, cls class) span {
	if cls == batteryClass {
		return n.batteryOhms(c)
	}
	return recordedOhms(&c.Resistance) // a regulator holds its voltage at its terminals
}
