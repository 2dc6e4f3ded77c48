package circuit

import "math"

// cleared is what the devices make of a fault: the least and the greatest time in
// which they cut it off, and the least and the greatest energy let through.
type cleared struct{ soonest, latest, least, most bound }

func never() cleared {
	inf := sureOf(math.Inf(1))
	return cleared{inf, inf, inf, inf}
}

// or returns the fault cut off by whichever of two opens first.
func (c cleared) or(o cleared) cleared {
	return cleared{c.soonest.least(o.soonest), c.latest.least(o.latest), c.least.least(o.least), c.most.least(o.most)}
}

// and returns the fault fed from two sides: cut off when both are, the energies
// of currents that add up adding as their roots.
func (c cleared) and(o cleared) cleared {
	sum := func(a, b float64) float64 { s := math.Sqrt(a) + math.Sqrt(b); return s * s }
	return cleared{
		c.soonest.greatest(o.soonest), c.latest.greatest(o.latest),
		bound{sum(c.least.worst, o.least.worst), sum(c.least.best, o.least.best)},
		bound{sum(c.most.worst, o.most.worst), sum(c.most.best, o.most.best)},
	}
}

// clearing returns how the devices between the batteries and a fault cut it off
// at a current. What the first device to open does to the current in the others
// is left aside: of several ways to the fault each is cut off by its own.
func (a *analysis) clearing(p *prospect, amps float64) cleared {
	if p.tree {
		c := never()
		for k := len(p.way) - 1; k >= 0; k-- {
			h := p.way[k]
			switch a.net.branches[h.branch].kind {
			case source:
				return c
			case device:
				c = c.or(a.releaseOf(h.branch).cut(amps * math.Abs(h.amps)))
			}
		}
		return c
	}
	d := newDag(a.net, p.way, 1)
	known := map[int]cleared{}
	var at func(node int) cleared
	at = func(node int) cleared {
		if c, ok := known[node]; ok {
			return c
		}
		known[node] = never() // a circle left by rounding ends here
		c, first := never(), true
		for _, k := range d.in[node] {
			e := d.edges[k]
			way := never()
			if a.net.branches[e.branch].kind != source {
				way = at(e.from)
			}
			if a.net.branches[e.branch].kind == device {
				way = way.or(a.releaseOf(e.branch).cut(amps * e.amps))
			}
			if first {
				c, first = way, false
			} else {
				c = c.and(way)
			}
		}
		known[node] = c
		return c
	}
	return at(p.to)
}

// devices returns the devices between the batteries and a fault.
func (p *prospect) devices(n *network) []hop {
	var out []hop
	for k := len(p.way) - 1; k >= 0; k-- {
		switch h := p.way[k]; n.branches[h.branch].kind {
		case source:
			if p.tree {
				return out
			}
		case device:
			out = append(out, h)
		}
	}
	return out
}
