package reports

import (
	"math"
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
)

// faults tells what a bolted fault makes of each ungrounded conductor, and how warm
// each gets.
func (s *schedule) faults() *table {
	rows := newTable("id", ">fault, least", ">most", ">opens within", ">no sooner than", ">lets through", ">stands", ">in use", ">stalled")
	for _, c := range s.rec.Conductors {
		r := s.a.Conductors[c.ID]
		if r == nil {
			continue
		}
		value := func(name string, f figure.Figure) string { return s.value(c.Path, name, f) }
		least, most, opens, sooner, through := "none", "none", "", "", ""
		if !r.Ungrounded.Known || r.Ungrounded.Value {
			least, most = value("least fault current at its far end", r.FaultLowA), value("greatest fault current at its far end", r.FaultHighA)
			opens, sooner = value("longest time to clear it", r.ClearS), value("least time to clear it", r.ClearLeastS)
			through = value("energy let through", r.LetThroughA2s)
			value("energy let through at least", r.LetThroughLeastA2s)
		}
		rows.add(c.ID, least, most, opens, sooner, through, value("energy that its insulation stands", r.WithstandA2s),
			value("temperature in use", r.TemperatureC), value("temperature when a motor stalls", r.StallC))
	}
	return rows
}

// caseKinds are the columns of the currents by operating case.
var caseKinds = [...]struct {
	head  string
	kinds []circuit.CaseKind
}{
	{">alone", []circuit.CaseKind{circuit.Alone}},
	{">continuous", []circuit.CaseKind{circuit.Continuous}},
	{">all loads", []circuit.CaseKind{circuit.All}},
	{">starting", []circuit.CaseKind{circuit.Starting}},
	{">stalled", []circuit.CaseKind{circuit.Stalled}},
	{">charging", []circuit.CaseKind{circuit.Charging}},
	{">battery low", []circuit.CaseKind{circuit.Low}},
	{">declared", []circuit.CaseKind{circuit.Declared}},
}

// currents tells the greatest current of each conductor by kind of operating case.
// A case about one load lists what lies on its way.
func (s *schedule) currents() *table {
	heads := []string{"id"}
	used := caseKinds[:0:0]
	for _, k := range caseKinds {
		if slices.ContainsFunc(s.a.Cases.All(), func(c *circuit.CaseResult) bool { return slices.Contains(k.kinds, c.Kind) }) {
			heads, used = append(heads, k.head), append(used, k)
		}
	}
	rows := newTable(heads...)
	for _, c := range s.rec.Conductors {
		if s.a.Conductors[c.ID] == nil || len(used) == 0 {
			continue
		}
		row := []string{c.ID}
		for _, k := range used {
			row = append(row, s.greatest(c.ID, k.kinds))
		}
		rows.add(row...)
	}
	return rows
}

// greatest is the greatest current of a conductor over the cases of some kinds.
func (s *schedule) greatest(id string, kinds []circuit.CaseKind) string {
	most, found, open := 0.0, false, false
	for _, c := range s.a.Cases.All() {
		if !slices.Contains(kinds, c.Kind) {
			continue
		}
		amps, listed := c.Currents[id]
		open = open || c.Problem != nil || !listed && len(c.Gaps) > 0
		if listed {
			found, most = true, max(most, math.Abs(amps))
		}
	}
	switch {
	case open:
		return openCell
	case !found:
		return ""
	case most < noise:
		most = 0
	}
	return s.print(figure.Of(most, "A"))
}
