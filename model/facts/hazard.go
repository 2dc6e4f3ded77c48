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
func hazards(s *Subject, f *Hazards, r *record.Record, a *circuit.Analysis, c *record.Conductor, g *record.Segment) {
	space := r.Space(g.Space.V)
	if space == nil {
		space = &record.Space{Entry: record.Entry{Path: s.field("space")}}
	}
	held(s, f, c, g)
	bilge(s, f, a.Conductors[c.ID], g, space)
	putMeasure(s, "exhaust_dry_mm", &f.ExhaustDryMM, &g.ExhaustDry, "exhaust_dry")
	putMeasure(s, "exhaust_wet_mm", &f.ExhaustWetMM, &g.ExhaustWet, "exhaust_wet")
	putTruth(s, "dry_exhaust", &f.DryExhaust, passes(g.ExhaustDry, space, "dry"))
	putTruth(s, "wet_exhaust", &f.WetExhaust, passes(g.ExhaustWet, space, "wet"))

	putTruth(s, "fuel_line", &f.FuelLine, present(g.FuelLine.Is() || g.FuelLineSide.Is(), space.FuelLine, below(space, "fuel_line")))
	if g.FuelLineSide.V == "tied" {
		f.FuelLineMM = ptr(0.0)
	} else {
		putMeasure(s, "fuel_line_mm", &f.FuelLineMM, &g.FuelLine, "fuel_line")
	}
	put(s, "fuel_line_side", &f.FuelLineSide, &g.FuelLineSide, "fuel_line_side")
	put(s, "rigid_support", &f.RigidSupport, &g.RigidSupport, "rigid_support")

	withAC(s, f, r, g)
	unprotected := negated(truthOf(g.Protected, s.field("protected")))
	machinery := present(g.MovingParts.Is(), space.Machinery, below(space, "machinery"))
	putTruth(s, "open_walkway", &f.OpenWalkway, allOf(truthOf(g.Walkway, s.field("walkway")), unprotected))
	putTruth(s, "open_machinery", &f.OpenMachinery, allOf(machinery, unprotected))
	putMeasure(s, "moving_parts_mm", &f.MovingPartsMM, &g.MovingParts, "moving_parts")
	put(s, "loom_rating", &f.LoomRating, &g.LoomRating, "loom_rating")
	putTruth(s, "undrained", &f.Undrained, allOf(truthOf(g.Horizontal, s.field("horizontal")), negated(truthOf(g.Drains, s.field("drains")))))
}

// below returns the path of an entry of a space; of a space that the segment
// does not name, that of its name.
func below(space *record.Space, entry string) string {
	if space.ID == "" {
		return space.Path
	}
	return space.Path + "." + entry
}

func held(s *Subject, f *Hazards, c *record.Conductor, g *record.Segment) {
	putMeasureOf(s, "conductor_mm", &f.ConductorMM, &c.Length, c.Path, "length")
	switch spacing, ok := g.Support.Get(); {
	case ok:
		f.SupportMostMM = &spacing.Base
	case f.ConductorMM != nil:
		f.SupportMostMM = f.ConductorMM
	default:
		s.missing("support_most_mm", "support")
	}
}

// bilge sets how a segment lies to bilge water.
func bilge(s *Subject, f *Hazards, result *circuit.ConductorResult, g *record.Segment, space *record.Space) {
	aboveDeck := []string{"open-deck", "cockpit", "helm", "mast"}
	lies := among(g.Bilge, s.field("bilge"), "below")
	if !lies.Known && (space.Exposure.V == "dry" || slices.Contains(aboveDeck, space.Kind.V)) {
		lies = figure.False()
	}
	putTruth(s, "below_bilge", &f.BelowBilge, lies)
	put(s, "made_for_water", &f.MadeForWater, &g.MadeForWater, "made_for_water")
	putTruth(s, "unfused", &f.Unfused, unfused(result))
}

// unfused tells whether an ungrounded conductor lies ahead of its first
// protective device, seen from any source.
func unfused(result *circuit.ConductorResult) figure.Truth {
	if result == nil {
		return figure.OpenTruth()
	}
	ahead := figure.OpenTruth(figure.Because("no source reaches it in the record"))
	for _, feed := range result.Feeds {
		ahead = figure.Truth{Value: ahead.Value || feed.Ahead, Known: true}
	}
	return allOf(result.Ungrounded, ahead)
}

// passes tells whether an exhaust part of the kind passes through the space: a
// distance to it says so too.
func passes(distance record.Measure, space *record.Space, kind string) figure.Truth {
	parts := record.Flag{V: slices.Contains(space.Exhaust.V, kind), State: space.Exhaust.State}
	return present(distance.Is(), parts, below(space, "exhaust"))
}

// present is true where the segment speaks of the thing, else what the space
// says of it.
func present(spoken bool, inSpace record.Flag, path string) figure.Truth {
	if spoken {
		return figure.True()
	}
	return truthOf(inSpace, path)
}

// withAC sets how a segment runs with conductors of alternating current: with
// none where none is aboard.
func withAC(s *Subject, f *Hazards, r *record.Record, g *record.Segment) {
	aboard := r.Vessel.AC
	switch {
	case !g.WithAC.Is() && aboard.Is() && !aboard.V:
		f.WithAC = ptr("none")
	case !g.WithAC.Is() && !aboard.Is():
		s.lacks("with_ac", "vessel", "ac")
	default:
		put(s, "with_ac", &f.WithAC, &g.WithAC, "with_ac")
	}
}
