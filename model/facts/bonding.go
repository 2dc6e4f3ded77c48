package facts

import (
	"driploop/model/quantity"
	"driploop/model/record"
)

// Bonding is what a bonding conductor joins.
type Bonding struct {
	// IsBonding: its role is bonding.
	IsBonding *bool `json:"bonding,omitempty"`
	// OnCase: a bonding conductor that lands on the metal case of a component.
	OnCase bool `json:"on_case"`
	// CaseLeastMM2 is the nominal area of the size next below the largest conductor
	// that carries current to that component.
	CaseLeastMM2 *float64 `json:"case_least_mm2,omitempty"`
}

// bonding sets what a bonding conductor joins.
func (b *Builder) bonding(s *Subject, f *Bonding, c *record.Conductor) {
	putTruth(s, "bonding", &f.IsBonding, s.among(&c.Role, s.own("role"), "bonding"))
	cased := ""
	for _, t := range [...]*record.Terminal{&c.From, &c.To} {
		if c.Role.V == "bonding" && t.Name == record.CaseTerminal {
			cased, f.OnCase = t.Component, true
		}
	}
	if !f.OnCase {
		s.because("it lands on no case", "case_least_mm2")
		return
	}
	least, feeds, sized := 0.0, 0, true
	for _, feed := range b.record.Conductors {
		if feed.Role.V == "bonding" || feed.From.Component != cased && feed.To.Component != cased {
			continue
		}
		feeds++
		below, ok := areaBelow(&feed.Size)
		if !ok {
			sized = false
			s.lacks("case_least_mm2", feed.Path, "size")
		}
		least = max(least, below)
	}
	switch {
	case feeds == 0:
		s.because("no conductor carries current to "+cased+" in the record", "case_least_mm2")
	case sized:
		f.CaseLeastMM2 = s.number(least)
	}
}

// gauges and squares are the sizes of the trade, smallest first: AWG sizes as sold
// for boats, and the nominal areas of IEC 60228 in mm².
var (
	gauges  = [...]int{18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3}
	squares = [...]float64{0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120}
)

// areaBelow returns the nominal area in mm² of the next smaller size of the
// trade; the size's own where there is none.
func areaBelow(size *record.Wire) (float64, bool) {
	area, ok := nominalArea(size)
	if !ok {
		return 0, false
	}
	below := area
	take := func(smaller float64) {
		if smaller < area {
			below = smaller
		}
	}
	if size.V.System == quantity.MM2 {
		for _, mm2 := range squares {
			take(mm2)
		}
		return below, true
	}
	for _, gauge := range gauges {
		take(areaOf(quantity.WireSize{System: size.V.System, Gauge: gauge}))
	}
	return below, true
}
