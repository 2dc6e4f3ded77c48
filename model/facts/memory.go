package facts

import "driploop/model/circuit"

// subjects is the memory of the subjects of a document.
type subjects struct {
	vessel       Vessel
	job          Job
	conductors   slab[Conductor]
	runs         slab[Run]
	segments     slab[Segment]
	ends         slab[End]
	studs        slab[Stud]
	devices      slab[Device]
	switches     slab[Switch]
	batteries    slab[Battery]
	chargers     slab[Charger]
	loads        slab[Load]
	components   slab[Component]
	contacts     slab[Contact]
	penetrations slab[Penetration]
	tests        slab[Test]
	waivers      slab[Waiver]
}

// subject begins the facts of a subject.
func (b *Builder) subject(path string) Subject { return Subject{Path: path, Open: Open{in: &b.store}} }

// terminal returns what lands on a terminal; nil where no conductor does.
func (b *Builder) terminal(component, name string) *circuit.TerminalResult {
	return b.solved.Terminals[component+"."+name]
}

// expect makes room for the subjects of a record.
func (b *Builder) expect() {
	r, a, m, d := b.record, b.solved, &b.made, &b.doc
	segments := 0
	for _, c := range r.Conductors {
		segments += len(c.Route)
	}
	expect(&d.Conductors, &m.conductors, len(r.Conductors))
	expect(&d.Runs, &m.runs, 0)
	expect(&d.Segments, &m.segments, segments)
	expect(&d.Ends, &m.ends, 2*len(r.Conductors))
	expect(&d.Studs, &m.studs, len(a.Terminals))
	expect(&d.Devices, &m.devices, len(a.Devices))
	expect(&d.Switches, &m.switches, 0)
	expect(&d.Batteries, &m.batteries, len(a.Batteries))
	expect(&d.Chargers, &m.chargers, 0)
	expect(&d.Loads, &m.loads, len(a.Loads))
	expect(&d.Components, &m.components, len(r.Components))
	expect(&d.Contacts, &m.contacts, 0)
	expect(&d.Penetrations, &m.penetrations, len(r.Penetrations))
	expect(&d.Tests, &m.tests, len(r.Tests))
	expect(&d.Waivers, &m.waivers, len(r.Waivers))
}

func expect[T any](by *map[string]*T, all *slab[T], n int) {
	if *by == nil {
		*by = make(map[string]*T, n)
	}
	all.expect(n)
}

// Forget forgets the document that was built last: nothing of it may be read any
// more. What it took of the memory serves the next one.
func (b *Builder) Forget() {
	if len(b.lacks) > manyLacks {
		*b = Builder{}
		return
	}
	b.store.reset()
	d, m := &b.doc, &b.made
	m.vessel, m.job = Vessel{}, Job{}
	d.Practice, d.Vessel, d.Job = nil, nil, nil
	forget(d.Conductors, &m.conductors)
	forget(d.Runs, &m.runs)
	forget(d.Segments, &m.segments)
	forget(d.Ends, &m.ends)
	forget(d.Studs, &m.studs)
	forget(d.Devices, &m.devices)
	forget(d.Switches, &m.switches)
	forget(d.Batteries, &m.batteries)
	forget(d.Chargers, &m.chargers)
	forget(d.Loads, &m.loads)
	forget(d.Components, &m.components)
	forget(d.Contacts, &m.contacts)
	forget(d.Penetrations, &m.penetrations)
	forget(d.Tests, &m.tests)
	forget(d.Waivers, &m.waivers)
	b.survey.reset()
	b.findings = findings{}
	b.record, b.solved = nil, nil
}

func forget[T any](by map[string]*T, all *slab[T]) {
	clear(by)
	all.reset()
}

// manyLacks is how many open facts make a document too large to keep its memory:
// most have a few thousand.
const manyLacks = 1 << 16
