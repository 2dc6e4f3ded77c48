package circuit

import "driploop/model/figure"

// A way that leaves the feed of a cranking motor, which needs no device, has its
// source connection there: from it, not from the battery, a branch is measured.

// setOwn sets what of the ways is their own: the longest such part, and whether
// all of it is enclosed in every one.
func (f *feeding) setOwn(n *network, feed *Feed, ways [][]int) {
	own := make([][]int, len(ways))
	for k, way := range ways {
		own[k] = way[f.cranking(n, way):]
	}
	longest, gaps, enclosed := longestOf(n, own)
	feed.OwnFrom, feed.OwnEnclosed = f.leaves(n, ways[longest], len(ways[longest])-len(own[longest])), enclosed
	if len(gaps) > 0 {
		feed.OwnLength = figure.Open(gaps...)
		return
	}
	feed.OwnLength = lengthFigure(n, own[longest], feed.OwnFrom, feed.EndsAtDevice)
}

// cranking counts the conductors with which a way begins that the record says
// feed a cranking motor from a battery. A way of nothing else is all its own.
func (f *feeding) cranking(n *network, way []int) int {
	if n.branches[f.pole.branch].comp.Kind.V != "battery" {
		return 0
	}
	for k, i := range way {
		if n.branches[i].cond.Duty.Or("") != "cranking" {
			return k
		}
	}
	return 0
}

// leaves is the terminal at which a way begins to be its own: that of the source,
// or where its first conductor meets the part that the one before it ends on.
func (f *feeding) leaves(n *network, way []int, begin int) string {
	if begin == 0 {
		return f.pole.name
	}
	before, first := n.branches[way[begin-1]].cond, n.branches[way[begin]].cond
	if to := first.To.Component; to == before.To.Component || to == before.From.Component {
		return first.To.String()
	}
	return first.From.String()
}
