package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Bundling is the conductors that a conductor runs with.
type Bundling struct {
	// BundleSize is the number of current-carrying conductors where most run
	// together, itself included. It is not known unless each of its bundles says
	// how many it has: old wiring that no record names counts too.
	BundleSize *float64 `json:"bundle_size,omitempty"`
	BundledA   *float64 `json:"bundled_a,omitempty"` // allowable with the bundling factor
	// LoadPct is the current against what is allowable on its own.
	LoadPct *float64 `json:"load_pct,omitempty"`
}

func (b *Builder) bundling(s *Subject, f *Bundling, c *record.Conductor, result *circuit.ConductorResult) {
	gaps := b.uncounted(s, c)
	if len(gaps) > 0 {
		s.open("bundle_size", gaps...)
		s.open("bundled_a", gaps...)
		return
	}
	putFigure(s, "bundle_size", &f.BundleSize, &result.BundleCount)
	putFigure(s, "bundled_a", &f.BundledA, &result.Bundled)
}

// uncounted returns what is missing to know how many conductors run together.
func (b *Builder) uncounted(s *Subject, c *record.Conductor) []figure.Gap {
	var gaps []figure.Gap
	for i, g := range c.Route {
		name, ok := g.Bundle.Get()
		before := slices.ContainsFunc(c.Route[:i], func(other *record.Segment) bool { return other.Bundle.Is() && other.Bundle.V == name })
		if !ok || name == "none" || before {
			continue
		}
		if b := b.record.Bundle(name); b == nil || !b.Carrying.Is() {
			gaps = append(gaps, figure.Missing("bundles."+name+".carrying"))
		}
	}
	if !c.Sheath.Is() {
		gaps = append(gaps, figure.Missing(s.field("sheath")))
	}
	return gaps
}
