package circuit

import (
	"driploop/model/figure"
	"driploop/model/record"
)

// group is the conductors of one bundle or sheath.
type group struct {
	members map[string]bool // those that carry current
	count   int             // the members, or more if the record says so
	closed  bool            // the record lists or counts its members
}

// bundles is who runs with whom, by bundle and by sheath, and whose record does
// not tell: by space, the entries that could put one more conductor there.
type bundles struct {
	bundle, sheath map[string]*group
	looseBundle    map[string][]figure.Gap
	looseSheath    map[string][]figure.Gap
}

// anywhere stands for the space of a segment that does not name its space.
const anywhere = ""

// countBundles finds the groups of a record. Bonding conductors carry no current
// and do not count.
func (n *network) countBundles() {
	b := &bundles{map[string]*group{}, map[string]*group{}, map[string][]figure.Gap{}, map[string][]figure.Gap{}}
	n.bundles = b
	for i := range n.branches {
		br := &n.branches[i]
		if br.kind != wire || br.cond.Role.V == "bonding" {
			continue
		}
		c := br.cond
		sheath, inSheath := c.Sheath.Get()
		if inSheath && sheath != "none" {
			join(b.sheath, sheath, c.ID)
		}
		for _, g := range c.Route {
			if g == nil {
				continue
			}
			space := g.Space.Or(anywhere)
			if !inSheath {
				b.looseSheath[space] = append(b.looseSheath[space], figure.Missing(c.Path+".sheath"))
			}
			switch name, ok := g.Bundle.Get(); {
			case !ok:
				b.looseBundle[space] = append(b.looseBundle[space], figure.Missing(g.Path+".bundle"))
			case name != "none":
				join(b.bundle, name, c.ID)
			}
		}
	}
	for _, r := range n.record.Bundles {
		if r == nil {
			continue
		}
		for _, id := range r.Members.V {
			if i, ok := n.conds[id]; ok && n.branches[i].cond.Role.V != "bonding" {
				join(b.bundle, r.ID, id)
			}
		}
		if g := b.bundle[r.ID]; g != nil {
			g.count = max(g.count, r.Carrying.V)
			g.closed = r.Members.Is() || r.Carrying.Is()
		}
	}
}

func join(groups map[string]*group, name, conductor string) {
	g := groups[name]
	if g == nil {
		g = &group{members: map[string]bool{}}
		groups[name] = g
	}
	g.members[conductor] = true
	g.count = max(g.count, len(g.members))
}

// bundleCount returns how many current-carrying conductors run together where
// most do: in one bundle or one sheath. It is open while the record of a
// conductor in the same space does not tell whether it is one more.
func (n *network) bundleCount(c *record.Conductor) figure.Figure {
	var gaps []figure.Gap
	if len(c.Route) == 0 {
		gaps = append(gaps, figure.Missing(c.Path+".route"))
	}
	most := crowd{count: 1, path: c.Path}
	sheath, inSheath := c.Sheath.Get()
	if !inSheath {
		gaps = append(gaps, figure.Missing(c.Path+".sheath"))
	}
	if inSheath && sheath != "none" {
		most = most.or(n.bundles.sheath[sheath], c.Path, ".sheath")
	}
	for _, g := range c.Route {
		if g == nil {
			continue
		}
		name, ok := g.Bundle.Get()
		if !ok {
			gaps = append(gaps, figure.Missing(g.Path+".bundle"))
		}
		if ok && name != "none" {
			of := n.bundles.bundle[name]
			most = most.or(of, g.Path, ".bundle")
			if of == nil || !of.closed {
				gaps = append(gaps, loose(n.bundles.looseBundle, g)...)
			}
		}
		if inSheath && sheath != "none" {
			gaps = append(gaps, loose(n.bundles.looseSheath, g)...)
		}
	}
	if len(gaps) > 0 {
		return figure.Open(uniqueGaps(gaps)...)
	}
	return figure.Worked(float64(most.count), "", most.steps)
}

// crowd is how many conductors run together, and the entry that says so.
type crowd struct {
	count       int
	path, entry string
}

// or returns the greater of a crowd and a group that an entry names.
func (c crowd) or(g *group, path, entry string) crowd {
	if g != nil && g.count > c.count {
		return crowd{g.count, path, entry}
	}
	return c
}

func (c crowd) steps() []figure.Step {
	return []figure.Step{{
		Formula: "current-carrying conductors together: count", Source: "the record",
		Inputs: []figure.Input{{Symbol: "n", Value: float64(c.count), From: c.path + c.entry}}, Result: float64(c.count),
	}}
}

// loose returns the entries that could put one more conductor beside a segment.
func loose(by map[string][]figure.Gap, g *record.Segment) []figure.Gap {
	gaps := by[anywhere]
	if space, ok := g.Space.Get(); ok {
		gaps = append(gaps[:len(gaps):len(gaps)], by[space]...)
	}
	return gaps
}
