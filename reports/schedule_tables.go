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
	s.hang(0, 2, in(strong, c.ID), txt(": "+aboutLoad(c)))
	for _, f := range s.loadFacts(c, l) {
		s.entry(in(faint, f.Label), txt(f.Text))
	}
	s.table(s.ways(l), margin)
}

func aboutLoad(c *record.Component) string {
	return enumerateNonEmpty(c.Kind.V, c.Label.V, c.Space.V)
}

// loadFacts says what feeds a load, what it draws and what reaches it.
func (s *schedule) loadFacts(c *record.Component, l *circuit.LoadResult) []Labelled {
	var facts []Labelled
	if l.Source != "" {
		facts = append(facts, Labelled{"fed", "from " + l.Source + through(l.Devices, l.Switches)})
	}
	nominal := s.value(c.Path, "nominal voltage", l.NominalV)
	current := "running alone " + s.value(c.Path, "current, running alone", l.Current)
	if c.Starting.Is() {
		current += ", starting " + s.measure(c.Starting)
	}
	if c.Stall.Is() {
		current += ", stalled " + s.measure(c.Stall)
	}
	return append(facts,
		Labelled{"current", current},
		Labelled{"drop", "by formula " + s.value(c.Path, "drop by the standards' formula", l.DropFormulaV) + share(l.DropFormulaV, l.NominalV) +
			", by network " + s.value(c.Path, "drop by network", l.DropNetworkV) + share(l.DropNetworkV, l.NominalV) + ", of " + nominal},
		Labelled{"voltage", "at the load " + s.value(c.Path, "voltage at the load", l.VoltageV) +
			", with a low battery " + s.value(c.Path, "voltage with a low battery", l.LowVoltageV)})
}

// ways lists the conductors of a load, out and back.
func (s *schedule) ways(l *circuit.LoadResult) *table {
	rows := newTable("way", "conductor", "size", ">length", ">may carry", ">carries at most")
	s.way(rows, "out", l.Out)
	s.way(rows, "back", l.Back)
	return rows
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

// sheets are the tables that come after the loads; those without rows are left
// out.
func (s *schedule) sheets() []titled {
	all := []titled{
		{"conductors", "what each may carry, and what guards it", s.conductors()},
		{"currents by case", "the greatest in each kind of operating case", s.currents()},
		{"faults and heat", "a bolted fault at the far end, and the warmest that each gets", s.faults()},
		{"unprotected", "from each source to the first fuse or breaker", s.unprotected()},
		{"fuses and breakers", "what each carries and may have to break", s.devices()},
		{"batteries", "what the solution took for each", s.sources()},
		{"operating cases", "what the sources give in each", s.cases()},
	}
	return slices.DeleteFunc(all, func(h titled) bool { return len(h.rows.rows) == 0 })
}

// titled is a table under its title.
type titled struct {
	title, about string
	rows         *table
}

// conductors tells what each conductor is and may carry.
func (s *schedule) conductors() *table {
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
	return rows
}

// guard is the rating that guards a conductor; a grounded one needs none.
func (s *schedule) guard(path string, r *circuit.ConductorResult) string {
	if r.Ungrounded.Known && !r.Ungrounded.Value {
		return "none"
	}
	return s.value(path, "rating that guards it", r.Guard)
}

// unprotected tells how far it is from each source to the first fuse or
// breaker on the way, and where there is none.
func (s *schedule) unprotected() *table {
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
	return rows
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

// devices tells what each fuse and breaker carries and may have to break.
func (s *schedule) devices() *table {
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
	return rows
}

// sources tells what the solution took for each battery.
func (s *schedule) sources() *table {
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
	return rows
}

// cases tells the operating cases and what the sources give in each.
func (s *schedule) cases() *table {
	rows := newTable("case", "sources")
	for _, c := range s.a.Cases.All() {
		rows.add(c.Name, s.outcome(c))
	}
	return rows
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
