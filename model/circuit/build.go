package circuit

import (
	"slices"

	"driploop/model/record"
)

// build makes the network of a record: a node for each terminal, a branch for
// each conductor, device, link, source, load and coil.
func build(r *record.Record) *network {
	n := &network{
		record:    r,
		parts:     make([]part, 0, len(r.Components)),
		comps:     make(map[string]int, len(r.Components)),
		index:     make(map[[2]string]int, 2*len(r.Conductors)),
		conds:     make(map[string]int, len(r.Conductors)),
		spaces:    make(map[string]*record.Space, len(r.Spaces)),
		nodes:     make([]node, 0, 2*len(r.Conductors)),
		branches:  make([]branch, 0, size(r)),
		terminals: make([]terminal, 0, 2*len(r.Conductors)),
	}
	for _, s := range r.Spaces {
		if s != nil {
			n.spaces[s.ID] = s
		}
	}
	for _, c := range r.Components {
		if c != nil && n.part(c.ID) == nil {
			n.comps[c.ID] = len(n.parts)
			n.parts = append(n.parts, part{Component: c, class: classOf(c), choices: choices(c), first: -1, latest: -1})
		}
	}
	metals := make([]metal, len(r.Conductors))
	for k, c := range r.Conductors {
		if c != nil && !n.has(c.ID) {
			n.addConductor(c, &metals[k])
		}
	}
	n.wires = len(n.branches)
	landed := len(n.terminals)
	for k := range n.parts {
		p := &n.parts[k]
		p.start = len(n.branches)
		n.addComponent(p, landed)
		p.end = len(n.branches)
	}
	n.joinNodes()
	n.countBundles()
	for i := range n.branches {
		n.anyOpen = n.anyOpen || n.branches[i].lacks()
	}
	return n
}

// size returns how many branches a record makes at most.
func size(r *record.Record) int {
	count := len(r.Conductors) + len(r.Components)
	for _, c := range r.Components {
		if c != nil {
			count += len(c.Links) + len(c.Coils)
		}
	}
	return count
}

func (n *network) has(conductor string) bool {
	_, ok := n.conds[conductor]
	return ok
}

func (n *network) addConductor(c *record.Conductor, m *metal) {
	from, to := n.terminalOf(c.From.Component, c.From.Name), n.terminalOf(c.To.Component, c.To.Name)
	*m = metalOf(c)
	n.conds[c.ID] = n.add(branch{
		kind: wire, id: c.ID, path: c.Path, a: n.terminals[from].node, b: n.terminals[to].node,
		cond: c, lands: [2]int{from, to}, metal: m, ohms: m.cold,
	})
}

// addComponent adds what lies between the terminals of a component. The first
// terminals of the network are those that conductors have landed on.
func (n *network) addComponent(p *part, landed int) {
	c := p.Component
	base := branch{id: c.ID, path: c.Path, comp: c, class: p.class}
	if !p.class.oneNode() {
		n.addLinks(p, base)
	}
	n.addCoils(c, base)
	switch p.class {
	case batteryClass, chargeClass:
		base.kind = source
		base.ohms = n.sourceOhms(c, p.class)
		base.giving = &giving{emf: n.sourceVolts(c, p.class)}
		if p.class == chargeClass {
			base.limit = recordedAmps(&c.Output, c.Path, "output")
		}
		n.between(base, p, landed)
	case loadClass:
		base.kind = load
		n.setDraw(&base)
		n.between(base, p, landed)
	case deviceClass:
		if len(c.Links) == 0 {
			base.kind, base.ohms = device, recordedOhms(&c.Resistance)
			n.between(base, p, landed)
		}
	case switchClass, joinClass:
		if len(c.Links) == 0 {
			base.kind, base.ohms = contact, recordedOhms(&c.Resistance)
			n.between(base, p, landed)
		}
	}
}

// between adds a branch between the two ends of a component. Terminals by other
// names stand for them if exactly two are used and neither end is.
func (n *network) between(b branch, p *part, landed int) {
	first, second := b.class.ends()
	var names [2]string
	count := 0
	for t := p.first; t >= 0 && t < landed; t = n.terminals[t].next {
		name := n.terminals[t].name
		if name == first || name == second {
			count = 0
			break
		}
		if name == record.CaseTerminal {
			continue
		}
		if count < 2 {
			names[count] = name
		}
		count++
	}
	if count == 2 {
		first, second = names[0], names[1]
	}
	b.a, b.b = n.nodeOf(b.id, first), n.nodeOf(b.id, second)
	n.add(b)
}

// addLinks adds the links that a component declares between its terminals.
func (n *network) addLinks(p *part, base branch) {
	c := p.Component
	for _, l := range c.Links {
		if l == nil || len(l.Between) != 2 || l.Between[0] == l.Between[1] {
			continue
		}
		b := base
		b.kind = contact
		if b.class == deviceClass {
			b.kind = device
		}
		b.a, b.b = n.nodeOf(c.ID, l.Between[0]), n.nodeOf(c.ID, l.Between[1])
		b.when, b.choice = l.When.V, len(p.choices) > 1
		if l.Path != "" {
			b.path = l.Path
		}
		b.ohms = recordedOhms(&l.Resistance)
		n.add(b)
	}
}

func (n *network) addCoils(c *record.Component, base branch) {
	for _, k := range c.Coils {
		if k == nil || len(k.Between) != 2 || k.Between[0] == k.Between[1] {
			continue
		}
		b := base
		b.kind = coil
		b.a, b.b = n.nodeOf(c.ID, k.Between[0]), n.nodeOf(c.ID, k.Between[1])
		b.when = k.When.V
		if k.Path != "" {
			b.path = k.Path
		}
		b.taking = &taking{current: recordedAmps(&k.Current, b.path, "current")}
		n.add(b)
	}
}

// choices returns the commands or positions that a component's links name, in
// the order of the record.
func choices(c *record.Component) []string {
	var words []string
	for _, l := range c.Links {
		if l != nil && l.When.Is() && !slices.Contains(words, l.When.V) {
			words = append(words, l.When.V)
		}
	}
	return words
}
