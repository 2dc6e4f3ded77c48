package circuit

import (
	"fmt"
	"math"
	"slices"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Unknown values are solved with two made-up ones, different for each: what does
// not change between the two does not depend on them. These are their sizes.
const (
	guessOhms = 0.0001 // so little that no made-up value keeps a load from being fed
	guessAmps = 3.0
	guessVolt = 12.0
)

// sensible bounds what any measure of a boat can be, in its base unit; beyond it
// an entry counts as not made, so that no figure overflows.
const sensible = 1e12

// number returns a measure that is a sensible number.
func number(m *record.Measure) (float64, bool) {
	return m.V.Base, m.State == record.Given && math.Abs(m.V.Base) < sensible
}

// sane returns a measure that is a sensible number above zero.
func sane(m *record.Measure) (float64, bool) {
	v, ok := number(m)
	return v, ok && v > 1/sensible
}

// metal is what a conductor is made of, as far as the record tells.
type metal struct {
	wire copper.Wire
	gaps []figure.Gap // why there is no wire
	cold span         // Ω of the whole conductor at 20 °C: the least and greatest that fit the record
}

// metalOf returns the metal of a conductor.
func metalOf(c *record.Conductor) metal {
	m := metal{}
	if size, ok := c.Size.Get(); !ok {
		m.gaps = []figure.Gap{figure.Missing(c.Path + ".size")}
	} else {
		spec := copper.Spec{Size: size, Class: c.Class.V, Material: c.Material.V}
		if tinned, ok := c.Tinned.Get(); ok {
			spec.Tinned = &tinned
		}
		wire, err := copper.Of(spec)
		if err != nil {
			m.gaps = []figure.Gap{figure.Because(c.Path + ": " + err.Error())}
		}
		m.wire = wire
	}
	gaps := m.gaps
	length, ok := sane(&c.Length)
	if !ok {
		gaps = append(slices.Clone(gaps), figure.Missing(c.Path+".length"))
	}
	m.cold = span{low: m.wire.R20Low * length / 1000, high: m.wire.R20 * length / 1000}
	if len(gaps) > 0 {
		m.cold = span{low: guessOhms, high: guessOhms, gaps: gaps}
	}
	return m
}

// recordedOhms returns a recorded resistance in Ω; one that is not recorded
// counts as none.
func recordedOhms(m *record.Measure) span {
	v, ok := sane(m)
	if !ok {
		return exactly(0)
	}
	return exactly(v / 1000)
}

// recordedAmps returns a recorded current, or the gap that names its entry.
func recordedAmps(m *record.Measure, path, entry string) span {
	amps, ok := number(m)
	if !ok || amps < 0 {
		return span{low: guessAmps, high: guessAmps, gaps: []figure.Gap{figure.Missing(path + "." + entry)}}
	}
	return exactly(amps)
}

// setDraw sets how a load draws current: by its recorded kind, else a nameplate
// current is constant, a nameplate power is constant power, and a recorded
// resistance a resistor.
func (n *network) setDraw(b *branch) {
	c := b.comp
	b.taking = &taking{}
	kind := c.LoadKind.V
	switch {
	case kind == "resistance", kind == "" && c.LoadOhms.Is() && !c.Current.Is() && !c.Power.Is():
		b.draw = resistive
		b.ohms = n.loadOhms(c)
	case kind == "constant-power", kind == "" && c.Power.Is() && !c.Current.Is():
		b.draw = constantPower
		b.watts = n.loadWatts(c)
	default:
		b.draw = constantCurrent
		b.current = n.loadAmps(c)
	}
}

// loadAmps returns the nameplate current of a load.
func (n *network) loadAmps(c *record.Component) span {
	if _, ok := c.Current.Get(); ok {
		return recordedAmps(&c.Current, c.Path, "current")
	}
	power, hasPower := sane(&c.Power)
	volts, hasVolts := n.ratedVolts(c)
	if hasPower && hasVolts {
		return exactly(power / volts).by(func() figure.Step {
			return figure.Step{
				Formula: "nameplate current: I = P/U", Source: "definition of power",
				Inputs: []figure.Input{
					{Symbol: "P", Value: power, Unit: "W", From: c.Path + ".power"},
					{Symbol: "U", Value: volts, Unit: "V", From: n.ratedFrom(c)},
				},
				Result: quantity.Round(power / volts), Unit: "A",
			}
		})
	}
	field := c.Path + ".current"
	if hasPower {
		field = c.Path + ".nominal"
	}
	return span{low: guessAmps, high: guessAmps, gaps: []figure.Gap{figure.Missing(field)}}
}

func (n *network) loadWatts(c *record.Component) span {
	if p, ok := sane(&c.Power); ok {
		return exactly(p)
	}
	amps, hasAmps := sane(&c.Current)
	volts, hasVolts := n.ratedVolts(c)
	if hasAmps && hasVolts {
		return exactly(amps * volts)
	}
	return span{low: guessAmps * guessVolt, high: guessAmps * guessVolt, gaps: []figure.Gap{figure.Missing(c.Path + ".power")}}
}

func (n *network) loadOhms(c *record.Component) span {
	if r, ok := sane(&c.LoadOhms); ok {
		return exactly(r / 1000)
	}
	volts, hasVolts := n.ratedVolts(c)
	if amps, ok := sane(&c.Current); ok && hasVolts {
		return exactly(volts / amps)
	}
	if watts, ok := sane(&c.Power); ok && hasVolts {
		return exactly(volts * volts / watts)
	}
	return span{low: guessVolt / guessAmps, high: guessVolt / guessAmps, gaps: []figure.Gap{figure.Missing(c.Path + ".load_ohms")}}
}

// ratedVolts returns the rated voltage of a component, else the vessel's.
func (n *network) ratedVolts(c *record.Component) (float64, bool) {
	if v, ok := sane(&c.Nominal); ok {
		return v, true
	}
	return sane(&n.record.Vessel.System)
}

func (n *network) ratedFrom(c *record.Component) string {
	if c.Nominal.Is() {
		return c.Path + ".nominal"
	}
	return n.vesselPath("system")
}

func (n *network) vesselPath(field string) string {
	if p := n.record.Vessel.Path; p != "" {
		return p + "." + field
	}
	return "vessel." + field
}

// spread returns a made-up factor between 1 and 2 for the i-th unknown.
func spread(i, round int) float64 {
	const golden = 0.6180339887498949
	x := math.Mod(float64(i+1)*golden*float64(round*2+1), 1)
	return 1 + x
}

func branchPlace(b *branch) string {
	if b.cond != nil {
		return fmt.Sprintf("conductor %s", b.id)
	}
	return fmt.Sprintf("%s %s", b.comp.Kind.V, b.id)
}
