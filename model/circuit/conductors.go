package circuit

import (
	"slices"

	"driploop/model/figure"
)

// setConductors fills in how each conductor is fed, guarded and loaded.
func (a *analysis) setConductors() {
	live := make([]bool, len(a.net.nodes))
	for _, f := range a.feedings {
		merge(live, a.search.nodes(f.pole.node, pastNoSwitch))
	}
	grounded := figure.Open(figure.Because("it is not ungrounded"))
	harmless := unknown(figure.Because("it is not ungrounded: a fault to ground passes it by"))
	for i := range a.wires {
		b, r := &a.net.branches[i], &a.wires[i]
		r.Ungrounded = a.poles.conductor(b)
		r.AlwaysLive = figure.False()
		if !r.Ungrounded.Known || r.Ungrounded.Value {
			r.AlwaysLive = truth(live[b.a] || live[b.b])
			r.Feeds = a.feeds(i)
		}
		r.Guard = grounded
		if !r.Ungrounded.Known || r.Ungrounded.Value {
			a.setGuard(r, i)
		}
		r.Current, r.CurrentCase = a.peaks.running[i].figure("greatest current over all cases, starting and stall aside")
		r.Surge, r.SurgeCase = a.peaks.surge[i].figure("greatest current over starting and stall cases")
		if gaps := a.unstated[i]; len(gaps) > 0 {
			r.Surge, r.SurgeCase = figure.Open(moreGaps(gaps, r.Surge.Gaps)...), ""
		}
		r.WithstandA2s = withstand(b, r)
		if r.Ungrounded.Known && !r.Ungrounded.Value {
			r.setFault(harmless)
			continue
		}
		r.setFault(a.conductorFault(i))
	}
}

func (a *analysis) feeds(i int) []Feed {
	b := &a.net.branches[i]
	count := 0
	for _, f := range a.feedings {
		if fed, _ := f.reaches(b); fed {
			count++
		}
	}
	if count == 0 {
		return nil
	}
	feeds := make([]Feed, 0, count)
	for _, f := range a.feedings {
		if fed, _ := f.reaches(b); fed {
			feeds = append(feeds, f.feed(a.net, a.search, i))
		}
	}
	return feeds
}

// surgeGaps returns, by branch, the starting and stall currents that are not
// recorded of loads that draw through it.
func (a *analysis) surgeGaps() [][]figure.Gap {
	gaps := make([][]figure.Gap, len(a.net.branches))
	for _, l := range a.solver.loads {
		field := surgeField(&a.net.branches[l])
		if field == "" {
			continue
		}
		missing := figure.Missing(field)
		note := func(i int) {
			if list := gaps[i]; len(list) == 0 || list[len(list)-1] != missing {
				gaps[i] = append(list, missing)
			}
		}
		note(l)
		for _, t := range a.solver.solveAlone(l) {
			t.way.each(note)
			if t.way.source >= 0 {
				note(t.way.source)
			}
		}
	}
	for i := range gaps {
		gaps[i] = slices.Clip(gaps[i])
	}
	return gaps
}

// surgeField returns the entry that tells how much more than its running current
// a load takes for a time, "" if it is recorded or there is no such time: what
// has a motor can stall, a lamp or an electronic load takes an inrush, a heater
// takes no more than it runs on.
func surgeField(b *branch) string {
	c := b.comp
	switch c.Kind.V {
	case "heater":
		return ""
	case "motor", "pump", "blower", "refrigerator":
		if !c.Stall.Is() {
			return b.path + ".stall"
		}
		return ""
	}
	if !c.Starting.Is() && !c.Stall.Is() {
		return b.path + ".starting"
	}
	return ""
}
