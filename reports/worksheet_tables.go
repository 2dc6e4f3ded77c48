package reports

import (
	"strconv"
	"strings"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
)

// worksheets make the tables of a schedule.
type worksheets struct {
	rec   *record.Record
	a     *circuit.Analysis
	units quantity.System
}

// Tables lists the tables of a schedule that can be exported on their own.
func Tables() []string { return []string{"circuits", "conductors", "devices", "batteries", "labels"} }

// table returns the table of that name.
func (s *worksheets) table(name string) worksheet {
	switch name {
	case "circuits":
		return s.circuits()
	case "conductors":
		return s.conductors()
	case "devices":
		return s.devices()
	case "batteries":
		return s.batteries()
	}
	return s.labels()
}

// circuits has a row for each load.
func (s *worksheets) circuits() worksheet {
	columns := []column{
		texts("load"), texts("label"), texts("kind"), texts("space"), texts("fed from"), texts("through"), texts("switched by"),
		volts("nominal"), amps("current running alone"), amps("starting"), amps("stalled"),
		volts("drop by formula"), percent("drop by formula"), volts("drop by network"), percent("drop by network"),
		volts("at the load"), volts("at the load with a low battery"), texts("out"), texts("back"),
	}
	var rows [][]entryOf
	for _, c := range s.rec.Components {
		l := s.a.Loads[c.ID]
		if l == nil {
			continue
		}
		rows = append(rows, []entryOf{
			wordsOf(c.ID), wordsOf(c.Label.V), wordsOf(c.Kind.V), wordsOf(c.Space.V), wordsOf(l.Source), spread(l.Devices), spread(l.Switches),
			figureOf(l.NominalV), figureOf(l.Current), optional(c.Starting), optional(c.Stall),
			figureOf(l.DropFormulaV), shareOf(l.DropFormulaV, l.NominalV), figureOf(l.DropNetworkV), shareOf(l.DropNetworkV, l.NominalV),
			figureOf(l.VoltageV), figureOf(l.LowVoltageV), spread(l.Out), spread(l.Back),
		})
	}
	return sheetOf("circuits", s.units, columns, rows)
}

func (s *worksheets) conductors() worksheet {
	columns := []column{
		texts("conductor"), texts("role"), texts("from"), texts("to"), texts("size"), texts("colour"), degrees("insulation"), metres("length"),
		mohms("resistance at 20 degC"), mohms("resistance warm"),
		{"copper area", "mm2", "mm2"},
		amps("may carry"), amps("may carry in its bundle"), amps("carries"), amps("surge"), amps("guard"), texts("guarded by"), texts("feeds"),
	}
	feeds := s.feeds()
	var rows [][]entryOf
	for _, c := range s.rec.Conductors {
		r := s.a.Conductors[c.ID]
		if r == nil {
			continue
		}
		guard := figureOf(r.Guard)
		if r.Ungrounded.Known && !r.Ungrounded.Value {
			guard = wordsOf("none")
		}
		rows = append(rows, []entryOf{
			wordsOf(c.ID), wordsOf(c.Role.V), wordsOf(c.From.String()), wordsOf(c.To.String()), wordsOf(size(c)), wordsOf(c.Colour.V),
			measureOf(c.Insulation), measureOf(c.Length),
			figureOf(r.R20), figureOf(r.RHot), figureOf(r.AreaMM2),
			figureOf(r.Allowable), figureOf(r.Bundled), figureOf(r.Current), figureOf(r.Surge), guard, spread(r.GuardBy), spread(feeds[c.ID]),
		})
	}
	return sheetOf("conductors", s.units, columns, rows)
}

// feeds names, for each conductor, the loads whose way leads along it.
func (s *worksheets) feeds() map[string][]string {
	all := map[string][]string{}
	for _, c := range s.rec.Components {
		l := s.a.Loads[c.ID]
		if l == nil {
			continue
		}
		seen := map[string]bool{}
		for _, id := range append(append([]string{}, l.Out...), l.Back...) {
			if !seen[id] {
				seen[id] = true
				all[id] = append(all[id], c.ID)
			}
		}
	}
	return all
}

