package facts

import (
	"math"
	"slices"

	"driploop/model/quantity"
	"driploop/model/record"
)

// exposures ranks what surrounds equipment, driest first.
var exposures = []string{"dry", "damp", "wet", "washed", "immersed"}

// wetter tells whether exposure a is wetter than b.
func wetter(a, b string) bool {
	return slices.Index(exposures, a) > slices.Index(exposures, b)
}

// Segment is the facts of one part of a conductor's route.
type Segment struct {
	Subject
	Conductor string   `json:"conductor"`
	Role      string   `json:"role"`
	Duty      string   `json:"duty"`
	LengthMM  *float64 `json:"length_mm,omitempty"`
	In        *string  `json:"in,omitempty"` // open, loom, conduit, trunking, tray, sheath, enclosure
	Space     *string  `json:"space,omitempty"`
	SpaceKind *string  `json:"space_kind,omitempty"`
	Exposure  *string  `json:"exposure,omitempty"`
	// SupportMM is the largest distance between supports.
	SupportMM   *float64 `json:"support_mm,omitempty"`
	SupportKind *string  `json:"support_kind,omitempty"`
	// ToDisconnect: a conductor between a battery and its disconnect switch.
	ToDisconnect bool `json:"to_disconnect"`
	Hazards
	Conduit
}

func (b *Builder) segment(w *wire, g *record.Segment, toDisconnect bool) *Segment {
	f := b.made.segments.take()
	f.Subject, f.Conductor, f.ToDisconnect = b.subject(g.Path), w.ID, toDisconnect
	f.Role, f.Duty = w.facts.Role, w.facts.Duty
	s := &f.Subject
	putMeasure(s, "length_mm", &f.LengthMM, &g.Length, "length")
	put(s, "in", &f.In, &g.In, "in")
	put(s, "space", &f.Space, &g.Space, "space")
	putMeasure(s, "support_mm", &f.SupportMM, &g.Support, "support")
	put(s, "support_kind", &f.SupportKind, &g.SupportKind, "support_kind")
	b.surroundings(s, &g.Space, &f.SpaceKind, &f.Exposure, nil)
	b.hazards(s, &f.Hazards, w, g)
	b.conduit(s, &f.Conduit, w.Conductor, g)
	return f
}

// surroundings sets facts of the space that the subject names: its kind, exposure
// and fuel vapour, as far as there is a place for them.
func (b *Builder) surroundings(s *Subject, name *record.Text, kind, exposure, vapour **string) {
	space := b.record.Space(name.V)
	if space == nil {
		for _, one := range [...]struct {
			fact string
			to   **string
		}{{"space_kind", kind}, {"exposure", exposure}, {"fuel_vapour", vapour}} {
			if one.to != nil {
				s.missing(one.fact, "space")
			}
		}
		return
	}
	for _, one := range [...]struct {
		fact, entry string
		to          **string
		from        *record.Text
	}{
		{"space_kind", "kind", kind, &space.Kind},
		{"exposure", "exposure", exposure, &space.Exposure},
		{"fuel_vapour", "fuel_vapour", vapour, &space.FuelVapour},
	} {
		if one.to != nil {
			putOf(s, one.fact, one.to, one.from, space.Path, one.entry)
		}
	}
}

// route sets where a conductor runs: the sum of its segments against its
// length, and the worst exposure on its way.
func (b *Builder) route(s *Subject, f *Conductor, c *record.Conductor) {
	putMeasure(s, "length_mm", &f.LengthMM, &c.Length, "length")
	if len(c.Route) == 0 {
		for _, fact := range [...]string{"route_mm", "route_gap_mm", "wettest"} {
			s.missing(fact, "route")
		}
		return
	}
	total, whole, everywhere := 0.0, true, true
	for _, g := range c.Route {
		if g.Length.Is() {
			total += g.Length.V.Base
		} else {
			whole = false
			s.lacks("route_mm", g.Path, "length")
		}
		space := b.record.Space(g.Space.V)
		switch {
		case space == nil:
			everywhere = false
			s.lacks("wettest", g.Path, "space")
		case !space.Exposure.Is():
			everywhere = false
			s.lacks("wettest", space.Path, "exposure")
		case f.Wettest == nil || wetter(space.Exposure.V, *f.Wettest):
			f.Wettest = &space.Exposure.V
		}
	}
	if whole {
		f.RouteMM = s.number(quantity.Round(total))
	}
	if !everywhere {
		f.Wettest = nil
	}
	if s.derivable("route_gap_mm", operand{"length_mm", f.LengthMM}, operand{"route_mm", f.RouteMM}) {
		f.RouteGapMM = s.number(quantity.Round(math.Abs(*f.LengthMM - *f.RouteMM)))
	}
}
