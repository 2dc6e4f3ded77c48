package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/physics"
	"driploop/model/record"
)

// Conduit is how full the conduit of a segment is.
type Conduit struct {
	// Lead: of all conductors that share the conduit, the first of the record; the
	// conduit is judged there once.
	Lead  bool `json:"conduit_lead"`
	Holds *int `json:"conduit_holds,omitempty"` // cables in it
	// FillLeastPct and FillMostPct bound the share of the bore that they take:
	// equal where every diameter is recorded, else computed. FillMeasured is known,
	// and true, once every one is recorded.
	FillLeastPct *float64 `json:"fill_least_pct,omitempty"`
	FillMostPct  *float64 `json:"fill_most_pct,omitempty"`
	FillMeasured *bool    `json:"fill_measured,omitempty"`
}

// conduit sets how full the conduit of a segment is.
func (b *Builder) conduit(s *Subject, f *Conduit, c *record.Conductor, g *record.Segment) {
	if g.In.V != "conduit" {
		f.Lead = b.leads(c, g)
		s.because("the segment runs in no conduit", "conduit_holds", "fill_least_pct", "fill_most_pct", "fill_measured")
		return
	}
	members, gaps := b.sharing(c, g)
	f.Lead = members[0] == c
	if gaps != nil {
		for _, fact := range [...]string{"conduit_holds", "fill_least_pct", "fill_most_pct", "fill_measured"} {
			s.open(fact, gaps...)
		}
		return
	}
	least, most := fill(s, f, members)
	if !g.ConduitBore.Is() {
		s.missing("fill_least_pct", "conduit_bore")
		s.missing("fill_most_pct", "conduit_bore")
		return
	}
	if !s.Open.Has("fill_least_pct") {
		bore := g.ConduitBore.V.Base
		putComputed(s, "fill_least_pct", &f.FillLeastPct, physics.Fill(bore, least...))
		putComputed(s, "fill_most_pct", &f.FillMostPct, physics.Fill(bore, most...))
	}
}

// fill counts the cables of a conduit and returns the bounds of their diameters.
// The cores of one sheath are one cable.
func fill(s *Subject, f *Conduit, members []*record.Conductor) (least, most []float64) {
	sheaths := map[string]bool{}
	for _, m := range members {
		sheath, ok := m.Sheath.Get()
		switch {
		case !ok && len(members) > 1:
			s.lacks("conduit_holds", m.Path, "sheath")
		case sheaths[sheath]:
			continue
		}
		if ok && sheath != "none" {
			sheaths[sheath] = true
		}
		low, high, gaps := outside(m)
		if gaps != nil {
			s.open("fill_least_pct", gaps...)
			s.open("fill_most_pct", gaps...)
		}
		if !m.Diameter.Is() {
			s.lacks("fill_measured", m.Path, "diameter")
		}
		least, most = append(least, low), append(most, high)
	}
	if !s.Open.Has("conduit_holds") {
		f.Holds = s.count(len(least))
	}
	if !s.Open.Has("fill_measured") {
		f.FillMeasured = s.flag(true)
	}
	return least, most
}

// sharing returns the conductors that lie in one conduit with a segment of c, c
// included, in order of the record: those of its bundle in that space.
func (b *Builder) sharing(c *record.Conductor, g *record.Segment) ([]*record.Conductor, []figure.Gap) {
	name, ok := g.Bundle.Get()
	if !ok {
		return []*record.Conductor{c}, []figure.Gap{figure.Missing(g.Path + ".bundle")}
	}
	if name == "none" {
		return []*record.Conductor{c}, nil
	}
	var listed []string
	carrying := 0
	if bundle := b.record.Bundle(name); bundle != nil {
		listed, carrying = bundle.Members.V, bundle.Carrying.V
	}
	var members []*record.Conductor
	for _, other := range b.record.Conductors {
		if other == c || beside(other, g, listed) {
			members = append(members, other)
		}
	}
	if carrying > len(members) {
		return members, []figure.Gap{figure.Because("bundle " + name + " holds conductors that the record does not list")}
	}
	return members, nil
}

// beside tells whether a conductor lies in the bundle of a segment, in its space,
// or is listed as a member of it.
func beside(other *record.Conductor, g *record.Segment, listed []string) bool {
	for _, o := range other.Route {
		if o.Bundle.V == g.Bundle.V && o.Space.V == g.Space.V {
			return true
		}
	}
	return slices.Contains(listed, other.ID)
}

// leads tells whether c is the first of those that sharing returns.
func (b *Builder) leads(c *record.Conductor, g *record.Segment) bool {
	if !g.Bundle.Is() || g.Bundle.V == "none" {
		return true
	}
	var listed []string
	if bundle := b.record.Bundle(g.Bundle.V); bundle != nil {
		listed = bundle.Members.V
	}
	for _, other := range b.record.Conductors {
		if other == c || beside(other, g, listed) {
			return other == c
		}
	}
	return true
}
