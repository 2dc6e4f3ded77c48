package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Hazards is what holds a segment of a conductor where it runs, and what may
// harm it there.
type Hazards struct {
	// ConductorMM is the length of the whole conductor.
	ConductorMM *float64 `json:"conductor_mm,omitempty"`
	// SupportMostMM is the most that can lie between two supports: the recorded
	// spacing, else the length of the whole conductor, which hangs from its ends.
	SupportMostMM *float64 `json:"support_most_mm,omitempty"`

	// BelowBilge: runs below normal bilge water. A segment in a dry space or above
	// deck does not, unless the record says so.
	BelowBilge   *bool `json:"below_bilge,omitempty"`
	MadeForWater *bool `json:"made_for_water,omitempty"`
	// Unfused: ungrounded, and a source reaches it through no fuse or breaker.
	Unfused *bool `json:"unfused,omitempty"`

	// DryExhaust and WetExhaust: such a part passes through the space.
	DryExhaust   *bool    `json:"dry_exhaust,omitempty"`
	WetExhaust   *bool    `json:"wet_exhaust,omitempty"`
	ExhaustDryMM *float64 `json:"exhaust_dry_mm,omitempty"`
	ExhaustWetMM *float64 `json:"exhaust_wet_mm,omitempty"`
	// FuelLine: a line of flammable liquid passes through the space.
	FuelLine     *bool    `json:"fuel_line,omitempty"`
	FuelLineMM   *float64 `json:"fuel_line_mm,omitempty"`
	FuelLineSide *string  `json:"fuel_line_side,omitempty"` // above, below, beside, tied
	RigidSupport *bool    `json:"rigid_support,omitempty"`

	WithAC *string `json:"with_ac,omitempty"` // none, separated, bundled, one-sheath
	// OpenWalkway and OpenMachinery: crosses a walkway, or shares the space with
	// moving machinery, and is not protected against mechanical harm.
	OpenWalkway   *bool    `json:"open_walkway,omitempty"`
	OpenMachinery *bool    `json:"open_machinery,omitempty"`
	MovingPartsMM *float64 `json:"moving_parts_mm,omitempty"`
	LoomRating    *string  `json:"loom_rating,omitempty"`
	// Undrained: level, and without drain holes.
	Undrained *bool `json:"undrained,omitempty"`
}

// hazards sets what is around a segment.
func (b *Builder) hazards(s *Subject, f *Hazards, w *wire, g *record.Segment) {
	space := b.record.Space(g.Space.V)
	if space == nil {
		space = &record.Space{Entry: record.Entry{Path: s.field("space")}}
	}
	held(s, f, w.Conductor, g)
	bilge(s, f, w.result, g, space)
	putMeasure(s, "exhaust_dry_mm", &f.ExhaustDryMM, &g.ExhaustDry, "exhaust_dry")
	putMeasure(s, "exhaust_wet_mm", &f.ExhaustWetMM, &g.ExhaustWet, "exhaust_wet")
	putTruth(s, "dry_exhaust", &f.DryExhaust, s.passes(&g.ExhaustDry, space, "dry"))
	putTruth(s, "wet_exhaust", &f.WetExhaust, s.passes(&g.ExhaustWet, space, "wet"))

	putTruth(s, "fuel_line", &f.FuelLine, s.present(g.FuelLine.Is() || g.FuelLineSide.Is(), &space.FuelLine, below(space, "fuel_line")))
	if g.FuelLineSide.V == "tied" {
		f.FuelLineMM = s.number(0)
	} else {
		putMeasure(s, "fuel_line_mm", &f.FuelLineMM, &g.FuelLine, "fuel_line")
	}
	put(s, "fuel_line_side", &f.FuelLineSide, &g.FuelLineSide, "fuel_line_side")
	put(s, "rigid_support", &f.RigidSupport, &g.RigidSupport, "rigid_support")

	withAC(s, f, &b.record.Vessel, g)
	unprotected := negated(s.truthOf(&g.Protected, s.own("protected")))
	machinery := s.present(g.MovingParts.Is(), &space.Machinery, below(space, "machinery"))
	putTruth(s, "open_walkway", &f.OpenWalkway, s.allOf(s.truthOf(&g.Walkway, s.own("walkway")), unprotected))
	putTruth(s, "open_machinery", &f.OpenMachinery, s.allOf(machinery, unprotected))
	putMeasure(s, "moving_parts_mm", &f.MovingPartsMM, &g.MovingParts, "moving_parts")
	put(s, "loom_rating", &f.LoomRating, &g.LoomRating, "loom_rating")
	putTruth(s, "undrained", &f.Undrained, s.allOf(s.truthOf(&g.Horizontal, s.own("horizontal")), negated(s.truthOf(&g.Drains, s.own("drains")))))
}

