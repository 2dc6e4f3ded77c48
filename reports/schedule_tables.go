package reports

import (
	"maps"
	"math"
	"slices"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// loads writes a part for each load: what feeds it, and the conductors out and
// back.
func (s *schedule) loads() {
	s.heading("CIRCUITS", plural(len(s.a.Loads), "load"))
	first := true
	for _, c := range s.rec.Components {
		result := s.a.Loads[c.ID]
		if result == nil {
			continue
		}
		if !first {
			s.blank()
		}
		first = false
		s.load(c, result)
	}
}

func (s *schedule) load(c *record.Component, l *circuit.LoadResult) {
	s.hang(0, 2, in(strong, c.ID), txt(": "+enumerateNonEmpty(c.Kind.V, c.Label.V, c.Space.V)))
	if l.Source != "" {
		s.entry(in(faint, "fed"), txt("from "+l.Source+through(l.Devices, l.Switches)))
	}
	nominal := s.value(c.Path, "nominal voltage", l.NominalV)
	current := "running alone " + s.value(c.Path, "current, running alone", l.Current)
	if c.Starting.Is() {
		current += ", starting " + s.measure(c.Starting)
	}
	if c.Stall.Is() {
		current += ", stalled " + s.measure(c.Stall)
	}
	s.entry(in(faint, "current"), txt(current))
	s.entry(in(faint, "drop"), txt("by formula "+s.value(c.Path, "drop by the standards' formula", l.DropFormulaV)+share(l.DropFormulaV, l.NominalV)+
		", by network "+s.value(c.Path, "drop by network", l.DropNetworkV)+share(l.DropNetworkV, l.NominalV)+", of "+nominal))
	s.entry(in(faint, "voltage"), txt("at the load "+s.value(c.Path, "voltage at the load", l.VoltageV)+
		", with a low battery "+s.value(c.Path, "voltage with a low battery", l.LowVoltageV)))
	rows := newTable("way", "conductor", "size", ">length", ">may carry", ">carries at most")
	s.way(rows, "out", l.Out)
	s.way(rows, "back", l.Back)
	s.table(rows, margin)
}

// way adds the conductors of one way to the table of a load.
func (s *schedule) way(rows *table, name string, ids []string) {
	for _, id := range ids {
		c, result := s.rec.Conductor(id), s.a.Conductors[id]
		if c == nil || result == nil {
			continue
		}
		rows.add(name, id, size(c), s.measure(c.Length), s.print(result.Allowable), s.print(result.Current))
		name = ""
	}
}

func through(devices, switches []string) string {
	var parts []string
	if len(devices) > 0 {
		parts = append(parts, " through "+enumerate(devices))
	}
	if len(switches) > 0 {
		parts = append(parts, " switched by "+enumerate(switches))
	}
	return strings.Join(parts, ",")
}

func size(c *record.Conductor) string {
	if v, ok := c.Size.Get(); ok {
		return strings.ReplaceAll(v.String(), "mm2", "mm²")
	}
	return openCell
}

// conductors writes what each conductor is and may carry.
func (s *schedule) conductors() {
	s.heading("CONDUCTORS", "what each may carry, and what guards it")
	rows := newTable("id", "size", ">at 20 °C", ">may carry", ">bundled", ">carries", ">surge", ">guard", "by")
	for _, c := range s.rec.Conductors {
		r := s.a.Conductors[c.ID]
		if r == nil {
			continue
		}
		value := func(name string, f figure.Figure) string { return s.value(c.Path, name, f) }
		rows.add(c.ID, size(c), value("resistance at 20 °C", r.R20),
			value("allowable amperage", r.Allowable), value("allowable amperage in its bundle", r.Bundled),
			value("greatest current", r.Current), value("greatest surge", r.Surge),
			s.guard(c.Path, r), strings.Join(r.GuardBy, ", "))
		for _, f := range []named{
			{name: "resistance warm", fig: r.RHot},
			{name: "copper area", fig: r.AreaMM2},
			{name: "circular mils", fig: r.CircularMils},
			{name: "outside diameter", fig: r.DiameterMM},
			{name: "table amperage", fig: r.Table5},
			{name: "hottest ambient", fig: r.HottestAmbient},
			{name: "conductors in its bundle", fig: r.BundleCount},
		} {
			value(f.name, f.fig)
		}
	}
	s.table(rows, 0)
}

// guard is the rating that guards a conductor; a grounded one needs none.
func (s *schedule) guard(path string, r *circuit.ConductorResult) string {
	if r.Ungrounded.Known && !r.Ungrounded.Value {
		return "none"
	}
	return s.value(path, "rating that guards it", r.Guard)
}

// unprotected writes how far it is from each source to the first fuse or
// breaker on the way, and where there is none.
func (s *schedule) unprotected() {
	rows := newTable("from", "to", ">length", "enclosed", "along")
	for _, c := range s.rec.Conductors {
		r := s.a.Conductors[c.ID]
		if r == nil {
			continue
		}
		for _, f := range r.Feeds {
			switch {
			case f.EndsAtDevice != "":
				rows.add(f.Source, f.EndsAtDevice, s.value(c.Path, "unprotected length from "+f.Source, f.Length), yesNo(f.Enclosed),
					strings.Join(f.Via, ", "))
			case f.Ahead && f.Bare && r.Ungrounded.Known && r.Ungrounded.Value:
				rows.add(f.Source, "none before "+f.BareVia, "", "", c.ID)
			}
		}
	}
	if len(rows.rows) == 0 {
		return
	}
	s.heading("UNPROTECTED", "from each source to the first fuse or breaker")
	s.table(rows, 0)
}

func yesNo(t figure.Truth) string {
	switch {
	case !t.Known:
		return openCell
	case t.Value:
		return "yes"
	}
	return "no"
}

// devices writes what each fuse and breaker carries and may have to break.
func (s *schedule) devices() {
	if len(s.a.Devices) == 0 {
		return
	}
	s.heading("FUSES AND BREAKERS", "what each carries and may have to break")
	rows := newTable("id", ">rating", ">breaks", ">circuit", ">carries", ">fault, least", ">most", "feeds")
	for _, c := range s.rec.Components {
		d := s.a.Devices[c.ID]
		if d == nil {
			continue
		}
		rows.add(c.ID, s.measure(c.Rating), s.measure(c.Interrupt), s.value(c.Path, "nominal voltage", d.NominalV),
			s.value(c.Path, "greatest current", d.RunningA),
			s.value(c.Path, "least fault current", d.FaultLowA), s.value(c.Path, "greatest fault current", d.FaultHighA),
			strings.Join(d.Loads, ", "))
	}
	s.table(rows, 0)
}

// sources writes what the solution took for each battery.
func (s *schedule) sources() {
	if len(s.a.Batteries) == 0 {
		return
	}
	s.heading("BATTERIES", "what the solution took for each")
	rows := newTable("id", ">open circuit", ">inside, least", ">most", "disconnected by")
	for _, c := range s.rec.Components {
		b := s.a.Batteries[c.ID]
		if b == nil {
			continue
		}
		by := b.Disconnect
		if by == "" {
			by = "no switch"
		}
		if len(b.Bypass) > 0 {
			by += "; not " + enumerate(b.Bypass)
		}
		rows.add(c.ID, s.value(c.Path, "open-circuit voltage", b.OpenV), s.value(c.Path, "least internal resistance", b.ResistanceLow),
			s.value(c.Path, "greatest internal resistance", b.ResistanceHigh), by)
	}
	s.table(rows, 0)
}

// cases writes the operating cases and what the sources give in each.
func (s *schedule) cases() {
	if len(s.a.Cases) == 0 {
		return
	}
	s.heading("OPERATING CASES", "what the sources give in each")
	rows := newTable("case", "sources")
	for _, c := range s.a.Cases {
		rows.add(c.Name, s.outcome(c))
	}
	s.table(rows, 0)
}

// noise is what rounding leaves of a current that is none, in A.
const noise = 1e-6

func (s *schedule) outcome(c *circuit.CaseResult) string {
	switch {
	case c.Problem != nil:
		return "not solved: " + c.Problem.Says
	case len(c.Gaps) > 0:
		var missing []string
		for _, gap := range c.Gaps {
			missing = append(missing, enumerateNonEmpty(gap.Field, gap.Why))
		}
		return "open, for want of " + enumerate(missing)
	}
	var parts []string
	for _, id := range slices.Sorted(maps.Keys(c.Sources)) {
		amps := c.Sources[id]
		if math.Abs(amps) < noise {
			amps = 0
		}
		parts = append(parts, id+" "+s.print(figure.Of(amps, "A")))
	}
	return strings.Join(parts, ", ")
}
