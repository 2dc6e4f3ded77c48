package facts

import (
	"driploop/model/circuit"
	"driploop/model/record"
)

// defaultPractice holds for a record that names no practice sets.
var defaultPractice = [...]string{"us-federal", "workmanship"}

// Build joins a record and its analysis into the facts that rules read. The
// same record gives the same facts.
func Build(r *record.Record, a *circuit.Analysis) *Document {
	d := &Document{
		Format: Format, Practice: r.Practice.V, Vessel: vessel(r), Job: job(r),
		Conductors: map[string]*Conductor{}, Runs: map[string]*Run{}, Segments: map[string]*Segment{}, Ends: map[string]*End{},
		Studs: map[string]*Stud{}, Devices: map[string]*Device{}, Switches: map[string]*Switch{}, Batteries: map[string]*Battery{},
		Chargers: map[string]*Charger{}, Loads: map[string]*Load{}, Components: map[string]*Component{}, Contacts: map[string]*Contact{},
		Penetrations: map[string]*Penetration{}, Tests: map[string]*Test{}, Waivers: map[string]*Waiver{},
	}
	if len(d.Practice) == 0 {
		d.Practice = append([]string{}, defaultPractice[:]...)
	}
	pumping(d.Vessel, r, a)
	beforeSwitch, served := toDisconnect(r, a), serving(r, a)
	for _, c := range r.Conductors {
		d.Conductors[c.ID] = conductor(r, a, c)
		service(d.Conductors[c.ID], served[c.ID])
		stalled(d.Conductors[c.ID], served[c.ID])
		returning(c.ID, d.Conductors[c.ID], r, a, served[c.ID])
		runs(a, c, d.Runs)
		keys := segmentKeys(c)
		for i, g := range c.Route {
			s := segment(r, a, beforeSwitch[c.ID], c, g)
			s.Key = keys[i]
			d.Segments[segmentID(c.ID, i)] = s
		}
		d.Ends[c.ID+".from"] = end(r, a, c, "from", c.Ends.From)
		d.Ends[c.ID+".to"] = end(r, a, c, "to", c.Ends.To)
	}
	for id, t := range a.Terminals {
		if len(t.Landed) > 0 {
			d.Studs[id] = stud(r, id, t)
		}
	}
	for _, c := range r.Components {
		d.component(r, a, c)
	}
	outputs(r, a, d.Conductors)
	shares(r, a, d.Conductors)
	for id, c := range d.Conductors {
		feeds(c, a, d.Conductors, served[id])
	}
	parallels(r, d.Devices)
	machines(r, a, d.Devices)
	for _, p := range r.Penetrations {
		d.Penetrations[p.ID] = penetration(r, p)
	}
	keys := testKeys(r.Tests)
	for i, t := range r.Tests {
		made := test(r, a, t)
		made.Key = keys[i]
		d.Tests[listID(i)] = made
	}
	keys = waiverKeys(r.Waivers)
	for i, w := range r.Waivers {
		written := waiver(w)
		written.Key = keys[i]
		d.Waivers[listID(i)] = written
	}
	return d
}

// component adds a component to every collection that it belongs to.
func (d *Document) component(r *record.Record, a *circuit.Analysis, c *record.Component) {
	d.Components[c.ID] = component(r, a, c)
	d.contacts(r, a, c)
	kind := record.KindOf(c.Kind.V)
	switch {
	case kind.Protective:
		d.Devices[c.ID] = device(r, a, c)
	case kind.Switching:
		d.Switches[c.ID] = switching(r, a, c)
	case c.Kind.V == "battery":
		d.Batteries[c.ID] = battery(r, a, c)
	case kind.Source:
		d.Chargers[c.ID] = charger(r, a, c)
	case kind.Load:
		d.Loads[c.ID] = load(r, a, c)
	}
}
