package facts

import (
	"math"
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
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

func segment(r *record.Record, a *circuit.Analysis, toDisconnect bool, c *record.Conductor, g *record.Segment) *Segment {
	f := &Segment{
		Subject: Subject{Path: g.Path}, Conductor: c.ID, Role: c.Role.V, Duty: c.Duty.Or("normal"),
		ToDisconnect: toDisconnect,
	}
	s := &f.Subject
	putMeasure(s, "length_mm", &f.LengthMM, &g.Length, "length")
	put(s, "in", &f.In, &g.In, "in")
	put(s, "space", &f.Space, &g.Space, "space")
	putMeasure(s, "support_mm", &f.SupportMM, &g.Support, "support")
	put(s, "support_kind", &f.SupportKind, &g.SupportKind, "support_kind")
	surroundings(s, r, g.Space, "space", &f.SpaceKind, &f.Exposure, nil)
	hazards(s, &f.Hazards, r, a, c, g)
	conduit(s, &f.Conduit, r, c, g)
	return f
}

// surroundings sets facts of the space that an entry names: its kind, exposure
// and fuel vapour, as far as there is a place for them.
func surroundings(s *Subject, r *record.Record, name record.Text, field string, kind, exposure, vapour **string) {
	space := r.Space(name.V)
	if space == nil {
		space = &record.Space{}
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
		switch {
		case one.to == nil:
		case space.Path == "":
			s.missing(one.fact, field)
		default:
			putOf(s, one.fact, one.to, one.from, space.Path, one.entry)
		}
	}
}

// putOf sets a fact from an entry elsewhere in the record, given by the path of
// what has it and its name there.
func putOf[T any](s *Subject, fact string, to **T, v *record.Value[T], of, entry string) {
	if !v.Is() {
		s.lacks(fact, of, entry)
		return
	}
	*to = &v.V
}

// route sets where a conductor runs: the sum of its segments against its
// length, and the worst exposure on its way.
func route(s *Subject, f *Conductor, r *record.Record, c *record.Conductor) {
	putMeasure(s, "length_mm", &f.LengthMM, &c.Length, "length")
	if len(c.Route) == 0 {
		gap := figure.Missing(s.field("route"))
		s.open("route_mm", gap)
		s.open("route_gap_mm", gap)
		s.open("wettest", gap)
		return
	}
	total, whole := 0.0, true
	wettest := ""
	for _, g := range c.Route {
		if length, ok := g.Length.Get(); ok {
			total += length.Base
		} else {
			whole = false
			s.lacks("route_mm", g.Path, "length")
		}
		space := r.Space(g.Space.V)
		switch {
		case space == nil:
			s.lacks("wettest", g.Path, "space")
		case !space.Exposure.Is():
			s.lacks("wettest", space.Path, "exposure")
		case wettest == "" || wetter(space.Exposure.V, wettest):
			wettest = space.Exposure.V
		}
	}
	if whole {
		f.RouteMM = ptr(quantity.Round(total))
	}
	if !s.Open.Has("wettest") {
		f.Wettest = &wettest
	}
	derive(s, "route_gap_mm", &f.RouteGapMM, []string{"length_mm", "route_mm"}, func() float64 {
		return quantity.Round(math.Abs(*f.LengthMM - *f.RouteMM))
	})
}
