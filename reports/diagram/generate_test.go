package diagram_test

import (
	"fmt"
	"strings"
)

// yard writes records to draw: how many of what is up to whoever draws numbers.
type yard struct {
	pick       func(label string, n int) int // 0 to n-1
	components []string
	conductors []string
	kinds      map[string]string
	spaces     []string
	passes     map[string][]string // conductors by "from>to" of spaces
	at         map[string]string
	wires      int
}

func newYard(pick func(string, int) int) *yard {
	return &yard{
		pick: pick, kinds: map[string]string{}, passes: map[string][]string{}, at: map[string]string{},
		spaces: []string{"battery-locker", "engine-bay", "saloon", "helm", "bow-locker", "foredeck", "aft-cabin"},
	}
}

// add writes a component into a space and returns its id.
func (y *yard) add(id, kind, space, rest string) string {
	y.components = append(y.components, fmt.Sprintf("  %s: {kind: %s, space: %s%s}", id, kind, space, rest))
	y.kinds[id], y.at[id] = kind, space
	return id
}

func (y *yard) rest(of string, most int) string {
	return fmt.Sprintf(", %s: %d A", of, 1+y.pick("amps", most))
}

// wire writes a conductor; now and then something of it is not recorded.
func (y *yard) wire(from, to, role string) {
	y.wires++
	id := fmt.Sprintf("W%d", y.wires)
	sizes := []string{"16 AWG", "10 AWG", "2/0 AWG", "2.5 mm2"}
	colours := map[string]string{"positive": "red", "negative": "black", "bonding": "green/yellow", "control": "orange"}
	line := fmt.Sprintf("  %s: {from: %s, to: %s, role: %s", id, from, to, role)
	if y.pick("size", 12) > 0 {
		line += ", size: " + sizes[y.pick("gauge", len(sizes))]
	}
	if y.pick("length", 12) > 0 {
		line += fmt.Sprintf(", length: %d mm", 100+50*y.pick("mm", 150))
	}
	if y.pick("colour", 12) > 0 {
		line += ", colour: " + colours[role]
	}
	a, b := y.at[strings.Split(from, ".")[0]], y.at[strings.Split(to, ".")[0]]
	if a != b {
		line += fmt.Sprintf(", route: [{space: %s}, {space: %s}]", a, b)
		y.passes[a+">"+b] = append(y.passes[a+">"+b], id)
	}
	y.conductors = append(y.conductors, line+"}")
}

// circuit adds a device and a load to a bus, its return to another.
func (y *yard) circuit(i int, bus, returns, space string) {
	loads := []string{"lamp", "pump", "electronics", "motor", "blower", "heater", "refrigerator", "inverter"}
	load := loads[y.pick("load", len(loads))]
	device := y.add(fmt.Sprintf("breaker-%d", i), []string{"breaker", "fuse"}[y.pick("device", 2)], y.at[bus], y.rest("rating", 60))
	id := y.add(fmt.Sprintf("%s-%d", load, i), load, space, y.rest("current", 40))
	y.wire(bus+fmt.Sprintf(".s%d", i), device+".line", "positive")
	y.wire(device+".load", id+".pos", "positive")
	y.wire(id+".neg", returns+fmt.Sprintf(".s%d", i), "negative")
}

// system adds batteries, a charger, a main bus, panels, and circuits on them.
func (y *yard) system(panels, circuits int) {
	y.bank("house", "pos-bus", "neg-bus")
	y.add("charger", "charger", "battery-locker", ", output: 30 A")
	y.add("charger-fuse", "fuse", "battery-locker", ", rating: 40 A")
	y.wire("charger.pos", "charger-fuse.load", "positive")
	y.wire("charger-fuse.line", "pos-bus.c", "positive")
	y.wire("charger.neg", "neg-bus.c", "negative")
	for p := range panels {
		space := y.spaces[1+y.pick("panel", len(y.spaces)-1)]
		bus, feeder := fmt.Sprintf("panel-%d", p), fmt.Sprintf("feeder-%d", p)
		returns := fmt.Sprintf("panel-neg-%d", p)
		y.add(feeder, "fuse", "battery-locker", ", rating: 100 A")
		y.add(bus, "busbar", space, ", rating: 150 A")
		y.add(returns, "busbar", space, ", rating: 150 A")
		y.wire(fmt.Sprintf("pos-bus.p%d", p), feeder+".line", "positive")
		y.wire(feeder+".load", bus+".in", "positive")
		y.wire(returns+".out", fmt.Sprintf("neg-bus.p%d", p), "negative")
		for i := range circuits {
			y.circuit(p*circuits+i, bus, returns, y.spaces[y.pick("space", len(y.spaces))])
		}
	}
}