// below returns an entry of a space; of a space that the segment does not name,
// its name.
func below(space *record.Space, entry string) place {
	if space.ID == "" {
		return place{of: space.Path}
	}
	return place{space.Path, entry}
}

func held(s *Subject, f *Hazards, c *record.Conductor, g *record.Segment) {
	putMeasureOf(s, "conductor_mm", &f.ConductorMM, &c.Length, c.Path, "length")
	switch {
	case g.Support.Is():
		f.SupportMostMM = &g.Support.V.Base
	case f.ConductorMM != nil:
		f.SupportMostMM = f.ConductorMM
	default:
		s.missing("support_most_mm", "support")
	}
}

// aboveDeck are the kinds of space that bilge water does not come to.
var aboveDeck = [...]string{"open-deck", "cockpit", "helm", "mast"}

// bilge sets how a segment lies to bilge water.
func bilge(s *Subject, f *Hazards, result *circuit.ConductorResult, g *record.Segment, space *record.Space) {
	lies := s.among(&g.Bilge, s.own("bilge"), "below")
	if !lies.known && (space.Exposure.V == "dry" || slices.Contains(aboveDeck[:], space.Kind.V)) {
		lies = settled(false)
	}
	putTruth(s, "below_bilge", &f.BelowBilge, lies)
	put(s, "made_for_water", &f.MadeForWater, &g.MadeForWater, "made_for_water")
	putTruth(s, "unfused", &f.Unfused, s.unfused(result))
}

// unfused tells whether an ungrounded conductor lies ahead of its first
// protective device, seen from any source.
func (s *Subject) unfused(result *circuit.ConductorResult) truth {
	if len(result.Feeds) == 0 {
		return s.allOf(s.solved(&result.Ungrounded), s.doubt(figure.Because("no source reaches it in the record")))
	}
	return s.allOf(s.solved(&result.Ungrounded), settled(ahead(result.Feeds)))
}

// passes tells whether an exhaust part of the kind passes through the space: a
// distance to it says so too.
func (s *Subject) passes(distance *record.Measure, space *record.Space, kind string) truth {
	parts := record.Flag{V: slices.Contains(space.Exhaust.V, kind), State: space.Exhaust.State}
	return s.present(distance.Is(), &parts, below(space, "exhaust"))
}

// present is true where the segment speaks of the thing, else what the space
// says of it.
func (s *Subject) present(spoken bool, inSpace *record.Flag, at place) truth {
	if spoken {
		return settled(true)
	}
	return s.truthOf(inSpace, at)
}

// withAC sets how a segment runs with conductors of alternating current: with
// none where none is aboard.
func withAC(s *Subject, f *Hazards, vessel *record.Vessel, g *record.Segment) {
	aboard := &vessel.AC
	switch {
	case !g.WithAC.Is() && aboard.Is() && !aboard.V:
		f.WithAC = s.word("none")
	case !g.WithAC.Is() && !aboard.Is():
		s.lacks("with_ac", "vessel", "ac")
	default:
		put(s, "with_ac", &f.WithAC, &g.WithAC, "with_ac")
	}
}
