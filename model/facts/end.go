package facts

import (
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

func (b *Builder) end(w *wire, side string, e *record.End) *End {
	on, terminal, id := w.from, w.From, w.fromID
	if side == "to" {
		on, terminal, id = w.to, w.To, w.toID
	}
	f := b.made.ends.take()
	f.Subject = b.subject(endPath(w.Conductor, side, e))
	f.Conductor, f.Component, f.On = w.ID, terminal.Component, id
	f.Role, f.Duty = w.facts.Role, w.facts.Duty
	if e == nil {
		e = &b.blank.end
	}
	c := &b.blank.component
	if on != nil {
		c = on.Component
	}
	s := &f.Subject
	f.OnKind = c.Kind.V
	post := b.post(c, terminal.Name)
	b.landing(s, f, c, post, e)
	b.joint(s, f, w, e)
	b.where(s, f, c, e)
	b.joining(s, f, c, post, e)

	result := b.solved.Terminals[id]
	if result == nil {
		result = &b.blank.terminal
	}
	putSolved(s, "ungrounded", &f.Ungrounded, &result.Ungrounded)
	putSolved(s, "always_live", &f.AlwaysLive, &result.AlwaysLive)
	putSolved(s, "protected", &f.Protected, &result.Protected)
	return f
}

func endPath(c *record.Conductor, side string, e *record.End) string {
	if e != nil {
		return e.Path
	}
	return c.Path + ".ends." + side
}

// post returns the stud that a component lists for one of its terminals.
func (b *Builder) post(on *record.Component, terminal string) *record.Post {
	for _, p := range on.Posts {
		if p.Terminal == terminal {
			return p
		}
	}
	return &b.blank.post
}

// landing sets how the terminal sits on its stud.
func (b *Builder) landing(s *Subject, f *End, on *record.Component, post *record.Post, e *record.End) {
	put(s, "terminal", &f.Terminal, &e.Terminal, "terminal")
	b.putNominal(s, "hole", &f.Hole, &e.Hole)
	stud := &e.Stud
	for _, other := range [...]*record.Text{&post.Stud, &on.Stud} {
		if !stud.Is() {
			stud = other
		}
	}
	b.putNominal(s, "stud", &f.Stud, stud)
	put(s, "order", &f.Order, &e.Order, "order")
	put(s, "nut", &f.Nut, &e.Nut, "nut")
	put(s, "metal", &f.Metal, &e.Metal, "metal")
	put(s, "plating", &f.Plating, &e.Plating, "plating")
	put(s, "washer_in_path", &f.WasherInPath, &e.WasherInPath, "washer_in_path")
	putMeasure(s, "torque_nm", &f.TorqueNM, &e.Torque, "torque")
	f.TorqueRangeGiven = e.TorqueRange.Is()
	putSpan(s, "torque_least_nm", "torque_most_nm", &f.TorqueLeastNM, &f.TorqueMostNM, &e.TorqueRange, "torque_range")
}

// joint sets how the terminal holds the conductor.
func (b *Builder) joint(s *Subject, f *End, w *wire, e *record.End) {
	f.Size, f.AreaMM2, f.Gauge = w.facts.Size, w.facts.AreaMM2, w.gauge
	if f.Size == nil {
		s.lacks("size", w.Path, "size")
		s.lacks("area_mm2", w.Path, "size")
		s.lacks("gauge", w.Path, "size")
	}
	b.barrel(s, f, &w.Size, e)
	put(s, "crimp_tool", &f.CrimpTool, &e.Crimp.Tool, "crimp.tool")
	putMeasure(s, "pull_n", &f.PullN, &e.Crimp.Pull, "crimp.pull")
	put(s, "soldered", &f.Soldered, &e.Soldered, "soldered")
}

// barrel sets the range of copper that a terminal's barrel takes. Gauges and
// metric sizes do not line up, so that a barrel marked in the one says nothing of
// a conductor in the other.
func (b *Builder) barrel(s *Subject, f *End, conductor *record.Wire, e *record.End) {
	why, least, most := "", 0.0, 0.0
	found := false
	if e.Barrel.Is() {
		for _, text := range e.Barrel.V {
			size := b.barrels.of(text, readBarrel)
			if !size.known {
				continue
			}
			if conductor.Is() && (size.System == quantity.MM2) != (conductor.V.System == quantity.MM2) {
				why = "marked " + text + ", which is no range for a conductor of " + conductor.V.String()
				found = false
				break
			}
			area := areaOf(size.WireSize)
			if !found || area < least {
				least = area
			}
			most, found = max(most, area), true
		}
	}
	if !found {
		gap := s.Open.store().reason(reason{s.Path, "barrel", why})
		for _, fact := range [...]string{"barrel_least_mm2", "barrel_most_mm2", "barrel"} {
			s.Open.add(fact, gap)
		}
		return
	}
	if marks := e.Barrel.V; len(marks) == 2 {
		f.Barrel = b.ranges.of([2]string{marks[0], marks[1]}, readRange)
	} else {
		f.Barrel = s.word(strings.Join(marks, " to "))
	}
	f.BarrelLeastMM2, f.BarrelMostMM2 = s.number(least), s.number(most)
}

// where sets what surrounds the joint.
func (b *Builder) where(s *Subject, f *End, on *record.Component, e *record.End) {
	place := componentPath(on, f.Component)
	putOf(s, "space", &f.Space, &on.Space, place, "space")
	if space := b.record.Space(on.Space.V); space != nil {
		putOf(s, "exposure", &f.Exposure, &space.Exposure, space.Path, "exposure")
		if space.Kind.Is() {
			f.InBilge = s.flag(space.Kind.V == "bilge")
		} else {
			s.lacks("in_bilge", space.Path, "kind")
		}
	} else {
		s.lacks("exposure", place, "space")
		s.lacks("in_bilge", place, "space")
	}
	put(s, "cover", &f.Cover, &e.Cover, "cover")
	b.ingress(s, &f.Ingress, &on.IP, place, "ip")
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

func (b *Builder) stud(id string, t *circuit.TerminalResult) *Stud {
	component := b.record.Component(t.Component)
	f := b.made.studs.take()
	f.Subject = b.subject(componentPath(component, t.Component))
	f.On, f.Landed, f.Ends = id, len(t.Landed), t.Landed
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
	b.stacked(s, &f.Stacking, component, t.Terminal, t.Landed)
	putTruth(s, "unguarded", &f.Unguarded, s.allOf(negated(s.solved(&t.Protected)), negated(s.pointed("covered", f.Covered))))
	if f.Cover == nil && !s.Open.Has("cover") {
		s.missing("cover", "posts")
	}
	putSolved(s, "ungrounded", &f.Ungrounded, &t.Ungrounded)
	putSolved(s, "always_live", &f.AlwaysLive, &t.AlwaysLive)
	putSolved(s, "protected", &f.Protected, &t.Protected)
	return f
}

// putNominal sets the nominal size of a hole or stud, which the entry of the
// fact's name gives.
func (b *Builder) putNominal(s *Subject, fact string, to **string, v *record.Text) {
	if !v.Is() {
		s.missing(fact, fact)
		return
	}
	if read := b.studs.of(v.V, readStud); read.known {
		*to = &read.size
		return
	}
	s.open(fact, figure.Gap{Field: s.field(fact), Why: `"` + v.V + `" is no stud size known here; write M8, 5/16 in or #10`})
}

// componentPath is the path of a component, whether the record has it or not.
func componentPath(c *record.Component, id string) string {
	if c != nil && c.Path != "" {
		return c.Path
	}
	return "components." + id
}
