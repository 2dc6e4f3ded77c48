package circuit

import (
	"fmt"
	"math"

	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Unknown values are solved with two made-up ones, different for each: what does
// not change between the two does not depend on them. These are their sizes.
const (
	guessOhms = 0.01
	guessAmps = 3.0
	guessVolt = 12.0
)

// sane tells whether a measure is a finite number above zero.
func sane(m record.Measure) (float64, bool) {
	q, ok := m.Get()
	v := q.Base
	return v, ok && v > 0 && !math.IsInf(v, 0) && !math.IsNaN(v)
}

// conductorWire returns the copper of a conductor, or what the record lacks.
func conductorWire(c *record.Conductor) (copper.Wire, []figure.Gap) {
	size, ok := c.Size.Get()
	if !ok {
		return copper.Wire{}, []figure.Gap{figure.Missing(c.Path + ".size")}
	}
	spec := copper.Spec{Size: size, Class: c.Class.V, Material: c.Material.V}
	if tinned, ok := c.Tinned.Get(); ok {
		spec.Tinned = &tinned
	}
	wire, err := copper.Of(spec)
	if err != nil {
		return copper.Wire{}, []figure.Gap{{Field: "", Why: c.Path + ": " + err.Error()}}
	}
	return wire, nil
}

// conductorOhms returns the resistance of a whole conductor at 20 °C in Ω: the
// greatest that fits the record as high, the least as low.
func conductorOhms(c *record.Conductor) span {
	wire, gaps := conductorWire(c)
	length, ok := sane(c.Length)
	if !ok {
		gaps = append(gaps, figure.Missing(c.Path+".length"))
	}
	if len(gaps) > 0 {
		return span{low: guessOhms, high: guessOhms, gaps: gaps}
	}
	return span{low: wire.R20Low * length / 1000, high: wire.R20 * length / 1000}
}

// recordedOhms returns a recorded resistance in Ω; one that is not recorded
// counts as none.
func recordedOhms(m record.Measure) span {
	v, ok := sane(m)
	if !ok {
		return exactly(0)
	}
	return exactly(v / 1000)
}

// recordedAmps returns a recorded current, or the gap that names its entry.
func recordedAmps(m record.Measure, path string) span {
	q, ok := m.Get()
	if !ok || math.IsNaN(q.Base) || math.IsInf(q.Base, 0) || q.Base < 0 {
		return span{low: guessAmps, high: guessAmps, gaps: []figure.Gap{figure.Missing(path)}}
	}
	return exactly(q.Base)
}

// setDraw sets how a load draws current: by its recorded kind, else a nameplate
// current is constant, a nameplate power is constant power, and a recorded
// resistance a resistor.
func (n *network) setDraw(b *branch) {
	c := b.comp
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
		return recordedAmps(c.Current, c.Path+".current")
	}
	power, hasPower := sane(c.Power)
	volts, hasVolts := n.ratedVolts(c)
	if hasPower && hasVolts {
		return exactly(power/volts, figure.Step{
			Formula: "nameplate current: I = P/U", Source: "definition of power",
			Inputs: []figure.Input{
				{Symbol: "P", Value: power, Unit: "W", From: c.Path + ".power"},
				{Symbol: "U", Value: volts, Unit: "V", From: n.ratedFrom(c)},
			},
			Result: quantity.Round(power / volts), Unit: "A",
		})
	}
	field := c.Path + ".current"
	if hasPower {
		field = c.Path + ".nominal"
	}
	return span{low: guessAmps, high: guessAmps, gaps: []figure.Gap{figure.Missing(field)}}
}

func (n *network) loadWatts(c *record.Component) span {
	if p, ok := sane(c.Power); ok {
		return exactly(p)
	}
	amps, hasAmps := sane(c.Current)
	volts, hasVolts := n.ratedVolts(c)
	if hasAmps && hasVolts {
		return exactly(amps * volts)
	}
	return span{low: guessAmps * guessVolt, high: guessAmps * guessVolt, gaps: []figure.Gap{figure.Missing(c.Path + ".power")}}
}

func (n *network) loadOhms(c *record.Component) span {
	if r, ok := sane(c.LoadOhms); ok {
		return exactly(r / 1000)
	}
	volts, hasVolts := n.ratedVolts(c)
	if amps, ok := sane(c.Current); ok && hasVolts {
		return exactly(volts / amps)
	}
	if watts, ok := sane(c.Power); ok && hasVolts {
		return exactly(volts * volts / watts)
	}
	return span{low: guessVolt / guessAmps, high: guessVolt / guessAmps, gaps: []figure.Gap{figure.Missing(c.Path + ".load_ohms")}}
}

// ratedVolts returns the rated voltage of a component, else the vessel's.
func (n *network) ratedVolts(c *record.Component) (float64, bool) {
	if v, ok := sane(c.Nominal); ok {
		return v, true
	}
	return sane(n.record.Vessel.System)
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
