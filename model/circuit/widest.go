package circuit

import (
	"container/heap"
	"math"
	"slices"

	"driploop/model/figure"
)

// bottleneck is the least rating on a way from a source, and the device that
// sets it. Of several ways the one with the greatest counts.
type bottleneck struct {
	most    float64 // rating with every unrecorded one taken as endless
	least   float64 // the same with every unrecorded one taken as zero
	by      int     // device behind most, -1 for none
	unknown []int   // devices without a rating on the way of most
}

// widest returns the bottleneck from a node to every node that it reaches; it
// is zero where nothing leads.
func widest(n *network, s *searcher, start int) []bottleneck {
	out := make([]bottleneck, len(n.nodes))
	for i := range out {
		out[i].by = -1
	}
	spreadWidth(n, s, start, math.Inf(1), func(node int, at wide) {
		if at.amps > out[node].most {
			out[node].most, out[node].by, out[node].unknown = at.amps, at.by, at.unknown()
		}
	})
	spreadWidth(n, s, start, 0, func(node int, at wide) {
		out[node].least = max(out[node].least, at.amps)
	})
	return out
}

// wide is a node reached, with the command it depends on and its bottleneck.
type wide struct {
	remembered
	amps float64
	by   int
	open *passed
}

// passed is a list of devices on a way, last first.
type passed struct {
	device int
	before *passed
}

func (w wide) unknown() []int {
	var devices []int
	for t := w.open; t != nil; t = t.before {
		devices = append(devices, t.device)
	}
	slices.Sort(devices)
	return devices
}

// spreadWidth visits places in falling order of bottleneck; a device without a
// rating counts as the given one.
func spreadWidth(n *network, s *searcher, start int, unrated float64, visit func(node int, at wide)) {
	done := make(map[remembered]bool, len(n.nodes))
	queue := wideQueue{{remembered: remembered{node: start}, amps: math.Inf(1), by: -1}}
	for len(queue) > 0 {
		at := heap.Pop(&queue).(wide)
		if done[at.remembered] || done[remembered{node: at.node}] {
			continue
		}
		done[at.remembered] = true
		visit(at.node, at)
		for _, i := range n.at[at.node] {
			after, ok := s.pass(&everywhere, at.memory, i)
			if !ok {
				continue
			}
			next := wide{remembered{n.branches[i].other(at.node), after}, at.amps, at.by, at.open}
			if done[next.remembered] {
				continue
			}
			if b := &n.branches[i]; b.kind == device {
				r := rating(b)
				if math.IsInf(r, 1) {
					r = unrated
					next.open = &passed{i, at.open}
				}
				if r < next.amps {
					next.amps, next.by = r, i
				}
			}
			heap.Push(&queue, next)
		}
	}
}

// wideQueue is a heap with the widest place first; ties go to the lower place.
type wideQueue []wide

func (q wideQueue) Len() int { return len(q) }
func (q wideQueue) Less(i, j int) bool {
	if q[i].amps != q[j].amps {
		return q[i].amps > q[j].amps
	}
	if q[i].node != q[j].node {
		return q[i].node < q[j].node
	}
	return q[i].memory < q[j].memory
}
func (q wideQueue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *wideQueue) Push(x any)   { *q = append(*q, x.(wide)) }
func (q *wideQueue) Pop() any {
	old := *q
	last := old[len(old)-1]
	*q = old[:len(old)-1]
	return last
}

// guard returns the rating that limits what one conductor can carry for long,
// over all its feeds, and the devices behind it.
func guard(n *network, feedings []*feeding, i int, feeds []Feed) (figure.Figure, []string) {
	b := &n.branches[i]
	var worst float64
	var by []string
	var gaps []figure.Gap
	var inputs []figure.Input
	k := 0
	for _, f := range feedings {
		if fed, _ := f.reaches(b); !fed {
			continue
		}
		feed := feeds[k]
		k++
		amps, devices, missing := f.limit(n, b, feed)
		gaps = append(gaps, missing...)
		if len(missing) > 0 {
			continue
		}
		inputs = append(inputs, figure.Input{Symbol: "limit from " + feed.Source, Value: amps, Unit: "A", From: ratingPaths(n, devices)})
		if amps > worst {
			worst, by = amps, devices
		}
	}
	switch {
	case len(gaps) > 0:
		return figure.Open(uniqueGaps(gaps)...), nil
	case k == 0:
		return figure.Open(figure.Because("no source reaches it in the record")), nil
	}
	return figure.Of(worst, "A", figure.Step{
		Formula: "guard: of each feed the least rating in series (ahead of the first device the sum of the devices fed), of the feeds the greatest",
		Source:  "Kirchhoff's current law", Inputs: inputs, Result: worst, Unit: "A",
	}), by
}

// limit returns what one feed lets a conductor carry, and the devices behind it.
func (f *feeding) limit(n *network, b *branch, feed Feed) (float64, []string, []figure.Gap) {
	if feed.Ahead {
		return f.limitAhead(n, b, feed)
	}
	w := f.width[b.a]
	if f.width[b.b].most > w.most {
		w = f.width[b.b]
	}
	least := max(f.width[b.a].least, f.width[b.b].least)
	if least == w.most && w.by >= 0 {
		return w.most, []string{n.branches[w.by].id}, nil
	}
	var gaps []figure.Gap
	for _, d := range w.unknown {
		gaps = append(gaps, figure.Missing(n.branches[d].path+".rating"))
	}
	if len(gaps) == 0 {
		gaps = append(gaps, figure.Because("the ratings between "+feed.Source+" and conductor "+b.id+" leave its limit open"))
	}
	return 0, nil, gaps
}

func (f *feeding) limitAhead(n *network, b *branch, feed Feed) (float64, []string, []figure.Gap) {
	if feed.Bare || len(feed.NextDevices) == 0 {
		return 0, nil, []figure.Gap{figure.Because("no device limits what " + feed.Source + " can drive through conductor " + b.id)}
	}
	var sum float64
	var gaps []figure.Gap
	for _, id := range feed.NextDevices {
		c := n.comps[id]
		v, ok := sane(c.Rating)
		if !ok {
			gaps = append(gaps, figure.Missing(c.Path+".rating"))
		}
		sum += v
	}
	return sum, feed.NextDevices, gaps
}

func ratingPaths(n *network, devices []string) string {
	var out string
	for i, id := range devices {
		if i > 0 {
			out += ", "
		}
		out += n.comps[id].Path + ".rating"
	}
	return out
}

// uniqueGaps drops repeated gaps and keeps their order.
func uniqueGaps(gaps []figure.Gap) []figure.Gap {
	if len(gaps) < 2 {
		return gaps
	}
	out := gaps[:0:0]
	if len(gaps) <= 16 {
		for _, g := range gaps {
			if !slices.Contains(out, g) {
				out = append(out, g)
			}
		}
		return out
	}
	seen := make(map[figure.Gap]bool, len(gaps))
	for _, g := range gaps {
		if !seen[g] {
			seen[g] = true
			out = append(out, g)
		}
	}
	return out
}
