package circuit

import (
	"driploop/model/figure"
)

// setConductors fills in how each conductor is fed, guarded and loaded.
func (a *analysis) setConductors() {
	live := make([]bool, len(a.net.nodes))
	for _, f := range a.feedings {
		merge(live, a.search.nodes(f.pole.node, pastNoSwitch))
	}
	stall := a.stallGaps()
	for i := range a.net.branches {
		b := &a.net.branches[i]
		if b.kind != wire {
			continue
		}
		r := a.result.Conductors[b.id]
		r.Ungrounded = a.poles.conductor(b)
		r.AlwaysLive = figure.False()
		if !r.Ungrounded.Known || r.Ungrounded.Value {
			r.AlwaysLive = truth(live[b.a] || live[b.b])
			r.Feeds = a.feeds(i)
		}
		r.Guard, r.GuardBy = figure.Open(figure.Because("it is not ungrounded")), nil
		if !r.Ungrounded.Known || r.Ungrounded.Value {
			r.Guard, r.GuardBy = guard(a.net, a.feedings, i, r.Feeds)
		}
		r.Current, r.CurrentCase = a.peaks.running[i].figure("greatest current over all cases, starting and stall aside")
		r.Surge, r.SurgeCase = a.peaks.surge[i].figure("greatest current over starting and stall cases")
		if gaps := stall[i]; len(gaps) > 0 {
			r.Surge, r.SurgeCase = figure.Open(uniqueGaps(append(gaps, r.Surge.Gaps...))...), ""
		}
	}
}

func (a *analysis) feeds(i int) []Feed {
	var feeds []Feed
	for _, f := range a.feedings {
		if fed, _ := f.reaches(&a.net.branches[i]); fed {
			feeds = append(feeds, f.feed(a.net, a.search, i))
		}
	}
	return feeds
}

// stallGaps returns, by branch, the motors without a recorded stall current that
// draw through it.
func (a *analysis) stallGaps() map[int][]figure.Gap {
	gaps := map[int][]figure.Gap{}
	for _, l := range a.solver.loads {
		b := &a.net.branches[l]
		if b.comp.Kind.V != "motor" || b.comp.Stall.Is() {
			continue
		}
		for _, t := range a.solver.solveAlone(l) {
			for _, i := range t.carrying() {
				gaps[i] = append(gaps[i], figure.Missing(b.path+".stall"))
			}
		}
	}
	return gaps
}
