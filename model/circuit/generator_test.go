package circuit

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// yard draws invented networks of any size as records. Each has a backbone of
// positive and of negative busbars (a tree, with ties that make rings), sources
// between the first of each, and loads of every kind at random places.
type yard struct {
	t          *rapid.T
	components strings.Builder
	conductors strings.Builder
	n          int
	loads      []string
	chargers   int
	resistive  bool // only resistances as loads, and conductors of a fixed temperature
	powered    bool // a load of constant power
	positive   []string
	negative   []string
}

func (y *yard) pick(label string, least, most int) int {
	return rapid.IntRange(least, most).Draw(y.t, label)
}

func (y *yard) chance(label string, oneIn int) bool { return y.pick(label, 1, oneIn) == 1 }

func (y *yard) component(kind, keys string) string {
	y.n++
	id := fmt.Sprintf("%s-%d", kind, y.n)
	fmt.Fprintf(&y.components, "%s: kind: %s%s\n", id, kind, keys)
	return id
}

func (y *yard) wire(from, to, role string) {
	y.n++
	sizes := []string{"10 mm2", "50 mm2", "16 AWG", "12 AWG", "8 AWG", "4 AWG", "2/0 AWG"}
	if y.resistive {
		sizes = sizes[:2] // Table 5 has no metric sizes: they count as at their rating
	}
	size := rapid.SampledFrom(sizes).Draw(y.t, "size")
	fmt.Fprintf(&y.conductors, "w%d: %s > %s, %s, %d mm, %s\n", y.n, from, to, size, y.pick("length", 100, 6000), role)
}

// stud returns a terminal of a busbar, each used once or shared: they are one
// node either way.
func (y *yard) stud(bus string) string { return fmt.Sprintf("%s.s%d", bus, y.pick("stud", 1, 3)) }

// through runs a way from one terminal to another through up to two parts.
func (y *yard) through(from, to string) {
	for range y.pick("parts", 0, 2) {
		ohms := ""
		if y.chance("ohms", 2) {
			ohms = fmt.Sprintf(", resistance: %d uohm", y.pick("uohm", 50, 5000))
		}
		var id, in, out string
		switch y.pick("part", 1, 4) {
		case 1:
			id, in, out = y.component("fuse", ", rating: 100 A, curve: bolt-in"+ohms), "line", "load"
		case 2:
			id, in, out = y.component("breaker", ", rating: 60 A, curve: thermal"+ohms), "line", "load"
		case 3:
			id, in, out = y.component("switch", ohms), "in", "out"
		default:
			id, in, out = y.component("connector", ohms), "in", "out"
		}
		y.wire(from, id+"."+in, "positive")
		from = id + "." + out
	}
	y.wire(from, to, "positive")
}

// battery adds a battery, or two in series, to the first busbars.
func (y *yard) battery(series bool) {
	keys := func() string {
		if y.chance("cranking", 2) {
			return fmt.Sprintf(", nominal: %s, cranking: %d A", map[bool]string{true: "6 V", false: "12 V"}[series], y.pick("cca", 300, 1500))
		}
		return fmt.Sprintf(", nominal: %s, internal_resistance: %d uohm", map[bool]string{true: "6 V", false: "12 V"}[series], y.pick("ri", 500, 20000))
	}
	low := y.component("battery", keys())
	high := low
	if series {
		high = y.component("battery", keys())
		y.wire(low+".pos", high+".neg", "positive")
	}
	y.through(high+".pos", y.stud(y.positive[0]))
	y.wire(low+".neg", y.stud(y.negative[0]), "negative")
}

func (y *yard) charger() {
	y.chargers++
	id := y.component(rapid.SampledFrom([]string{"alternator", "charger", "solar"}).Draw(y.t, "source"),
		fmt.Sprintf(", voltage: %d mV, output: %d A, internal_resistance: %d uohm", y.pick("mv", 13800, 14600), y.pick("output", 5, 120), y.pick("ri", 2000, 30000)))
	y.through(id+".pos", y.stud(rapid.SampledFrom(y.positive).Draw(y.t, "bus")))
	y.wire(id+".neg", y.stud(rapid.SampledFrom(y.negative).Draw(y.t, "bus")), "negative")
}

// load adds one of share loads: the more there are, the less each takes.
func (y *yard) load(share int) {
	var keys string
	draw := 3
	if !y.resistive {
		draw = y.pick("draw", 1, 3)
	}
	switch draw {
	case 1:
		keys = fmt.Sprintf(", current: %d mA", y.pick("ma", 10, 10+30000/(share+3)))
	case 2:
		keys = fmt.Sprintf(", power: %d W, load_kind: constant-power", y.pick("w", 1, 1+60/(share+3)))
		y.powered = true
	default:
		keys = fmt.Sprintf(", resistance: %d mohm", y.pick("mohm", 500+100*share, 100000))
	}
	kind := "lamp"
	if y.chance("motor", 3) {
		kind = "motor"
		keys += fmt.Sprintf(", stall: %d mA", y.pick("stall", 100, 60000/(share+3)))
	}
	id := y.component(kind, keys)
	y.loads = append(y.loads, id)
	pos, neg := id+".pos", id+".neg"
	if y.chance("reversing", 6) {
		box := y.component("controller", ", links: ["+
			"{between: [s, a], when: up}, {between: [b, r], when: up}, {between: [s, b], when: down}, {between: [a, r], when: down}]")
		y.wire(box+".a", pos, "positive")
		y.wire(box+".b", neg, "negative")
		pos, neg = box+".s", box+".r"
	}
	y.through(y.stud(rapid.SampledFrom(y.positive).Draw(y.t, "bus")), pos)
	y.wire(neg, y.stud(rapid.SampledFrom(y.negative).Draw(y.t, "bus")), "negative")
}

func (y *yard) buses(list *[]string, count int, role string) {
	*list = append(*list, y.component("busbar", ""))
	for range count - 1 {
		from := rapid.SampledFrom(*list).Draw(y.t, "bus")
		bus := y.component("busbar", "")
		if role == "positive" {
			y.through(y.stud(from), y.stud(bus))
		} else {
			y.wire(y.stud(from), y.stud(bus), role)
		}
		*list = append(*list, bus)
	}
	for range y.pick("ties", 0, count/3) {
		a, b := rapid.SampledFrom(*list).Draw(y.t, "tie"), rapid.SampledFrom(*list).Draw(y.t, "tie")
		if a != b {
			y.wire(y.stud(a), y.stud(b), role)
		}
	}
}

// drawYard draws a network with about the given number of loads.
func drawYard(t *rapid.T, least, most int) (*yard, string) {
	return (&yard{t: t}).draw(least, most)
}

func (y *yard) draw(least, most int) (*yard, string) {
	loads := y.pick("loads", least, most)
	y.buses(&y.positive, 1+y.pick("buses", 0, loads/2), "positive")
	y.buses(&y.negative, 1+y.pick("buses", 0, loads/2), "negative")
	for range y.pick("batteries", 1, 3) {
		y.battery(y.chance("series", 4))
	}
	for range y.pick("chargers", 0, 2) {
		y.charger()
	}
	for range loads {
		y.load(loads)
	}
	return y, sketch(boat, y.components.String(), y.conductors.String())
}
