package curve

import (
	"fmt"
	"math"
	"strconv"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// Opening is within which times a device opens at one current.
type Opening struct {
	LeastS    float64 // +Inf: it does not open
	GreatestS float64 // +Inf: it need not open
	amps      float64
	curve     Curve
	least     how // how the times were found
	greatest  how
}

// how says how a time was found: a way, and the gate or two that it goes by. Most
// times are only compared, so that the words are put together when a step of
// working asks for them.
type how struct {
	way         way
	gate, other *Gate
}

type way uint8

const (
	beforeFirst way = iota
	needNot
	atGate
	beyondEnergy
	beyondTime
	line
	lineAbove
	energy
	beyondLeast
	heldLonger
	leastOf
)

// words are those of each way around its gates.
var words = [...]struct{ before, between, after string }{
	beforeFirst:  {before: "below the first gate it need not open"},
	needNot:      {before: "it need not open at ", after: ", nor surely before the next gate"},
	atGate:       {before: "gate at "},
	beyondEnergy: {before: "beyond the last gate: t·I² of the gate at "},
	beyondTime:   {before: "beyond the last gate: greatest time of the gate at "},
	line:         {before: "log-log between the gates at ", between: " and "},
	lineAbove:    {before: "log-log between the gates at ", between: " and ", after: ", more than t·I² of the first"},
	energy:       {before: "t·I² of the gate at "},
	beyondLeast:  {before: "beyond the last gate no least time is stated"},
	heldLonger:   {before: "held longer than at "},
	leastOf:      {before: "least time of the gate at "},
}

func (h how) String() string {
	w := &words[h.way]
	if h.gate == nil {
		return w.before
	}
	text := w.before + percent(h.gate) + w.between
	if h.other != nil {
		text += percent(h.other)
	}
	return text + w.after
}

// OpeningTime returns within which times the device opens at a lasting current
// in A, the sign of which does not count.
//
// At a gate: its times. Between two gates:
//
//	greatest  the straight line in log t over log I from gate to gate, which lies
//	          above a curve that bends upwards, as those of fuses and thermal
//	          releases do; towards an instantaneous release t·I² of the gate below
//	          if that is more
//	least     t·I² of the gate above for melting and thermal release, since the
//	          energy to open does not grow with the current; else its time
//
// Up to the gate where it need not open the greatest time is without bound. Over
// the last gate it opens within the greatest time of that gate, at no stated
// least; a fuse whose last gate is one of more than 5 s, within t·I² of that gate,
// since melting takes no more energy at higher current. At shorter gates arcing,
// which that leaves out, would count.
//
// Errors: *NoCurve for a current that is no number.
func (c Curve) OpeningTime(amps float64) (Opening, error) {
	if math.IsNaN(amps) || math.IsInf(amps, 0) {
		return Opening{}, noCurve("an opening time needs a current")
	}
	o := Opening{amps: math.Abs(amps), curve: c}
	m := o.amps / c.RatingA
	below, above := c.around(m)
	o.GreatestS, o.greatest = greatestAt(m, below, above)
	o.LeastS, o.least = leastAt(m, below, above)
	return o, nil
}

// around returns the last gate at or below a multiple and the first above it,
// nil where there is none.
func (c Curve) around(m float64) (below, above *Gate) {
	for i := range c.gates {
		if c.gates[i].Multiple <= m*(1+1e-12) {
			below = &c.gates[i]
		} else {
			return below, &c.gates[i]
		}
	}
	return below, nil
}

func greatestAt(m float64, below, above *Gate) (float64, how) {
	switch {
	case below == nil:
		return math.Inf(1), how{way: beforeFirst}
	case math.IsInf(below.GreatestS, 1):
		return below.GreatestS, how{way: needNot, gate: below}
	case at(m, below):
		return below.GreatestS, how{way: atGate, gate: below}
	case above == nil && below.Release == Melt && below.GreatestS > adiabatic:
		return energyTime(m, below), how{way: beyondEnergy, gate: below}
	case above == nil:
		return below.GreatestS, how{way: beyondTime, gate: below}
	case above.Release == Instant:
		if line := logLog(m, below, above); line > energyTime(m, below) {
			return line, how{lineAbove, below, above}
		}
		return energyTime(m, below), how{way: energy, gate: below}
	}
	return logLog(m, below, above), how{line, below, above}
}

func leastAt(m float64, below, above *Gate) (float64, how) {
	switch {
	case below != nil && at(m, below):
		return below.LeastS, how{way: atGate, gate: below}
	case above == nil:
		return 0, how{way: beyondLeast}
	case below == nil && math.IsInf(above.GreatestS, 1):
		return above.LeastS, how{way: heldLonger, gate: above}
	case above.Release == Instant || math.IsInf(above.LeastS, 1):
		return above.LeastS, how{way: leastOf, gate: above}
	}
	least := energyTime(m, above)
	if below != nil {
		least = min(least, below.LeastS)
	}
	return least, how{way: energy, gate: above}
}

func at(m float64, g *Gate) bool { return math.Abs(m/g.Multiple-1) <= 1e-12 }

func percent(g *Gate) string {
	return strconv.FormatFloat(quantity.Round(100*g.Multiple), 'g', -1, 64) + " %"
}

// logLog is the greatest time on the straight line between two gates.
func logLog(m float64, a, b *Gate) float64 {
	share := math.Log(m/a.Multiple) / math.Log(b.Multiple/a.Multiple)
	return math.Exp(math.Log(a.GreatestS) + share*math.Log(b.GreatestS/a.GreatestS))
}

// energyTime is the time at a multiple with the t·I² of a gate: its least time
// for the gate above, its greatest for the gate below.
func energyTime(m float64, g *Gate) float64 {
	t := g.LeastS
	if g.Multiple < m {
		t = g.GreatestS
	}
	return t * (g.Multiple / m) * (g.Multiple / m)
}

// Least returns the least opening time in s; it is open where the device does
// not open at that current.
func (o Opening) Least() figure.Figure {
	if math.IsInf(o.LeastS, 1) {
		return figure.Open(figure.Because(o.says("carries %s without opening")))
	}
	return figure.Worked(o.LeastS, "s", func() []figure.Step { return []figure.Step{o.step("least", o.least, o.LeastS)} })
}

// Greatest returns the greatest opening time in s; it is open where the device
// need not open at that current.
func (o Opening) Greatest() figure.Figure {
	if math.IsInf(o.GreatestS, 1) {
		return figure.Open(figure.Because(o.says("need not open at %s")))
	}
	return figure.Worked(o.GreatestS, "s", func() []figure.Step { return []figure.Step{o.step("greatest", o.greatest, o.GreatestS)} })
}

// Steps returns the working of those times that are known.
func (o Opening) Steps() []figure.Step {
	steps := make([]figure.Step, 0, 2)
	if !math.IsInf(o.LeastS, 1) {
		steps = append(steps, o.step("least", o.least, o.LeastS))
	}
	if !math.IsInf(o.GreatestS, 1) {
		steps = append(steps, o.step("greatest", o.greatest, o.GreatestS))
	}
	return steps
}

func (o Opening) says(what string) string {
	current := quantity.New(o.amps, "A").Format(quantity.Metric)
	return fmt.Sprintf("a %s device of %s "+what, o.curve.Family, quantity.New(o.curve.RatingA, "A").Format(quantity.Metric), current)
}

func (o Opening) step(end string, by how, seconds float64) figure.Step {
	return figure.Step{
		Formula: end + " opening time of " + o.curve.Family + ": " + by.String(),
		Source:  o.curve.source(),
		Inputs: []figure.Input{
			{Symbol: "I", Value: quantity.Round(o.amps), Unit: "A", From: "current"},
			{Symbol: "In", Value: o.curve.RatingA, Unit: "A", From: "rating"},
			{Symbol: "I/In", Value: quantity.Round(100 * o.amps / o.curve.RatingA), Unit: "%", From: "current and rating"},
		},
		Result: quantity.Round(seconds), Unit: "s",
	}
}

// source names the document and the least of the trusts of its gates.
func (c Curve) source() string {
	for _, trust := range []string{"practice", "from memory, unverified"} {
		for _, g := range c.gates {
			if g.Trust == trust {
				return c.Source + "; " + trust
			}
		}
	}
	if len(c.gates) > 0 && c.gates[0].Trust != "" {
		return c.Source + "; " + c.gates[0].Trust
	}
	return c.Source
}
