package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Conductor is the facts of one conductor.
type Conductor struct {
	Subject
	From string `json:"from"`
	To   string `json:"to"`
	Role string `json:"role"`
	// KnownRole is the same, absent where the record writes "unknown".
	KnownRole *string `json:"known_role,omitempty"`
	// Duty is what the conductor is for where that changes what is asked of it:
	// cranking, communication, ...; "normal" unless the record claims otherwise.
	Duty      string `json:"duty"`
	InHousing bool   `json:"in_housing"` // claimed: wholly inside an equipment housing
	// ShortPigtail: claimed to be a factory lead; ExposedMM is then its exposed
	// length.
	Pigtail   bool     `json:"pigtail"`
	ExposedMM *float64 `json:"exposed_mm,omitempty"`

	Size   *string `json:"size,omitempty"`
	System *string `json:"size_system,omitempty"` // AWG, SAE or mm2
	// AreaMM2 is the nominal copper area, to four digits.
	AreaMM2        *float64 `json:"area_mm2,omitempty"`
	DiameterMM     *float64 `json:"diameter_mm,omitempty"`
	InsulationC    *float64 `json:"insulation_degc,omitempty"`
	WetC           *float64 `json:"wet_degc,omitempty"`
	Material       *string  `json:"material,omitempty"`
	Class          *string  `json:"class,omitempty"`
	Strands        *int     `json:"strands,omitempty"`
	Tinned         *bool    `json:"tinned,omitempty"`
	OilResistant   *bool    `json:"oil_resistant,omitempty"`
	Standard       *string  `json:"standard,omitempty"`
	Colour         *string  `json:"colour,omitempty"`
	LengthMM       *float64 `json:"length_mm,omitempty"`
	RouteMM        *float64 `json:"route_mm,omitempty"`       // sum of the segments
	RouteGapMM     *float64 `json:"route_gap_mm,omitempty"`   // difference of the two, never negative
	InSheath       *bool    `json:"in_sheath,omitempty"`      // with other conductors in one sheath
	SheathTailMM   *float64 `json:"sheath_tail_mm,omitempty"` // longest length out of the sheath
	FirstSupportMM *float64 `json:"first_support_mm,omitempty"`
	OnBattery      bool     `json:"on_battery"` // lands on a battery terminal
	Labelled       *string  `json:"labelled,omitempty"`

	// InEngineSpace: runs in, or passes through, an engine space.
	InEngineSpace *bool `json:"in_engine_space,omitempty"`
	// Wettest is the worst exposure of the spaces it runs through.
	Wettest *string `json:"wettest,omitempty"`

	Bonding

	Ungrounded *bool `json:"ungrounded,omitempty"`
	AlwaysLive *bool `json:"always_live,omitempty"`
	Fed        bool  `json:"fed"` // a source can feed it
	// Bare: some way from a source through it reaches a load, another source or
	// an open end with no fuse or breaker anywhere on it.
	Bare     *bool  `json:"bare,omitempty"`
	BareFrom string `json:"bare_from"` // that source, empty unless bare
	BareVia  string `json:"bare_via"`  // the load, source or end reached

	Table5A    *float64 `json:"table5_a,omitempty"`    // 33 CFR 183.425 Table 5, uncorrected
	AllowableA *float64 `json:"allowable_a,omitempty"` // corrected for the hottest space crossed
	CurrentA   *float64 `json:"current_a,omitempty"`   // greatest, starting and stall aside
	SurgeA     *float64 `json:"surge_a,omitempty"`     // greatest while starting or stalled

	Bundling
	Service
	Made
	Output
	Returning
	Share
	Compass
	Fault

	// GuardA is the rating of the protective device that limits it, GuardedBy
	// names the devices; the shares are that rating against what the conductor
	// carries.
	GuardA            *float64 `json:"guard_a,omitempty"`
	GuardedBy         *string  `json:"guarded_by,omitempty"`
	GuardTable5Pct    *float64 `json:"guard_table5_pct,omitempty"`
	GuardAllowablePct *float64 `json:"guard_allowable_pct,omitempty"`
	Tapping
	Lie
}

func conductor(r *record.Record, a *circuit.Analysis, c *record.Conductor) *Conductor {
	f := &Conductor{
		Subject: Subject{Path: c.Path},
		From:    c.From.String(), To: c.To.String(),
		Role: c.Role.V, Duty: c.Duty.Or("normal"),
		InHousing: c.InHousing.Or(false), Pigtail: c.Pigtail.Or(false),
		OnBattery: lands(r, c, "battery"),
	}
	s := &f.Subject
	put(s, "known_role", &f.KnownRole, &c.Role, "role")
	construction(s, f, c)
	route(s, f, r, c)
	lie(s, f, c)
	bonding(s, &f.Bonding, r, c)

	result := a.Conductors[c.ID]
	if result == nil {
		result = &circuit.ConductorResult{}
	}
	feeding(s, f, a, result)
	carrying(s, f, result)
	tap(s, f, r, c)
	bundling(s, &f.Bundling, r, c, result)
	made(s, f, c)
	fault(s, &f.Fault, r, a, result)
	compass(s, f, c)
	return f
}

