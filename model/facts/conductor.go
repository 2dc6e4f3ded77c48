package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
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

func (b *Builder) conductor(w *wire) *Conductor {
	c, f := w.Conductor, b.made.conductors.take()
	f.Subject, f.From, f.To = b.subject(c.Path), w.fromID, w.toID
	f.Role, f.Duty = c.Role.V, c.Duty.Or("normal")
	f.InHousing, f.Pigtail = c.InHousing.Or(false), c.Pigtail.Or(false)
	f.OnBattery = w.onKind("battery")
	s := &f.Subject
	put(s, "known_role", &f.KnownRole, &c.Role, "role")
	construction(s, f, c)
	b.route(s, f, c)
	lie(s, f, c)
	b.bonding(s, &f.Bonding, c)
	b.feeding(s, f, w.result)
	carrying(s, f, w.result)
	b.tap(s, f, w)
	b.bundling(s, &f.Bundling, c, w.result)
	made(s, f, c)
	b.fault(s, &f.Fault, w.result)
	compass(s, f, c)
	service(f, w.loads)
	stalled(f, w.loads)
	b.returning(f, w)
	return f
}

// construction sets what the conductor is made of.
func construction(s *Subject, f *Conductor, c *record.Conductor) {
	putMeasure(s, "exposed_mm", &f.ExposedMM, &c.Exposed, "exposed")
	if c.Size.Is() {
		f.Size, f.System = s.word(c.Size.V.String()), s.word(string(c.Size.V.System))
		f.AreaMM2 = s.number(areaOf(c.Size.V))
	} else {
		s.missing("size", "size")
		s.missing("size_system", "size")
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
	if c.Sheath.Is() {
		f.InSheath = s.flag(c.Sheath.V != "none")
	} else {
		s.missing("in_sheath", "sheath")
	}
}

// feeding sets which sources can feed the conductor, and through what.
func (b *Builder) feeding(s *Subject, f *Conductor, result *circuit.ConductorResult) {
	f.Fed = len(result.Feeds) > 0
	// Where the record joins both poles of a source, all that hangs on it seems
	// ungrounded and bare.
	if b.shorted != "" {
		s.because(b.shorted, "ungrounded", "always_live", "bare")
		return
	}
	putSolved(s, "ungrounded", &f.Ungrounded, &result.Ungrounded)
	putSolved(s, "always_live", &f.AlwaysLive, &result.AlwaysLive)
	if !f.Fed {
		s.because("no source reaches "+f.From+" or "+f.To+" in the record", "bare")
		return
	}
	var doubts []figure.Gap
	for i := range result.Feeds {
		feed := &result.Feeds[i]
		if !feed.Ahead || !feed.Bare {
			continue
		}
		// A source terminal that may be the grounded one proves nothing yet.
		if t := b.solved.Terminals[feed.Source]; t != nil && !t.Ungrounded.Known {
			doubts = append(doubts, t.Ungrounded.Gaps...)
			continue
		}
		f.Bare, f.BareFrom, f.BareVia = s.flag(true), feed.Source, feed.BareVia
		return
	}
	if len(doubts) > 0 {
		s.open("bare", doubts...)
		return
	}
	f.Bare = s.flag(false)
}

// carrying sets what the conductor carries, may carry, and is guarded by.
func carrying(s *Subject, f *Conductor, result *circuit.ConductorResult) {
	putFigure(s, "diameter_mm", &f.DiameterMM, &result.DiameterMM)
	putSolved(s, "in_engine_space", &f.InEngineSpace, &result.InEngineSpace)
	putFigure(s, "table5_a", &f.Table5A, &result.Table5)
	putFigure(s, "allowable_a", &f.AllowableA, &result.Allowable)
	putFigure(s, "current_a", &f.CurrentA, &result.Current)
	putFigure(s, "surge_a", &f.SurgeA, &result.Surge)
	putFigure(s, "guard_a", &f.GuardA, &result.Guard)
	if f.GuardA != nil {
		f.GuardedBy = s.word(join(result.GuardBy))
	} else {
		s.follow("guarded_by", "guard_a")
	}
	guard, allowable := operand{"guard_a", f.GuardA}, operand{"allowable_a", f.AllowableA}
	percent(s, "load_pct", &f.LoadPct, operand{"current_a", f.CurrentA}, allowable)
	percent(s, "guard_table5_pct", &f.GuardTable5Pct, guard, operand{"table5_a", f.Table5A})
	percent(s, "guard_allowable_pct", &f.GuardAllowablePct, guard, allowable)
}
