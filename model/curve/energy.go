package curve

import (
	"fmt"
	"math"
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const sourceEnergy = "I²·t of a lasting current; beyond the last gate of a fuse its melting energy does not grow with the current, arcing left out; common physics"

// LetThrough returns the bounds of the energy in A²s that a device lets through
// before it opens a lasting current in A.
//
//	least     I²·t of the least time
//	greatest  I²·t of the greatest time; beyond the last gate of a fuse the energy
//	          at that gate, since melting takes no more at higher current
//
// The greatest is open where the device need not open, the least where it does
// not open at all. It is open, too, beyond a last gate of more than 5 s: at such a
// gate most of the energy is lost to the surroundings, and says nothing of what
// melting takes.
func (c Curve) LetThrough(amps float64) (least, greatest figure.Figure) {
	o, err := c.OpeningTime(amps)
	if err != nil {
		open := figure.Open(figure.Because(err.Error()))
		return open, open
	}
	least, greatest = o.Least(), o.Greatest()
	if least.Known {
		least = o.energy("least", least, o.amps)
	}
	if greatest.Known {
		greatest = c.greatestEnergy(o, greatest)
	}
	return least, greatest
}

// adiabatic is how long heat counts as staying where it is made: 5 s, IEC
// 60364-4-43:2008, 434.5.2 (secondary).
const adiabatic = 5

// greatestEnergy is the greatest energy let through within the greatest time.
func (c Curve) greatestEnergy(o Opening, time figure.Figure) figure.Figure {
	last := c.gates[len(c.gates)-1]
	if !o.melts() {
		return o.energy("greatest", time, o.amps)
	}
	if _, _, stated := o.melting(); !stated {
		return figure.Open(figure.Because(fmt.Sprintf(
			"the gates of a %s fuse end at %s within %g s, which says nothing of the energy that a short circuit takes: give the maker's curve_points",
			c.Family, percent(&last), last.GreatestS)))
	}
	time.Value = last.GreatestS
	return o.energy("greatest", time, last.Multiple*c.RatingA)
}

// melts tells whether the current lies beyond the last gate of a fuse.
func (o Opening) melts() bool {
	last := &o.curve.gates[len(o.curve.gates)-1]
	return last.Release == Melt && o.amps > last.Multiple*o.curve.RatingA
}

// melting returns the current and time of that gate, of whose energy a fuse takes
// no more to melt; false where the gate is too long to tell.
func (o Opening) melting() (amps, seconds float64, stated bool) {
	last := &o.curve.gates[len(o.curve.gates)-1]
	return last.Multiple * o.curve.RatingA, last.GreatestS, last.GreatestS <= adiabatic
}

// Energies returns the same bounds as LetThrough, without their working: NaN for
// one that is open.
func (o Opening) Energies() (least, greatest float64) {
	least, greatest = math.NaN(), math.NaN()
	if !math.IsInf(o.LeastS, 1) {
		least = joule(o.amps, quantity.Round(o.LeastS))
	}
	if math.IsInf(o.GreatestS, 1) {
		return least, greatest
	}
	if !o.melts() {
		return least, joule(o.amps, quantity.Round(o.GreatestS))
	}
	if amps, seconds, stated := o.melting(); stated {
		greatest = joule(amps, seconds)
	}
	return least, greatest
}

// joule is I²·t, rounded as figures are.
func joule(amps, seconds float64) float64 { return quantity.Round(amps * amps * seconds) }

func (o Opening) energy(end string, time figure.Figure, amps float64) figure.Figure {
	e := amps * amps * time.Value
	from := "current"
	if amps != o.amps {
		from = "current of the last gate"
	}
	return figure.Worked(e, "A2s", func() []figure.Step {
		return append(slices.Clone(time.Working()), figure.Step{
			Formula: end + " energy let through: I²·t", Source: sourceEnergy,
			Inputs: []figure.Input{
				{Symbol: "I", Value: quantity.Round(amps), Unit: "A", From: from},
				{Symbol: "t", Value: time.Value, Unit: "s", From: end + " opening time"},
			},
			Result: quantity.Round(e), Unit: "A2s",
		})
	})
}

// Discriminates tells whether, at a fault behind both, only the device below
// opens: for certain where it opens within the least time of the one above. For
// certain not where it takes at least the greatest time of the one above. In
// between gates cannot tell.
//
// Given: the same current in A through both.
func Discriminates(below, above Curve, amps float64) figure.Truth {
	b, errB := below.OpeningTime(amps)
	a, errA := above.OpeningTime(amps)
	if errB != nil || errA != nil {
		return figure.OpenTruth(figure.Because("discrimination needs a current"))
	}
	switch {
	case b.GreatestS < a.LeastS:
		return figure.True()
	case b.LeastS >= a.GreatestS:
		return figure.False()
	}
	return figure.OpenTruth(figure.Because(fmt.Sprintf(
		"the gates leave it open which device opens first at %s: below %s, above %s",
		quantity.New(math.Abs(amps), "A").Format(quantity.Metric), b.span(), a.span())))
}

// span is the range of opening times in words.
func (o Opening) span() string {
	seconds := func(v float64) string { return quantity.New(v, "s").Format(quantity.Metric) }
	switch {
	case math.IsInf(o.LeastS, 1):
		return "does not open"
	case math.IsInf(o.GreatestS, 1):
		return seconds(o.LeastS) + " or more, if at all"
	}
	return seconds(o.LeastS) + " to " + seconds(o.GreatestS)
}
