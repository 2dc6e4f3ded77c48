package circuit

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// tangle draws a small network without commands, wired at random: the positive
// side of one or two batteries with fuses, switches, busbars, a charger and lamps
// between any terminals.
func tangle(t *rapid.T) string {
	var parts, wires strings.Builder
	terminals := []string{}
	add := func(kind, keys string, count int, ends ...string) {
		for i := range count {
			id := fmt.Sprintf("%s%d", kind, i)
			fmt.Fprintf(&parts, "%s: kind: %s%s\n", id, kind, keys)
			for _, e := range ends {
				terminals = append(terminals, id+"."+e)
			}
		}
	}
	add("battery", ", nominal: 12 V", rapid.IntRange(1, 2).Draw(t, "batteries"), "pos")
	add("busbar", "", rapid.IntRange(0, 2).Draw(t, "busbars"), "s")
	add("switch", "", rapid.IntRange(0, 2).Draw(t, "switches"), "in", "out")
	add("lamp", ", current: 1 A", rapid.IntRange(0, 2).Draw(t, "lamps"), "pos")
	add("charger", ", output: 5 A, voltage: 14 V", rapid.IntRange(0, 1).Draw(t, "chargers"), "pos")
	for i := range rapid.IntRange(1, 4).Draw(t, "fuses") {
		rating := ""
		if rapid.IntRange(0, 3).Draw(t, "rated") > 0 {
			rating = fmt.Sprintf(", rating: %d A", rapid.SampledFrom([]int{10, 20, 30, 40}).Draw(t, "rating"))
		}
		fmt.Fprintf(&parts, "fuse%d: kind: fuse%s\n", i, rating)
		terminals = append(terminals, fmt.Sprintf("fuse%d.line", i), fmt.Sprintf("fuse%d.load", i))
	}
	wires.WriteString("first: battery0.pos > fuse0.line, 10 AWG, 150 mm\n")
	for i := range rapid.IntRange(1, 9).Draw(t, "wires") {
		a, b := rapid.SampledFrom(terminals).Draw(t, "from"), rapid.SampledFrom(terminals).Draw(t, "to")
		if a == b || strings.HasPrefix(a, "busbar") && a[:7] == b[:min(7, len(b))] {
			continue
		}
		fmt.Fprintf(&wires, "w%d: %s > %s, 10 AWG, %d mm\n", i, a, b, rapid.IntRange(100, 900).Draw(t, "mm"))
	}
	return sketch(boat, parts.String(), wires.String())
}

// way is a simple way from a source: nodes and branches in turn.
type simpleWay struct {
	nodes, branches []int
}

// ways lists every simple way from a node.
func ways(n *network, start int, visit func(w simpleWay)) {
	on := map[int]bool{}
	var w simpleWay
	var follow func(node int)
	follow = func(node int) {
		on[node] = true
		w.nodes = append(w.nodes, node)
		visit(w)
		for _, i := range n.at[node] {
			b := &n.branches[i]
			next := b.other(node)
			if on[next] || b.kind != wire && b.kind != device && b.kind != contact {
				continue
			}
			w.branches = append(w.branches, i)
			follow(next)
			w.branches = w.branches[:len(w.branches)-1]
		}
		w.nodes = w.nodes[:len(w.nodes)-1]
		delete(on, node)
	}
	follow(start)
}

// brute is what the list of all ways says of one conductor and source.
type brute struct {
	fed, ahead, bare bool
	next             map[string]bool
	longest          map[string]float64 // to each device that the conductor lands on
}

func bruteForce(n *network, pole *pole, c int) brute {
	out := brute{next: map[string]bool{}, longest: map[string]float64{}}
	ways(n, pole.node, func(w simpleWay) {
		at := slices.Index(w.branches, c)
		if at < 0 {
			return
		}
		out.fed = true
		length := 0.0
		for k, i := range w.branches {
			x := &n.branches[i]
			if k <= at && x.kind == device {
				return // behind a device on this way
			}
			if k > at && x.kind == device {
				if k == len(w.branches)-1 {
					out.next[x.id] = true
				}
				return
			}
			if x.kind == wire && k <= at {
				length += x.cond.Length.V.Base
			}
		}
		out.ahead = true
		end := w.nodes[len(w.nodes)-1]
		for _, j := range n.at[end] {
			x := &n.branches[j]
			switch {
			case x.kind == load, x.kind == source && j != pole.branch:
				out.bare = true
			case x.kind == device:
				out.next[x.id] = true
				if at == len(w.branches)-1 {
					out.longest[x.id] = max(out.longest[x.id], length)
				}
			}
		}
		if len(n.at[end]) == 1 {
			out.bare = true
		}
	})
	return out
}