func (s *worksheets) devices() worksheet {
	columns := []column{
		texts("device"), texts("label"), texts("kind"), texts("space"), amps("rating"), volts("rated"), amps("breaks"),
		volts("nominal of the circuit"), amps("carries"), amps("least fault current"), amps("greatest fault current"), texts("feeds"),
	}
	var rows [][]entryOf
	for _, c := range s.rec.Components {
		d := s.a.Devices[c.ID]
		if d == nil {
			continue
		}
		rows = append(rows, []entryOf{
			wordsOf(c.ID), wordsOf(c.Label.V), wordsOf(c.Kind.V), wordsOf(c.Space.V), measureOf(c.Rating), measureOf(c.Voltage), measureOf(c.Interrupt),
			figureOf(d.NominalV), figureOf(d.RunningA), figureOf(d.FaultLowA), figureOf(d.FaultHighA), spread(d.Loads),
		})
	}
	return sheetOf("devices", s.units, columns, rows)
}

func (s *worksheets) batteries() worksheet {
	columns := []column{
		texts("battery"), texts("label"), texts("chemistry"), texts("space"), volts("nominal"),
		{"capacity", "Ah", "Ah"},
		volts("open circuit"), mohms("least internal resistance"), mohms("greatest internal resistance"), texts("disconnected by"), texts("past the switch"),
	}
	var rows [][]entryOf
	for _, c := range s.rec.Components {
		b := s.a.Batteries[c.ID]
		if b == nil {
			continue
		}
		rows = append(rows, []entryOf{
			wordsOf(c.ID), wordsOf(c.Label.V), wordsOf(c.Chemistry.V), wordsOf(c.Space.V), measureOf(c.Nominal), measureOf(c.Capacity),
			figureOf(b.OpenV), figureOf(b.ResistanceLow), figureOf(b.ResistanceHigh), wordsOf(b.Disconnect), spread(b.Bypass),
		})
	}
	return sheetOf("batteries", s.units, columns, rows)
}

// labels has a row for each end of a conductor: what to write on the mark there.
func (s *worksheets) labels() worksheet {
	columns := []column{
		texts("mark"), texts("end"), texts("lands on"), texts("of"), texts("in"), texts("other end"), texts("role"), texts("size"), texts("colour"),
		metres("length"), texts("serves"), texts("terminal"), texts("hole"), texts("stud"), texts("place on the stud"),
		{"torque", "N.m", "lbf.in"},
	}
	feeds := s.feeds()
	var rows [][]entryOf
	for _, c := range s.rec.Conductors {
		for _, side := range []struct {
			name     string
			at, then record.Terminal
			end      *record.End
		}{{"from", c.From, c.To, c.Ends.From}, {"to", c.To, c.From, c.Ends.To}} {
			end := side.end
			if end == nil {
				end = &record.End{}
			}
			var on record.Component
			if found := s.rec.Component(side.at.Component); found != nil {
				on = *found
			}
			rows = append(rows, []entryOf{
				wordsOf(c.ID), wordsOf(side.name), wordsOf(side.at.String()), wordsOf(on.Label.V), wordsOf(on.Space.V), wordsOf(side.then.String()),
				wordsOf(c.Role.V), wordsOf(size(c)), wordsOf(c.Colour.V), measureOf(c.Length), spread(feeds[c.ID]),
				wordsOf(end.Terminal.V), wordsOf(end.Hole.V), wordsOf(end.Stud.V), count(end.Order), optional(end.Torque),
			})
		}
	}
	return sheetOf("labels", s.units, columns, rows)
}

func count(n record.Count) entryOf {
	if !n.Is() {
		return wordsOf("")
	}
	return entryOf{q: quantity.Quantity{Base: float64(n.V)}, is: true}
}

// significant rounds to as many digits as a sheet keeps.
func significant(v float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', sheetDigits, 64), 64)
	if err != nil {
		return v
	}
	return rounded
}

// label is what the head of a column says.
func (h columnHead) label(symbol func(string) string) string {
	if h.unit == "" {
		return h.name
	}
	return h.name + " (" + symbol(h.unit) + ")"
}

// about says what the schedule is of.
func (s *worksheets) about() [][2]string {
	all := [][2]string{
		{"record", s.rec.Name},
		{"job", s.rec.Job.Number.V},
		{"title", s.rec.Job.Title.V},
		{"vessel", s.rec.Vessel.Name.V},
		{"record, sha256", s.rec.SHA256},
	}
	for _, problem := range s.a.Problems {
		all = append(all, [2]string{"not solved", problem.Path + ": " + problem.Says})
	}
	kept := all[:0]
	for _, line := range all {
		if line[1] != "" {
			kept = append(kept, [2]string{line[0], Plain(strings.TrimSpace(line[1]))})
		}
	}
	return append(kept,
		[2]string{openCell, "what cannot be computed says open: figures without --format lists the entries that it waits for"},
		[2]string{"caution", Caution})
}
