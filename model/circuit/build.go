package circuit

import (
	"driploop/model/record"
)

// build makes the network of a record: a node for each terminal, a branch for
// each conductor, device, link, source, load and coil.
func build(r *record.Record) *network {
	n := &network{
		record:  r,
		index:   map[string]int{},
		comps:   map[string]*record.Component{},
		conds:   map[string]int{},
		byComp:  map[string][]int{},
		nodesBy: map[string][]int{},
		spaces:  map[string]*record.Space{},
	}
	n.branches = make([]branch, 0, len(r.Conductors)+2*len(r.Components))
	for _, s := range r.Spaces {
		if s != nil {
			n.spaces[s.ID] = s
		}
	}
	for _, c := range r.Components {
		if c != nil && n.comps[c.ID] == nil {
			n.comps[c.ID] = c
		}
	}
	landed := map[string][]string{} // terminals used, by component, in order
	for _, c := range r.Conductors {
		if c == nil || n.has(c.ID) {
			continue
		}
		n.addConductor(c)
		for _, t := range []record.Terminal{c.From, c.To} {
			landed[t.Component] = append(landed[t.Component], t.Name)
		}
	}
	for _, c := range r.Components {
		if c != nil && n.comps[c.ID] == c {
			n.addComponent(c, landed[c.ID])
		}
	}
	n.countBundles()
	for i := range n.branches {
		b := &n.branches[i]
		n.anyOpen = n.anyOpen || b.ohms.open() || b.current.open() || b.watts.open() || b.limit.open() || b.emf[full].open()
	}
	return n
}

func (n *network) has(conductor string) bool {
	_, ok := n.conds[conductor]
	return ok
}

func (n *network) addConductor(c *record.Conductor) {
	a := n.nodeOf(c.From.Component, c.From.Name)
	b := n.nodeOf(c.To.Component, c.To.Name)
	metal := metalOf(c)
	n.conds[c.ID] = n.add(branch{kind: wire, id: c.ID, path: c.Path, a: a, b: b, cond: c, metal: metal, ohms: metal.cold})
}

// addComponent adds what lies between the terminals of a component.
func (n *network) addComponent(c *record.Component, landed []string) {
	cls := classOf(c)
	base := branch{id: c.ID, path: c.Path, comp: c, class: cls}
	if cls != nodeClass && cls != groundClass {
		n.addLinks(c, base)
	}
	n.addCoils(c, base)
	switch cls {
	case batteryClass, chargeClass:
		base.kind = source
		base.ohms = n.sourceOhms(c, cls)
		base.emf = n.sourceVolts(c, cls)
		if cls == chargeClass {
			base.limit = recordedAmps(c.Output, c.Path+".output")
		}
		n.between(base, landed)
	case loadClass:
		base.kind = load
		n.setDraw(&base)
		n.between(base, landed)
	case deviceClass:
		if len(c.Links) == 0 {
			base.kind, base.ohms = device, recordedOhms(c.Resistance)
			n.between(base, landed)
		}
	case switchClass, joinClass:
		if len(c.Links) == 0 {
			base.kind, base.ohms = contact, recordedOhms(c.Resistance)
			n.between(base, landed)
		}
	}
}

// between adds a branch between the two ends of a component. Terminals by other
// names stand for them if exactly two are used and neither end is.
func (n *network) between(b branch, landed []string) {
	first, second := b.class.ends()
	var names []string
	for _, name := range landed {
		if name == first || name == second {
			names = nil
			break
		}
		if name == record.CaseTerminal {
			continue
		}
		if len(names) == 0 || names[0] != name && (len(names) == 1 || names[1] != name) {
			names = append(names, name)
		}
	}
	if len(names) == 2 {
		first, second = names[0], names[1]
	}
	b.a, b.b = n.nodeOf(b.id, first), n.nodeOf(b.id, second)
	n.add(b)
}

// addLinks adds the links that a component declares between its terminals.
func (n *network) addLinks(c *record.Component, base branch) {
	choice := choices(c)
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
		b.when, b.choice = l.When.V, len(choice) > 1
		if l.Path != "" {
			b.path = l.Path
		}
		b.ohms = recordedOhms(l.Resistance)
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
		b.current = recordedAmps(k.Current, b.path+".current")
		n.add(b)
	}
}

// choices returns the commands or positions that a component's links name, in
// the order of the record.
func choices(c *record.Component) []string {
	var words []string
	seen := map[string]bool{}
	for _, l := range c.Links {
		if l != nil && l.When.Is() && !seen[l.When.V] {
			seen[l.When.V] = true
			words = append(words, l.When.V)
		}
	}
	return words
}
