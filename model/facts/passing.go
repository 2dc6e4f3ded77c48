package facts

import (
	"driploop/model/copper"
	"driploop/model/figure"
	"driploop/model/record"
)

// passing sets how many conductors and cables go through, and how thick they
// can be.
func (b *Builder) passing(s *Subject, f *Penetration, p *record.Penetration) {
	names, ok := p.Passes.Get()
	diameters := []string{"thin_least_mm", "thin_most_mm", "thick_least_mm", "thick_most_mm", "measured"}
	if !ok || len(names) == 0 {
		for _, fact := range diameters {
			s.missing(fact, "passes")
		}
	}
	if !ok {
		s.missing("passing", "passes")
		s.missing("cables", "passes")
		return
	}
	f.Passing = s.count(len(names))
	b.countCables(s, f, names)
	for _, name := range names {
		if c := b.record.Conductor(name); c != nil {
			thickness(s, f, c)
		}
	}
	for _, fact := range diameters[:4] {
		if s.Open.Has(fact) {
			f.ThinLeastMM, f.ThinMostMM, f.ThickLeastMM, f.ThickMostMM = nil, nil, nil, nil
		}
	}
	if !s.Open.Has("measured") {
		f.Measured = s.flag(true)
	}
}

// thickness widens the bounds of what passes by one conductor.
func thickness(s *Subject, f *Penetration, c *record.Conductor) {
	if !c.Diameter.Is() {
		s.lacks("measured", c.Path, "diameter")
	}
	least, most, gaps := outside(c)
	for _, bound := range []struct {
		fact  string
		to    **float64
		value float64
		lower bool
	}{
		{"thin_least_mm", &f.ThinLeastMM, least, true},
		{"thin_most_mm", &f.ThinMostMM, most, true},
		{"thick_least_mm", &f.ThickLeastMM, least, false},
		{"thick_most_mm", &f.ThickMostMM, most, false},
	} {
		if gaps != nil {
			s.open(bound.fact, gaps...)
			continue
		}
		if *bound.to == nil || bound.lower == (bound.value < **bound.to) {
			*bound.to = s.number(bound.value)
		}
	}
}

// countCables counts separate cables. Whether conductors share a sheath has to
// be recorded once there are two of them.
func (b *Builder) countCables(s *Subject, f *Penetration, names []string) {
	if len(names) < 2 {
		f.Cables = s.count(len(names))
		return
	}
	sheaths, count := map[string]bool{}, 0
	for _, name := range names {
		c := b.record.Conductor(name)
		if c == nil {
			continue
		}
		sheath, ok := c.Sheath.Get()
		switch {
		case !ok:
			s.lacks("cables", c.Path, "sheath")
		case sheath == "none" || !sheaths[sheath]:
			count++
			sheaths[sheath] = true
		}
	}
	if !s.Open.Has("cables") {
		f.Cables = s.count(count)
	}
}

// outside bounds the outside diameter of what a conductor brings to a hole, in
// mm: as recorded, of its sheath where it lies in one, else as computed for a
// single conductor.
func outside(c *record.Conductor) (least, most float64, gaps []figure.Gap) {
	if given, ok := c.Diameter.Get(); ok {
		return given.Base, given.Base, nil
	}
	missing := []figure.Gap{figure.Missing(c.Path + ".diameter")}
	size, ok := c.Size.Get()
	if !ok || c.Sheath.Or("none") != "none" {
		return 0, 0, missing
	}
	computed, err := copper.Diameter(copper.Spec{Size: size, Class: c.Class.V}, nil)
	if err != nil {
		return 0, 0, missing
	}
	return computed.Low, computed.High, nil
}