// bank adds a battery with its fuse, isolator and buses.
func (y *yard) bank(name, pos, neg string) {
	y.add(name, "battery", "battery-locker", ", nominal: 12 V, capacity: 220 Ah")
	y.add(name+"-fuse", "fuse", "battery-locker", ", rating: 250 A")
	y.add(name+"-isolator", "switch", "battery-locker", ", continuous: 300 A")
	y.add(pos, "busbar", "battery-locker", ", rating: 300 A")
	y.add(neg, "busbar", "battery-locker", ", rating: 300 A")
	y.wire(name+".pos", name+"-fuse.line", "positive")
	y.wire(name+"-fuse.load", name+"-isolator.in", "positive")
	y.wire(name+"-isolator.out", pos+".a", "positive")
	y.wire(name+".neg", neg+".a", "negative")
}

// tangle adds conductors between any terminals: rings, parallel pairs, feeds
// from both ends, ends on one component.
func (y *yard) tangle(n int) {
	var ids []string
	for _, line := range y.components {
		id, _, _ := strings.Cut(strings.TrimSpace(line), ":")
		ids = append(ids, id)
	}
	for range n {
		a, b := ids[y.pick("from", len(ids))], ids[y.pick("to", len(ids))]
		role := []string{"positive", "negative", "control", "bonding"}[y.pick("role", 4)]
		from, to := y.terminal(a), y.terminal(b)
		if a == b && (from == to || y.kinds[a] == "busbar" || y.kinds[a] == "ground") {
			continue
		}
		y.wire(a+"."+from, b+"."+to, role)
	}
}

// terminal is one that a component has.
func (y *yard) terminal(id string) string {
	switch y.kinds[id] {
	case "busbar", "ground":
		return fmt.Sprintf("t%d", y.pick("stud", 20))
	case "fuse", "breaker":
		return []string{"line", "load"}[y.pick("side", 2)]
	case "switch", "connector":
		return []string{"in", "out"}[y.pick("side", 2)]
	}
	return []string{"pos", "neg"}[y.pick("pole", 2)]
}

// record is the text of all that was added.
func (y *yard) record() string {
	var b strings.Builder
	b.WriteString("driploop: 1\njob: {number: T-1, title: Generated}\nvessel: {name: Teasel, system: 12 V}\nspaces:\n")
	for _, s := range y.spaces {
		fmt.Fprintf(&b, "  %s: {kind: locker}\n", s)
	}
	section := func(name string, lines []string) {
		if len(lines) > 0 {
			b.WriteString(name + ":\n" + strings.Join(lines, "\n") + "\n")
		}
	}
	section("components", y.components)
	section("conductors", y.conductors)
	section("penetrations", y.penetrations())
	return b.String()
}

// penetrations writes one or two for each pair of spaces that conductors cross.
func (y *yard) penetrations() []string {
	var lines []string
	for _, a := range y.spaces {
		for _, b := range y.spaces {
			if through := y.passes[a+">"+b]; len(through) > 0 {
				for range 1 + y.pick("holes", 2) {
					lines = append(lines, fmt.Sprintf("  bulkhead-%d: {from: %s, to: %s, passes: [%s]}", len(lines), a, b, strings.Join(through, ", ")))
				}
			}
		}
	}
	return lines
}
