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
func conduit(s *Subject, f *Conduit, r *record.Record, c *record.Conductor, g *record.Segment) {
	members, gaps := sharing(r, c, g)
	f.Lead = members[0] == c
	all := []string{"conduit_holds", "fill_least_pct", "fill_most_pct", "fill_measured"}
	if g.In.V != "conduit" {
		gaps = []figure.Gap{figure.Because("the segment runs in no conduit")}
	}
	if gaps != nil {
		for _, fact := range all {
			s.open(fact, gaps...)
		}
		return
	}
	least, most := fill(s, f, members)
	bore, ok := g.ConduitBore.Get()
	if !ok {
		s.missing("fill_least_pct", "conduit_bore")
		s.missing("fill_most_pct", "conduit_bore")
		return
	}
	if !s.Open.Has("fill_least_pct") {
		putFigure(s, "fill_least_pct", &f.FillLeastPct, physics.Fill(bore.Base, least...))
		putFigure(s, "fill_most_pct", &f.FillMostPct, physics.Fill(bore.Base, most...))
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
		f.Holds = ptr(len(least))
	}
	if !s.Open.Has("fill_measured") {
		f.FillMeasured = ptr(true)
	}
	return least, most
}

// sharing returns the conductors that lie in one conduit with a segment of c, c
// included, in order of the record: those of its bundle in that space.
func sharing(r *record.Record, c *record.Conductor, g *record.Segment) ([]*record.Conductor, []figure.Gap) {
	name, ok := g.Bundle.Get()
	if !ok {
		return []*record.Conductor{c}, []figure.Gap{figure.Missing(g.Path + ".bundle")}
	}
	if name == "none" {
		return []*record.Conductor{c}, nil
	}
	var listed []string
	carrying := 0
	if b := r.Bundle(name); b != nil {
		listed, carrying = b.Members.V, b.Carrying.V
	}
	var members []*record.Conductor
	for _, other := range r.Conductors {
		there := slices.ContainsFunc(other.Route, func(o *record.Segment) bool {
			return o.Bundle.V == name && o.Space.V == g.Space.V
		})
		if other == c || there || slices.Contains(listed, other.ID) {
			members = append(members, other)
		}
	}
	if carrying > len(members) {
		return members, []figure.Gap{figure.Because("bundle " + name + " holds conductors that the record does not list")}
	}
	return members, nil
}
