package circuit

import (
	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// setCopper fills in what follows from a conductor by itself: area, resistance,
// and the amperage allowed where it runs.
func (n *network) setCopper(r *ConductorResult, b *branch) {
	c, wire, gaps := b.cond, &b.metal.wire, b.metal.gaps
	if len(gaps) > 0 {
		r.AreaMM2, r.CircularMils = figure.Open(gaps...), figure.Open(gaps...)
		r.R20 = figure.Open(b.metal.cold.gaps...)
	} else {
		area := func() []figure.Step { return []figure.Step{wire.AreaStep()} }
		r.AreaMM2 = figure.Worked(wire.AreaMM2, "mm2", area)
		r.CircularMils = figure.Worked(wire.CircularMils, "", area)
		r.R20 = resistance20(c, wire)
	}
	r.DiameterMM = diameter(c)
	r.Table5 = table5(c)
	n.setAllowable(r, c)
	r.BundleCount = n.bundleCount(c)
	r.Bundled = bundled(r)
}

func resistance20(c *record.Conductor, w *copper.Wire) figure.Figure {
	length, ok := sane(&c.Length)
	if !ok {
		return figure.Open(figure.Missing(c.Path + ".length"))
	}
	mohm := w.R20 * length
	return figure.Worked(mohm, "mohm", func() []figure.Step {
		return []figure.Step{w.R20Step(), {
			Formula: "resistance of the conductor: R = r·L", Source: "definition",
			Inputs: []figure.Input{
				{Symbol: "r (mohm/mm)", Value: quantity.Round(w.R20), From: "greatest resistance at 20 °C"},
				{Symbol: "L", Value: length, Unit: "mm", From: c.Path + ".length"},
			},
			Result: quantity.Round(mohm), Unit: "mohm",
		}}
	})
}

func diameter(c *record.Conductor) figure.Figure {
	if d, ok := sane(&c.Diameter); ok {
		return figure.Worked(d, "mm", func() []figure.Step {
			return []figure.Step{{
				Formula: "outside diameter as recorded", Source: "the record",
				Inputs: []figure.Input{{Symbol: "D", Value: d, Unit: "mm", From: c.Path + ".diameter"}}, Result: d, Unit: "mm",
			}}
		})
	}
	return figure.Open(figure.Missing(c.Path + ".diameter"))
}

func table5(c *record.Conductor) figure.Figure {
	size, insulation, gaps := sizeAndInsulation(c)
	if len(gaps) > 0 {
		return figure.Open(gaps...)
	}
	return copper.Table5Figure(size, insulation)
}

func sizeAndInsulation(c *record.Conductor) (quantity.WireSize, float64, []figure.Gap) {
	var gaps []figure.Gap
	size, ok := c.Size.Get()
	if !ok {
		gaps = append(gaps, figure.Missing(c.Path+".size"))
	}
	insulation, ok := number(&c.Insulation)
	if !ok {
		gaps = append(gaps, figure.Missing(c.Path+".insulation"))
	}
	return size, insulation, gaps
}

func hottestAir(space *record.Space, ambient float64) figure.Figure {
	return figure.Worked(ambient, "degC", func() []figure.Step {
		return []figure.Step{{
			Formula: "hottest space crossed", Source: "the record",
			Inputs: []figure.Input{{Symbol: "Ta", Value: ambient, Unit: "degC", From: space.Path + ".ambient"}},
			Result: ambient, Unit: "degC",
		}}
	})
}

// setAllowable takes the least amperage of all spaces that a conductor crosses.
// A space that the record does not describe leaves it open: it could be the
// hottest.
func (n *network) setAllowable(r *ConductorResult, c *record.Conductor) {
	size, insulation, gaps := sizeAndInsulation(c)
	engine, engineGaps := figure.False(), []figure.Gap(nil)
	hottest := figure.Figure{}
	var hotGaps []figure.Gap
	best := figure.Figure{}
	if len(c.Route) == 0 {
		missing := figure.Missing(c.Path + ".route")
		engineGaps, hotGaps = append(engineGaps, missing), append(hotGaps, missing)
	}
	for _, g := range c.Route {
		if g == nil {
			continue
		}
		space := n.spaces[g.Space.V]
		if !g.Space.Is() || space == nil {
			missing := figure.Missing(g.Path + ".space")
			engineGaps, hotGaps = append(engineGaps, missing), append(hotGaps, missing)
			continue
		}
		kind, hasKind := space.Kind.Get()
		if !hasKind {
			engineGaps = append(engineGaps, figure.Missing(space.Path+".kind"))
		}
		if kind == "engine" {
			engine = figure.True()
		}
		ambient, hasAmbient := number(&space.Ambient)
		if !hasAmbient {
			hotGaps = append(hotGaps, figure.Missing(space.Path+".ambient"))
		}
		if hasAmbient && (!hottest.Known || ambient > hottest.Value) {
			hottest = hottestAir(space, ambient)
		}
		if len(gaps) > 0 || !hasKind || !hasAmbient {
			continue
		}
		here := copper.Allowable(size, insulation, kind == "engine", &ambient)
		if r.HottestSpace == "" || !here.Known || best.Known && here.Value < best.Value {
			best, r.HottestSpace = here, space.ID
		}
	}
	r.InEngineSpace = engine
	if !engine.Value && len(engineGaps) > 0 {
		r.InEngineSpace = figure.OpenTruth(uniqueGaps(engineGaps)...)
	}
	r.HottestAmbient = hottest
	if len(hotGaps) > 0 {
		r.HottestAmbient = figure.Open(uniqueGaps(hotGaps)...)
	}
	gaps = append(gaps, engineGaps...)
	gaps = append(gaps, hotGaps...)
	if len(gaps) > 0 {
		r.Allowable, r.HottestSpace = figure.Open(uniqueGaps(gaps)...), ""
		return
	}
	r.Allowable = best
}

func bundled(r *ConductorResult) figure.Figure {
	if !r.Allowable.Known || !r.BundleCount.Known {
		gaps := append(append([]figure.Gap(nil), r.Allowable.Gaps...), r.BundleCount.Gaps...)
		return figure.Open(uniqueGaps(gaps)...)
	}
	return copper.Bundled(r.Allowable, int(r.BundleCount.Value))
}
