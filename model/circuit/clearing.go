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
	c := never()
	if len(p.rings) == 0 {
		for _, h := range a.devices(p) {
			c = c.or(a.releaseOf(h.branch).cut(amps * math.Abs(h.amps)))
		}
		return c
	}
	rings := p.rings
	for k := 0; k < len(p.way); k++ {
		if len(rings) > 0 && rings[0].start == k {
			if rings[0].device {
				c = c.or(a.ringClearing(rings[0].crossing, amps))
			}
			k = rings[0].end - 1
			rings = rings[1:]
			continue
		}
		switch h := p.way[k]; a.net.branches[h.branch].kind {
		case source:
			c = never() // what lies before is the way back
		case device:
			c = c.or(a.releaseOf(h.branch).cut(amps * math.Abs(h.amps)))
		}
	}
	return c
}

// ringClearing returns how the devices inside a part with rings cut off what goes
// through it: on every way from where the current enters, or from a battery.
func (a *analysis) ringClearing(r *crossing, amps float64) cleared {
	if r.ordered == nil {
		r.ordered = newDag(directed(a.net, r.hops, 1))
		r.ordered.arrange()
	}
	known := make(map[int]cleared, len(r.hops))
	for _, k := range r.ordered.order {
		e := r.ordered.edges[k]
		c, ok := known[e.from]
		if !ok || a.net.branches[e.branch].kind == source {
			c = never()
		}
		if a.net.branches[e.branch].kind == device {
			c = c.or(a.releaseOf(e.branch).cut(amps * e.amps))
		}
		if before, fed := known[e.to]; fed {
			c = c.and(before)
		}
		known[e.to] = c
	}
	if c, ok := known[r.to]; ok {
		return c
	}
	return never()
}

// devices returns the devices between the batteries and a fault.
func (a *analysis) devices(p *prospect) []hop {
	if p.devices != nil {
		return p.devices
	}
	count := 0
	for _, h := range p.way {
		if a.net.branches[h.branch].kind == device {
			count++
		}
	}
	out := a.net.hops.list(count)
	for _, h := range p.way {
		switch a.net.branches[h.branch].kind {
		case source:
			if len(p.rings) == 0 {
				out = out[:0] // what lies before is the way back
			}
		case device:
			out = append(out, h)
		}
	}
	p.devices = out
	return out
}