// TestFeedsAgreeWithAllWays compares feeds with a list of every simple way from
// the source over the conductor: whether it is ahead of any device, where it leads
// on to, and the longest way to a device that it lands on.
func TestFeedsAgreeWithAllWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := tangle(t)
		n := build(read(t, text))
		s := newSearcher(n)
		p := findPoles(n, s)
		for _, pole := range p.all {
			if !pole.positive || n.branches[pole.branch].class != batteryClass {
				continue
			}
			f := findFeeding(n, s, pole)
			f.upper = func(int) *feeding { return nil }
			for i := range n.branches {
				if n.branches[i].kind != wire || n.branches[i].a == n.branches[i].b {
					continue
				}
				want := bruteForce(n, pole, i)
				fed, _ := f.reaches(&n.branches[i])
				require.Equal(t, want.fed, fed, "%s from %s\n%s", n.branches[i].id, pole.name, text)
				if !fed {
					continue
				}
				got := f.feed(n, s, i)
				where := fmt.Sprintf("%s from %s\n%s", n.branches[i].id, pole.name, text)
				require.Equal(t, want.ahead, got.Ahead, where)
				if !got.Ahead {
					require.NotEmpty(t, got.Device, where)
					continue
				}
				require.Equal(t, want.bare, got.Bare, where)
				var next []string
				for id := range want.next {
					next = append(next, id)
				}
				require.ElementsMatch(t, next, got.NextDevices, where)
				require.Equal(t, len(want.longest) > 0, got.EndsAtDevice != "", where)
				if got.EndsAtDevice != "" {
					require.True(t, got.Length.Known)
					require.InDelta(t, slices.Max(slices.Collect(maps.Values(want.longest))), got.Length.Value, 1e-9, where)
				}
			}
		}
	})
}

// leastCut returns the least sum of ratings of devices that cuts a node off from
// every source, by trying every set of devices; +Inf if none does.
func leastCut(n *network, sources []int, goal, without int) float64 {
	var devices []int
	for i := range n.branches {
		if n.branches[i].kind == device {
			devices = append(devices, i)
		}
	}
	best := math.Inf(1)
	for set := range 1 << len(devices) {
		sum := 0.0
		gone := map[int]bool{without: true}
		for k, i := range devices {
			if set&(1<<k) != 0 {
				sum += rating(&n.branches[i])
				gone[i] = true
			}
		}
		if sum < best && !joined(n, sources, goal, gone) {
			best = sum
		}
	}
	return best
}

func joined(n *network, sources []int, goal int, gone map[int]bool) bool {
	seen := map[int]bool{goal: true}
	for queue := []int{goal}; len(queue) > 0; queue = queue[1:] {
		if slices.Contains(sources, queue[0]) {
			return true
		}
		for _, i := range n.at[queue[0]] {
			b := &n.branches[i]
			next := b.other(queue[0])
			if !gone[i] && !seen[next] && (b.kind == wire || b.kind == device || b.kind == contact) {
				seen[next] = true
				queue = append(queue, next)
			}
		}
	}
	return false
}

// TestGuardAgreesWithEveryCut compares what devices let pass towards both ends of
// each conductor with the least of all sets of devices that cut it off.
func TestGuardAgreesWithEveryCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := tangle(t)
		a := prepare(read(t, text))
		var sources []int
		for _, f := range a.feedings {
			sources = append(sources, f.pole.node)
		}
		limits := a.tolerances()
		require.Len(t, limits, 1)
		for i := range a.net.branches {
			b := &a.net.branches[i]
			if b.kind != wire || b.a == b.b {
				continue
			}
			for _, near := range []int{b.a, b.b} {
				want := leastCut(a.net, sources, near, i)
				got := limits[0].high.towards(i, near)
				require.Equal(t, want, got, "%s from %s\n%s", b.id, a.net.nodes[near].name, text)
				if math.IsInf(want, 1) {
					continue
				}
				sum := 0.0
				gone := map[int]bool{i: true}
				for _, d := range limits[0].high.cut(i, near) {
					sum += rating(&a.net.branches[d])
					gone[d] = true
				}
				require.Equal(t, want, sum, "%s\n%s", b.id, text)
				require.False(t, joined(a.net, sources, near, gone), "%s\n%s", b.id, text)
			}
		}
	})
}