// construction sets what the conductor is made of.
func construction(s *Subject, f *Conductor, c *record.Conductor) {
	putMeasure(s, "exposed_mm", &f.ExposedMM, &c.Exposed, "exposed")
	if size, ok := c.Size.Get(); ok {
		f.Size, f.System = ptr(size.String()), ptr(string(size.System))
	} else {
		s.missing("size", "size")
		s.missing("size_system", "size")
	}
	if area, ok := nominalArea(c.Size); ok {
		f.AreaMM2 = &area
	} else {
		s.missing("area_mm2", "size")
	}
	putMeasure(s, "insulation_degc", &f.InsulationC, &c.Insulation, "insulation")
	putMeasure(s, "wet_degc", &f.WetC, &c.Wet, "wet")
	put(s, "material", &f.Material, &c.Material, "material")
	put(s, "class", &f.Class, &c.Class, "class")
	put(s, "strands", &f.Strands, &c.Strands, "strands")
	put(s, "tinned", &f.Tinned, &c.Tinned, "tinned")
	put(s, "oil_resistant", &f.OilResistant, &c.OilResistant, "oil_resistant")
	put(s, "standard", &f.Standard, &c.Standard, "standard")
	put(s, "colour", &f.Colour, &c.Colour, "colour")
	put(s, "labelled", &f.Labelled, &c.Labelled, "labelled")
	putMeasure(s, "sheath_tail_mm", &f.SheathTailMM, &c.SheathTail, "sheath_tail")
	putMeasure(s, "first_support_mm", &f.FirstSupportMM, &c.FirstSupport, "first_support")
	if sheath, ok := c.Sheath.Get(); ok {
		f.InSheath = ptr(sheath != "none")
	} else {
		s.missing("in_sheath", "sheath")
	}
}

// feeding sets which sources can feed the conductor, and through what.
func feeding(s *Subject, f *Conductor, a *circuit.Analysis, result *circuit.ConductorResult) {
	f.Fed = len(result.Feeds) > 0
	// Where the record joins both poles of a source, all that hangs on it seems
	// ungrounded and bare.
	if gap, shorted := short(a); shorted {
		for _, fact := range []string{"ungrounded", "always_live", "bare"} {
			s.open(fact, gap)
		}
		return
	}
	putTruth(s, "ungrounded", &f.Ungrounded, result.Ungrounded)
	putTruth(s, "always_live", &f.AlwaysLive, result.AlwaysLive)
	if !f.Fed {
		s.open("bare", figure.Because("no source reaches "+f.From+" or "+f.To+" in the record"))
		return
	}
	var doubts []figure.Gap
	for _, feed := range result.Feeds {
		if !feed.Ahead || !feed.Bare {
			continue
		}
		// A source terminal that may be the grounded one proves nothing yet.
		if t := a.Terminals[feed.Source]; t != nil && !t.Ungrounded.Known {
			doubts = append(doubts, t.Ungrounded.Gaps...)
			continue
		}
		f.Bare, f.BareFrom, f.BareVia = ptr(true), feed.Source, feed.BareVia
		return
	}
	if len(doubts) > 0 {
		s.open("bare", doubts...)
		return
	}
	f.Bare = ptr(false)
}

// short tells of a source that the wiring short-circuits, if there is one.
func short(a *circuit.Analysis) (figure.Gap, bool) {
	for _, p := range a.Problems {
		if p.Kind == circuit.Shorted {
			return figure.Because(p.Says), true
		}
	}
	return figure.Gap{}, false
}

// carrying sets what the conductor carries, may carry, and is guarded by.
func carrying(s *Subject, f *Conductor, result *circuit.ConductorResult) {
	putFigure(s, "diameter_mm", &f.DiameterMM, result.DiameterMM)
	putTruth(s, "in_engine_space", &f.InEngineSpace, result.InEngineSpace)
	putFigure(s, "table5_a", &f.Table5A, result.Table5)
	putFigure(s, "allowable_a", &f.AllowableA, result.Allowable)
	putFigure(s, "current_a", &f.CurrentA, result.Current)
	putFigure(s, "surge_a", &f.SurgeA, result.Surge)
	putFigure(s, "guard_a", &f.GuardA, result.Guard)
	if f.GuardA != nil {
		f.GuardedBy = ptr(join(result.GuardBy))
	} else {
		s.open("guarded_by", s.Open.Of("guard_a")...)
	}
	derive(s, "load_pct", &f.LoadPct, []string{"current_a", "allowable_a"}, func() float64 {
		return quantity.Round(100 * *f.CurrentA / *f.AllowableA)
	})
	derive(s, "guard_table5_pct", &f.GuardTable5Pct, []string{"guard_a", "table5_a"}, func() float64 {
		return quantity.Round(100 * *f.GuardA / *f.Table5A)
	})
	derive(s, "guard_allowable_pct", &f.GuardAllowablePct, []string{"guard_a", "allowable_a"}, func() float64 {
		return quantity.Round(100 * *f.GuardA / *f.AllowableA)
	})
}

// lands tells whether an end of the conductor is on a component of the kind.
func lands(r *record.Record, c *record.Conductor, kind string) bool {
	for _, t := range []record.Terminal{c.From, c.To} {
		if on := r.Component(t.Component); on != nil && on.Kind.V == kind {
			return true
		}
	}
	return false
}
