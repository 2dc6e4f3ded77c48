package facts

import (
	"driploop/model/circuit"
	"driploop/model/record"
)

// defaultPractice holds for a record that names no practice sets.
var defaultPractice = [...]string{"us-federal", "workmanship"}

// Build joins a record and its analysis into the facts that rules read. The
// same record gives the same facts. Some of them are values of the record and of
// the analysis themselves.
func Build(r *record.Record, a *circuit.Analysis) *Document {
	return new(Builder).Build(r, a)
}

// Builder builds documents one after the other in the same memory.
type Builder struct {
	store
	made   subjects
	doc    Document
	record *record.Record
	solved *circuit.Analysis

	survey
	findings
	blank struct { // what the record or the analysis does not have
		end       record.End
		component record.Component
		post      record.Post
		terminal  circuit.TerminalResult
	}
}

// Build is Build, see there. The document lasts until the next one is built, or
// the builder forgets it.
func (b *Builder) Build(r *record.Record, a *circuit.Analysis) *Document {
	b.Forget()
	b.record, b.solved = r, a
	b.expect()
	d := &b.doc
	d.Format, d.Practice = Format, r.Practice.V
	if len(d.Practice) == 0 {
		d.Practice = append([]string{}, defaultPractice[:]...)
	}
	b.look(r, a)
	d.Vessel, d.Job = b.vessel(), b.job()
	b.pumping(d.Vessel)
	b.conductors()
	for i := range b.wires {
		b.studAt(b.wires[i].fromID)
		b.studAt(b.wires[i].toID)
	}
	for i := range b.parts {
		b.component(&b.parts[i])
	}
	b.outputs()
	b.shares()
	for i := range b.wires {
		b.feeds(&b.wires[i])
	}
	b.parallels()
	b.machines()
	for _, p := range r.Penetrations {
		d.Penetrations[p.ID] = b.penetration(p)
	}
	keys := b.testKeys(r.Tests)
	for i, t := range r.Tests {
		made := b.test(t)
		made.Key = keys[i]
		d.Tests[listID(i)] = made
	}
	keys = waiverKeys(r.Waivers)
	for i, w := range r.Waivers {
		written := b.waiver(w)
		written.Key = keys[i]
		d.Waivers[listID(i)] = written
	}
	return d
}

// conductors adds the conductors, with their runs, segments and ends.
func (b *Builder) conductors() {
	d, beforeSwitch := &b.doc, b.toDisconnect()
	for i := range b.wires {
		w := &b.wires[i]
		w.facts = b.conductor(w)
		d.Conductors[w.ID] = w.facts
		if w.Size.Is() {
			w.gauge = b.words.keep(gaugeFor(*w.facts.AreaMM2))
		}
		b.runs(w)
		keys := segmentKeys(w.Conductor)
		for k, g := range w.Route {
			s := b.segment(w, g, beforeSwitch[i])
			s.Key = keys[k]
			d.Segments[segmentID(w.ID, k)] = s
		}
		d.Ends[w.ID+".from"] = b.end(w, "from", w.Ends.From)
		d.Ends[w.ID+".to"] = b.end(w, "to", w.Ends.To)
	}
}

// studAt adds the stud of a terminal.
func (b *Builder) studAt(terminal string) {
	if t := b.solved.Terminals[terminal]; t != nil && b.doc.Studs[terminal] == nil {
		b.doc.Studs[terminal] = b.stud(terminal, t)
	}
}

// component adds a component to every collection that it belongs to.
func (b *Builder) component(on *part) {
	d, c, result := &b.doc, on.Component, b.solved.Components[on.ID]
	if result == nil {
		result = &circuit.ComponentResult{}
	}
	d.Components[c.ID] = b.anyComponent(c, result)
	b.contacts(c, result)
	switch kind := on.kind; {
	case kind.Protective:
		d.Devices[c.ID] = b.device(on)
	case kind.Switching:
		d.Switches[c.ID] = b.switching(c, result)
	case c.Kind.V == "battery":
		d.Batteries[c.ID] = b.battery(c)
	case kind.Source:
		d.Chargers[c.ID] = b.charger(c)
	case kind.Load:
		d.Loads[c.ID] = b.load(c)
	}
}
