package rules

import (
	"strings"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// kin collects the parts of a record that a breach has to do with beside
// its subject: the other end, the device that protects it.
type kin struct {
	w       *writer
	subject string
	all     []verdict.Related
	seen    map[string]bool
}

// related returns what else in the record the breach of a subject has to do
// with, in a fixed order, each part once.
func (w *writer) related(c *subject) []verdict.Related {
	l := kin{w: w, subject: c.base.Path, seen: map[string]bool{c.base.Path: true}}
	r := w.record
	switch f := c.value().Addr().Interface().(type) {
	case *facts.Conductor:
		l.conductor(f)
	case *facts.Run:
		l.terminal("source", f.Source)
		l.component("first device", f.Device)
		l.conductors("on the way", f.Via)
	case *facts.Segment:
		l.add("conductor", "conductors."+f.Conductor)
		if f.Space != nil {
			l.add("space", "spaces."+*f.Space)
		}
	case *facts.End:
		l.end(f)
	case *facts.Stud:
		for _, end := range f.Ends {
			if id, side, ok := strings.Cut(end, "."); ok {
				l.add("landed on it", "conductors."+id+".ends."+side)
			}
		}
	case *facts.Load:
		l.components("device on its way", f.Devices)
		l.components("switch on its way", f.Switches)
		l.landing(c.id)
	case *facts.Contact:
		l.component("component", f.Component)
	case *facts.Penetration:
		l.penetration(c.id)
	case *facts.Test:
		l.test(f.Path)
	case *facts.Waiver:
		if f.At != nil {
			l.add("waived", *f.At)
		}
	case *facts.Device:
		l.landing(c.id)
		l.components("fed by it", f.Loads)
	default:
		if r.Component(c.id) != nil {
			l.landing(c.id)
		}
	}
	return l.all
}

func (l *kin) conductor(f *facts.Conductor) {
	if f.GuardedBy != nil {
		l.components("protecting device", strings.Split(*f.GuardedBy, ", "))
	}
	l.terminal("from", f.From)
	l.terminal("to", f.To)
	l.terminal("source", f.BareFrom)
	l.terminal("reached without a device", f.BareVia)
}

// end relates the end of a conductor to what it lands on, and to the other end.
func (l *kin) end(f *facts.End) {
	l.component("landed on", f.Component)
	l.add("conductor", "conductors."+f.Conductor)
	base, side := "conductors."+f.Conductor+".ends.", "to"
	if f.Path == base+"to" {
		side = "from"
	}
	l.add("other end", base+side)
}

func (l *kin) penetration(id string) {
	for _, p := range l.w.record.Penetrations {
		if p.ID == id {
			l.conductors("passes through it", p.Passes.V)
			l.add("from", "spaces."+p.From.V)
			l.add("to", "spaces."+p.To.V)
		}
	}
}

func (l *kin) test(path string) {
	for _, t := range l.w.record.Tests {
		if t.Path == path {
			l.component("tested", t.Load.V)
			l.add("tested", "conductors."+t.Conductor.V)
			l.add("tested", "penetrations."+t.Penetration.V)
		}
	}
}

// landing relates a component to the conductors that land on it.
func (l *kin) landing(id string) {
	for _, c := range l.w.record.Conductors {
		if lands(c, id) {
			l.add("lands on it", c.Path)
		}
	}
}

func lands(c *record.Conductor, component string) bool {
	return c.From.Component == component || c.To.Component == component
}

// terminal relates to the component of a terminal, such as "house.pos".
func (l *kin) terminal(role, at string) {
	component, _, _ := strings.Cut(at, ".")
	l.component(role, component)
}

func (l *kin) component(role, id string) { l.add(role, "components."+id) }

func (l *kin) components(role string, ids []string) {
	for _, id := range ids {
		l.component(role, id)
	}
}

func (l *kin) conductors(role string, ids []string) {
	for _, id := range ids {
		l.add(role, "conductors."+id)
	}
}

// add relates to a part of the record, if it stands there.
func (l *kin) add(role, path string) {
	at, stands := l.w.record.Places.Find(path)
	if !stands || l.seen[path] {
		return
	}
	l.seen[path] = true
	l.all = append(l.all, verdict.Related{Role: role, Subject: path, At: at})
}
