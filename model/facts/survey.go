package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/record"
)

// survey is what belongs together in a record, found once for all subjects.
type survey struct {
	parts  []part
	partAt map[string]int // by id of the component
	wires  []wire
	wireAt map[string]int // by id of the conductor
	landed []*wire        // the memory of their lists
	loads  []served
	nodes

	carried []carried
	serving []*served // the memory of the lists of wires

	commanded bool // some component has links that a command closes

	cutOff  []string // the switches that cut a battery off
	shorted string   // tells of a source that the wiring short-circuits, if there is one
	lost    string   // tells of a load that has no way from a source, if there is one
}

// part is a component with the conductors that land on it, in order of the record.
type part struct {
	*record.Component
	kind   record.Kind
	number int // its place in the record
	node   int // of a bar or ground point; -1 for none
	wires  []*wire
	ends   int // how many those are
}

// wire is a conductor with what it joins and what the circuit makes of it.
type wire struct {
	*record.Conductor
	number       int    // its place in the record
	fromID, toID string // its terminals, as records write them
	from, to     *part  // nil if the record has none such

	fromNode, toNode int

	result *circuit.ConductorResult
	loads  []*served // whose current it carries out or back, in order of the record
	serves int       // how many those are
	last   *served   // of them that was found
	facts  *Conductor
	gauge  *string // see End.Gauge
}

// served is a load with what the circuit makes of it.
type served struct {
	*record.Component
	result *circuit.LoadResult
}

// carried is a load whose current a conductor carries.
type carried struct {
	by   *wire
	load *served
}

// look surveys a record and its analysis.
func (v *survey) look(r *record.Record, a *circuit.Analysis) {
	if v.partAt == nil {
		v.partAt, v.wireAt = make(map[string]int, len(r.Components)), make(map[string]int, len(r.Conductors))
		v.byID = make(map[string]int, 2*len(r.Conductors))
	}
	for i, c := range r.Components {
		v.parts = append(v.parts, part{Component: c, kind: record.KindOf(c.Kind.V), number: i, node: -1})
		v.partAt[c.ID] = i
		v.commanded = v.commanded || len(commands(c)) > 1
	}
	for i, c := range r.Conductors {
		w := wire{
			Conductor: c, number: i, fromID: c.From.String(), toID: c.To.String(),
			from: v.part(c.From.Component), to: v.part(c.To.Component), result: a.Conductors[c.ID],
		}
		if w.result == nil {
			w.result = &circuit.ConductorResult{}
		}
		w.fromNode, w.toNode = v.node(w.from, w.fromID), v.node(w.to, w.toID)
		v.wires = append(v.wires, w)
		v.wireAt[c.ID] = i
	}
	v.land()
	for _, p := range a.Problems {
		if p.Kind == circuit.Shorted {
			v.shorted = p.Says
			break
		}
	}
	for _, battery := range a.Batteries {
		if battery.Disconnect != "" {
			v.cutOff = append(v.cutOff, battery.Disconnect)
		}
	}
	v.serve(r, a)
}

// land notes the conductors of each component.
func (v *survey) land() {
	for i := range v.wires {
		for on := range v.wires[i].parts {
			on.ends++
		}
	}
	v.landed = slices.Grow(v.landed, 2*len(v.wires))
	free := v.landed[:2*len(v.wires)]
	for i := range v.parts {
		on := &v.parts[i]
		on.wires, free = free[:0:on.ends], free[on.ends:]
	}
	for i := range v.wires {
		for on := range v.wires[i].parts {
			on.wires = append(on.wires, &v.wires[i])
		}
	}
}

// serve notes the loads whose current each conductor carries.
func (v *survey) serve(r *record.Record, a *circuit.Analysis) {
	for _, c := range r.Components {
		if load := a.Loads[c.ID]; load != nil {
			v.loads = append(v.loads, served{c, load})
		}
	}
	for i := range v.loads {
		load := &v.loads[i]
		if v.lost == "" && len(load.result.Out) == 0 {
			v.lost = "the way from a source to " + load.ID + " is not known"
		}
		for _, way := range [2][]string{load.result.Out, load.result.Back} {
			for _, id := range way {
				if w := v.wire(id); w != nil && w.last != load {
					w.last = load
					w.serves++
					v.carried = append(v.carried, carried{w, load})
				}
			}
		}
	}
	v.serving = slices.Grow(v.serving, len(v.carried))
	free := v.serving[:len(v.carried)]
	for i := range v.wires {
		w := &v.wires[i]
		w.loads, free = free[:0:w.serves], free[w.serves:]
	}
	for _, c := range v.carried {
		c.by.loads = append(c.by.loads, c.load)
	}
}

// wire returns a conductor by its id, or nil; part a component.
func (v *survey) wire(id string) *wire {
	if i, ok := v.wireAt[id]; ok {
		return &v.wires[i]
	}
	return nil
}

func (v *survey) part(id string) *part {
	if i, ok := v.partAt[id]; ok {
		return &v.parts[i]
	}
	return nil
}

// parts calls f with what the conductor lands on, each once.
func (w *wire) parts(f func(*part) bool) {
	switch {
	case w.from != nil && !f(w.from):
	case w.to != nil && w.to != w.from:
		f(w.to)
	}
}

// other returns what the other end is on than one that is on a part.
func (w *wire) other(on *part) *part {
	if w.to == on {
		return w.from
	}
	return w.to
}

// onKind tells whether an end of the conductor is on a component of a kind.
func (w *wire) onKind(kind string) bool {
	for on := range w.parts {
		if on.Kind.V == kind {
			return true
		}
	}
	return false
}

// reset forgets a record, and keeps the memory.
func (v *survey) reset() {
	clear(v.parts)
	clear(v.partAt)
	clear(v.wires)
	clear(v.wireAt)
	clear(v.landed[:cap(v.landed)])
	clear(v.loads)
	clear(v.cutOff)
	clear(v.carried)
	clear(v.serving[:cap(v.serving)])
	clear(v.owners)
	clear(v.byID)
	*v = survey{
		parts: v.parts[:0], partAt: v.partAt, wires: v.wires[:0], wireAt: v.wireAt,
		landed: v.landed[:0], loads: v.loads[:0], cutOff: v.cutOff[:0],
		carried: v.carried[:0], serving: v.serving[:0],
		nodes: nodes{owners: v.owners[:0], byID: v.byID},
	}
}
