package circuit

import (
	"strings"

	"driploop/model/figure"
	"driploop/model/quantity"
)

// wayLimit bounds the search for the longest way in a network with rings; past
// it the sum of all conductors that could be on a way stands in, which is never
// too short.
const wayLimit = 20000

// measure fills in the length from the source to the device that a conductor
// lands on, the conductors on that way, and whether they are enclosed.
func (f *feeding) measure(n *network, s *searcher, last, near int, feed *Feed) {
	if !f.loops {
		f.setWay(n, feed, [][]int{append(f.treeWay(n, near), last)})
		return
	}
	ways, whole := f.allWays(n, s, near, last)
	if !whole {
		ways = [][]int{f.everyWire(n)}
	}
	f.setWay(n, feed, ways)
}

// treeWay returns the conductors from the source to a node of the zone.
func (f *feeding) treeWay(n *network, node int) []int {
	var way []int
	for f.tree[node].branch >= 0 {
		if i := f.tree[node].branch; n.branches[i].kind == wire {
			way = append(way, i)
		}
		node = f.tree[node].node
	}
	for i, j := 0, len(way)-1; i < j; i, j = i+1, j-1 {
		way[i], way[j] = way[j], way[i]
	}
	return way
}

// allWays returns every way from the source to a node that crosses no node
// twice, and false if there are too many to list.
func (f *feeding) allWays(n *network, s *searcher, goal, last int) ([][]int, bool) {
	var ways [][]int
	var way []int
	steps := 0
	on := map[int]bool{n.branches[last].other(goal): true}
	w := aheadOfAny
	w.without = last
	var follow func(node, memory int) bool
	follow = func(node, memory int) bool {
		if steps++; steps > wayLimit {
			return false
		}
		if node == goal {
			steps += len(way)
			ways = append(ways, append(append([]int(nil), way...), last))
			return true
		}
		on[node] = true
		defer delete(on, node)
		for _, i := range n.at[node] {
			next := n.branches[i].other(node)
			after, ok := s.pass(&w, memory, i)
			if !ok || on[next] || !f.zone[next] {
				continue
			}
			if n.branches[i].kind == wire {
				way = append(way, i)
			}
			whole := follow(next, after)
			if n.branches[i].kind == wire {
				way = way[:len(way)-1]
			}
			if !whole {
				return false
			}
		}
		return true
	}
	whole := follow(f.pole.node, 0)
	return ways, whole && len(ways) > 0
}

func (f *feeding) everyWire(n *network) []int {
	var all []int
	for i := range n.branches {
		if b := &n.branches[i]; b.kind == wire && (f.zone[b.a] || f.zone[b.b]) {
			all = append(all, i)
		}
	}
	return all
}

// setWay sets the longest of the ways. If any has a conductor without length,
// the longest is not known; if any is not enclosed, the feed is not.
func (f *feeding) setWay(n *network, feed *Feed, ways [][]int) {
	longest, gaps, enclosed := longestOf(n, ways)
	for _, i := range ways[longest] {
		feed.Via = append(feed.Via, n.branches[i].id)
	}
	feed.Enclosed = enclosed
	f.setOwn(n, feed, ways)
	if len(gaps) > 0 {
		feed.Length = figure.Open(gaps...)
		return
	}
	feed.Length = lengthFigure(n, ways[longest], feed.Source, feed.EndsAtDevice)
}

// longestOf returns the place of the longest of some ways, which lengths are missing
// to know it, and whether all of them are enclosed.
func longestOf(n *network, ways [][]int) (longest int, gaps []figure.Gap, enclosed figure.Truth) {
	best := -1.0
	enclosed = figure.True()
	for k, way := range ways {
		sum := 0.0
		for _, i := range way {
			b := &n.branches[i]
			length, ok := sane(&b.cond.Length)
			if !ok {
				gaps = append(gaps, figure.Missing(b.path+".length"))
			}
			sum += length
			enclosed = both(enclosed, conductorEnclosed(b))
		}
		if sum > best {
			best, longest = sum, k
		}
	}
	return longest, uniqueGaps(gaps), enclosed
}

// lengthFigure returns the summed length of conductors.
func lengthFigure(n *network, way []int, from, to string) figure.Figure {
	sum := 0.0
	var gaps []figure.Gap
	for _, i := range way {
		b := &n.branches[i]
		length, ok := sane(&b.cond.Length)
		if !ok {
			gaps = append(gaps, figure.Missing(b.path+".length"))
			continue
		}
		sum += length
	}
	if len(gaps) > 0 {
		return figure.Open(gaps...)
	}
	return figure.Worked(sum, "mm", func() []figure.Step { return lengthSteps(n, way, from, to) })
}

func lengthSteps(n *network, way []int, from, to string) []figure.Step {
	var sum float64
	var inputs []figure.Input
	var symbols []string
	for _, i := range way {
		b := &n.branches[i]
		length, _ := sane(&b.cond.Length)
		sum += length
		symbols = append(symbols, "L("+b.id+")")
		inputs = append(inputs, figure.Input{Symbol: "L(" + b.id + ")", Value: length, Unit: "mm", From: b.path + ".length"})
	}
	return []figure.Step{{
		Formula: "length from " + from + " to " + to + ": L = " + strings.Join(symbols, " + "), Source: "sum of recorded lengths",
		Inputs: inputs, Result: quantity.Round(sum), Unit: "mm",
	}}
}

// both returns whether both hold: false if one is known not to.
func both(a, b figure.Truth) figure.Truth {
	switch {
	case a.Known && !a.Value:
		return a
	case b.Known && !b.Value:
		return b
	case a.Known && b.Known:
		return a
	}
	return figure.OpenTruth(uniqueGaps(append(append([]figure.Gap(nil), a.Gaps...), b.Gaps...))...)
}

// routeSlack is how far the segments of a route may fall short of the
// conductor's length and still count as whole: 1 %, a tape measure's doubt.
const routeSlack = 0.01

// conductorEnclosed tells whether a conductor runs in a sheath, conduit,
// trunking or enclosure from end to end.
func conductorEnclosed(b *branch) figure.Truth {
	c := b.cond
	if c.InHousing.Or(false) {
		return figure.True()
	}
	var gaps []figure.Gap
	var sum float64
	for _, g := range c.Route {
		if g == nil {
			continue
		}
		length, hasLength := sane(&g.Length)
		sum += length
		switch in, ok := g.In.Get(); {
		case !ok:
			gaps = append(gaps, figure.Missing(g.Path+".in"))
		case in != "sheath" && in != "conduit" && in != "trunking" && in != "enclosure":
			return figure.False()
		case !hasLength:
			gaps = append(gaps, figure.Missing(g.Path+".length"))
		}
	}
	length, hasLength := sane(&c.Length)
	switch {
	case len(c.Route) == 0:
		gaps = append(gaps, figure.Missing(c.Path+".route"))
	case !hasLength:
		gaps = append(gaps, figure.Missing(c.Path+".length"))
	case len(gaps) == 0 && sum < length*(1-routeSlack):
		gaps = append(gaps, figure.Gap{Field: c.Path + ".route", Why: "its segments do not add up to the conductor's length"})
	}
	if len(gaps) > 0 {
		return figure.OpenTruth(gaps...)
	}
	return figure.True()
}
