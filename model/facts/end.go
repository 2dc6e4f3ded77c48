package facts

import (
	"slices"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// End is the facts of one end of a conductor and of how it is landed.
type End struct {
	Subject
	Conductor string `json:"conductor"`
	Component string `json:"component"`
	On        string `json:"on"` // terminal, such as pos-bus.a
	OnKind    string `json:"on_kind"`
	Role      string `json:"role"`
	Duty      string `json:"duty"`

	Terminal *string `json:"terminal,omitempty"`
	// Hole and Stud are nominal sizes in one spelling (M8, #10), so that equal
	// text is equal size; see record.NominalStud.
	Hole         *string `json:"hole,omitempty"`
	Stud         *string `json:"stud,omitempty"`
	Order        *int    `json:"order,omitempty"`
	Nut          *string `json:"nut,omitempty"`
	Metal        *string `json:"metal,omitempty"`
	Plating      *string `json:"plating,omitempty"`
	WasherInPath *bool   `json:"washer_in_path,omitempty"`

	Size           *string  `json:"size,omitempty"`  // of the conductor
	Gauge          *string  `json:"gauge,omitempty"` // the gauge of the pull and strand tables with no more copper
	AreaMM2        *float64 `json:"area_mm2,omitempty"`
	BarrelLeastMM2 *float64 `json:"barrel_least_mm2,omitempty"`
	BarrelMostMM2  *float64 `json:"barrel_most_mm2,omitempty"`
	Barrel         *string  `json:"barrel,omitempty"` // as marked, such as 16 AWG to 14 AWG
	CrimpTool      *string  `json:"crimp_tool,omitempty"`
	PullN          *float64 `json:"pull_n,omitempty"`
	Soldered       *string  `json:"soldered,omitempty"`

	TorqueNM      *float64 `json:"torque_nm,omitempty"`
	TorqueLeastNM *float64 `json:"torque_least_nm,omitempty"`
	TorqueMostNM  *float64 `json:"torque_most_nm,omitempty"`
	// TorqueRangeGiven: the record gives the maker's range.
	TorqueRangeGiven bool `json:"torque_range_given"`

	Space    *string `json:"space,omitempty"`
	Exposure *string `json:"exposure,omitempty"`
	// InBilge: the component stands in a bilge space.
	InBilge *bool   `json:"in_bilge,omitempty"`
	Cover   *string `json:"cover,omitempty"`
	// Ingress is that of the component it is landed in.
	Ingress
	Falls    *bool   `json:"falls,omitempty"` // the cable comes down to it
	DripLoop *bool   `json:"drip_loop,omitempty"`
	Slack    *string `json:"slack,omitempty"`

	Ungrounded *bool `json:"ungrounded,omitempty"`
	AlwaysLive *bool `json:"always_live,omitempty"`
	Protected  *bool `json:"protected,omitempty"` // every source reaches it through a device
	Joint
}

func end(r *record.Record, a *circuit.Analysis, c *record.Conductor, side string, e *record.End) *End {
	at, path := c.From, c.Path+".ends.from"
	if side == "to" {
		at, path = c.To, c.Path+".ends.to"
	}
	if e == nil {
		e = &record.End{}
	}
	f := &End{
		Subject: Subject{Path: path}, Conductor: c.ID, Component: at.Component, On: at.String(),
		Role: c.Role.V, Duty: c.Duty.Or("normal"),
	}
	s := &f.Subject
	on := r.Component(at.Component)
	if on == nil {
		on = &record.Component{}
	}
	f.OnKind = on.Kind.V
	landing(s, f, on, at, e)
	joint(s, f, c, e)
	where(s, f, r, on, e)
	joining(s, f, on, at.Name, e)

	result := a.Terminals[at.String()]
	if result == nil {
		result = &circuit.TerminalResult{}
	}
	putTruth(s, "ungrounded", &f.Ungrounded, result.Ungrounded)
	putTruth(s, "always_live", &f.AlwaysLive, result.AlwaysLive)
	putTruth(s, "protected", &f.Protected, result.Protected)
	return f
}

// landing sets how the terminal sits on its stud.
func landing(s *Subject, f *End, on *record.Component, at record.Terminal, e *record.End) {
	put(s, "terminal", &f.Terminal, &e.Terminal, "terminal")
	putNominal(s, "hole", &f.Hole, e.Hole)
	stud := e.Stud
	if !stud.Is() {
		stud = record.StudOf(on, at.Name)
	}
	putNominal(s, "stud", &f.Stud, stud)
	put(s, "order", &f.Order, &e.Order, "order")
	put(s, "nut", &f.Nut, &e.Nut, "nut")
	put(s, "metal", &f.Metal, &e.Metal, "metal")
	put(s, "plating", &f.Plating, &e.Plating, "plating")
	put(s, "washer_in_path", &f.WasherInPath, &e.WasherInPath, "washer_in_path")
	putMeasure(s, "torque_nm", &f.TorqueNM, &e.Torque, "torque")
	f.TorqueRangeGiven = e.TorqueRange.Is()
	if span, ok := e.TorqueRange.Get(); ok {
		f.TorqueLeastNM, f.TorqueMostNM = &span[0].Base, &span[1].Base
	} else {
		s.missing("torque_least_nm", "torque_range")
		s.missing("torque_most_nm", "torque_range")
	}
}

// joint sets how the terminal holds the conductor.
func joint(s *Subject, f *End, c *record.Conductor, e *record.End) {
	if size, ok := c.Size.Get(); ok {
		f.Size = ptr(size.String())
	} else {
		s.lacks("size", c.Path, "size")
	}
	if area, ok := nominalArea(c.Size); ok {
		f.AreaMM2, f.Gauge = &area, ptr(gaugeFor(area))
	} else {
		s.lacks("area_mm2", c.Path, "size")
		s.lacks("gauge", c.Path, "size")
	}
	barrel(s, f, c.Size, e)
	put(s, "crimp_tool", &f.CrimpTool, &e.Crimp.Tool, "crimp.tool")
	putMeasure(s, "pull_n", &f.PullN, &e.Crimp.Pull, "crimp.pull")
	put(s, "soldered", &f.Soldered, &e.Soldered, "soldered")
}

// barrel sets the range of copper that a terminal's barrel takes. Gauges and
// metric sizes do not line up, so that a barrel marked in the one says nothing of
// a conductor in the other.
func barrel(s *Subject, f *End, conductor record.Wire, e *record.End) {
	var areas []float64
	gap := figure.Missing(s.field("barrel"))
	if sizes, ok := e.Barrel.Get(); ok {
		for _, text := range sizes {
			size, err := quantity.ParseWireSize(text)
			if err != nil {
				continue
			}
			if conductor.Is() && (size.System == quantity.MM2) != (conductor.V.System == quantity.MM2) {
				gap.Why = "marked " + text + ", which is no range for a conductor of " + conductor.V.String()
				areas = nil
				break
			}
			if area, ok := nominalArea(record.Wire{V: size, State: record.Given}); ok {
				areas = append(areas, area)
			}
		}
	}
	if len(areas) == 0 {
		s.open("barrel_least_mm2", gap)
		s.open("barrel_most_mm2", gap)
		s.open("barrel", gap)
		return
	}
	f.Barrel = ptr(strings.Join(e.Barrel.V, " to "))
	f.BarrelLeastMM2, f.BarrelMostMM2 = ptr(slices.Min(areas)), ptr(slices.Max(areas))
}

// where sets what surrounds the joint.
func where(s *Subject, f *End, r *record.Record, on *record.Component, e *record.End) {
	place := "components." + f.Component
	putOf(s, "space", &f.Space, &on.Space, place, "space")
	if space := r.Space(on.Space.V); space != nil {
		putOf(s, "exposure", &f.Exposure, &space.Exposure, space.Path, "exposure")
		if kind, ok := space.Kind.Get(); ok {
			f.InBilge = ptr(kind == "bilge")
		} else {
			s.lacks("in_bilge", space.Path, "kind")
		}
	} else {
		s.lacks("exposure", place, "space")
		s.lacks("in_bilge", place, "space")
	}
	put(s, "cover", &f.Cover, &e.Cover, "cover")
	ingress(s, &f.Ingress, &on.IP, place, "ip")
	putOf(s, "enclosure", &f.Enclosure, &on.Enclosure, place, "enclosure")
	put(s, "falls", &f.Falls, &e.Falls, "falls")
	put(s, "drip_loop", &f.DripLoop, &e.DripLoop, "drip_loop")
	put(s, "slack", &f.Slack, &e.Slack, "slack")
}

// Stud is the facts of one stud or screw with what is landed on it.
type Stud struct {
	Subject
	On     string   `json:"on"`
	OnKind string   `json:"on_kind"`
	Landed int      `json:"landed"` // conductor ends on it
	Ends   []string `json:"ends"`
	// Cover protects the stud itself.
	Cover      *string `json:"cover,omitempty"`
	Ungrounded *bool   `json:"ungrounded,omitempty"`
	AlwaysLive *bool   `json:"always_live,omitempty"`
	Protected  *bool   `json:"protected,omitempty"`
	Stacking
}

func stud(r *record.Record, id string, t *circuit.TerminalResult) *Stud {
	component := r.Component(t.Component)
	f := &Stud{
		Subject: Subject{Path: "components." + t.Component}, On: id,
		Landed: len(t.Landed), Ends: append([]string{}, t.Landed...),
	}
	s := &f.Subject
	if component != nil {
		f.OnKind = component.Kind.V
		for _, p := range component.Posts {
			if p.Terminal == t.Terminal {
				f.Path = p.Path
				put(s, "cover", &f.Cover, &p.Cover, "cover")
			}
		}
	}
	stacked(s, &f.Stacking, r, component, t.Terminal, t.Landed)
	putTruth(s, "unguarded", &f.Unguarded, allOf(negated(t.Protected), negated(s.pointed("covered", f.Covered))))
	if f.Cover == nil && !s.Open.Has("cover") {
		s.missing("cover", "posts")
	}
	putTruth(s, "ungrounded", &f.Ungrounded, t.Ungrounded)
	putTruth(s, "always_live", &f.AlwaysLive, t.AlwaysLive)
	putTruth(s, "protected", &f.Protected, t.Protected)
	return f
}

// putNominal sets the nominal size of a hole or stud, which the entry of the
// fact's name gives.
func putNominal(s *Subject, fact string, to **string, v record.Text) {
	text, ok := v.Get()
	if !ok {
		s.missing(fact, fact)
		return
	}
	size, ok := record.NominalStud(text)
	if !ok {
		s.open(fact, figure.Gap{Field: s.field(fact), Why: `"` + text + `" is no stud size known here; write M8, 5/16 in or #10`})
		return
	}
	*to = &size
}
